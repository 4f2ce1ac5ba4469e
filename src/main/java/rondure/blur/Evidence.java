package rondure.blur;

import java.util.Map;
import java.util.Objects;

/**
 * One observation that speaks for or against a cause, as data; wording makes the sentence.
 *
 * @param kind what was seen
 * @param values the numbers of the sentence by name, units in the names
 */
public record Evidence(Kind kind, Map<String, Double> values) {

  /** What was seen. Wording in templates/ has one sentence for each. */
  public enum Kind {
    /** widthRatio: width over the sharpest of the scene. */
    WIDER_THAN_SHARPEST,
    /** widthRatio: a little more than the sharpest. */
    LITTLE_WIDER_THAN_SHARPEST,
    /** widthRatio: wider than the sharpest, but no wider than pixels make any star. */
    AS_FINE_AS_PIXELS,
    AS_SHARP_AS_SHARPEST,
    /** roundness. */
    STARS_ROUND,
    /** roundness, angleDeg, coherence (0 to 1). */
    ONE_DIRECTION_EVERYWHERE,
    /** trailPredictedPx, trailLargestPx. */
    TRAIL_POSSIBLE,
    TRAIL_TOO_SHORT_TO_EXPLAIN,
    /** exposure or focal length or pixel pitch unknown: the trail cannot be predicted. */
    TRAIL_UNKNOWN,
    /** edgeRatio: width at the edge over width in the centre. */
    EDGES_SOFTER,
    EDGES_AS_SHARP,
    /** starCount. */
    FEW_STARS,
    /** only one frame: focus and core cannot be told apart. */
    ONE_FRAME_ONLY,
    /** radialPx2 at the corner: stars stretched away from (+) or around (-) the centre. */
    RADIAL_PATTERN,
    /** trailPredictedPx, trailMeasuredPx: a tracking mount, or aimed near the pole. */
    TRAIL_ABSENT,
    /** directions turn over the field as about a pole of the sky. */
    PATTERN_OF_THE_SKY,
    /** directions do not turn as about a pole of the sky. */
    PATTERN_NOT_OF_THE_SKY,
    /** frames, ratio: the other frames of the scene are stretched as much. */
    STRETCHED_LIKE_OTHERS,
    /** frames, ratio: stretched more than the other frames of the scene, for its exposure. */
    STRETCHED_MORE_THAN_OTHERS,
    /** sharpestFwhmPx: even the sharpest frames of the scene are wide. */
    SOFT_THROUGHOUT,
    /** flatness: the average star has a flat or hollow top, as out of focus. */
    FLAT_TOPPED,
    /** offsetPx, angleDeg, fainterPercent, pairCount: every star is there twice. */
    DOUBLE_IMAGE,
    /** angleDeg, tailPx2: the average star has a faint tail along one line. */
    FAINT_TAIL,
    /** roundness: stars are oval, though narrow. */
    STARS_OVAL,
    /** trailPredictedPx, trailLargestPx: the sky may add a trail that does not show by itself. */
    TRAIL_MAY_ADD,
    /** trailPx, frames: the stars' paths over so many frames tell where the sky turns. */
    SKY_REGISTERED,
    /** the stars stay in place from frame to frame: a mount follows the sky. */
    MOUNT_FOLLOWS,
    /** driftPxPerMin, angleDeg, axisOffArcmin: the stars drift all the same. */
    MOUNT_DRIFTS,
    /** creepPxPerMin: the camera turns steadily. */
    CAMERA_CREEPS,
    /** jumpPx: the camera was turned between the frame before and this one. */
    CAMERA_JUMPED,
    /** jumpPx, lostPercent: a knock beside the frame drew light out, too faintly to be seen. */
    LIGHT_DRAWN_AWAY,
    /** smearPx2, angleDeg: besides the sky's trail all stars are stretched one way. */
    SMEAR_BEYOND_SKY,
    /** trailPx: stars are stretched as the sky's motion demands, and no more. */
    SMEAR_IS_THE_SKYS,
    /** focusPercent, trailPercent, tripodPercent, lensPercent of what widens the stars. */
    SHARES,
    /** discPx: what refocusing would cure, beside the scene's core. */
    ROUND_WIDENING,
    /**
     * otherPercent, otherFocusPercent: another lens explains the scene with this probability, and
     * books so much of the widening as focus.
     */
    LENS_OR_FOCUS,
    /** lostPercent: the same stars give less light than in the clear frames. */
    LIGHT_LOST,
    /** scatterMag: they do so unevenly. */
    LIGHT_PATCHY,
    /** wingPercent: more light stands beside the stars than in frames of like width: dew. */
    WINGS_GROWN,
    /** haloPercent of the stars' light stands in a wide round glow: dew, mist or a soft filter. */
    HALO_SEEN,
    /** the sky is cut off at black: haze cannot be seen. */
    LIGHT_UNSEEN,
    /** lightCount: lamps on the ground are not stretched as the stars are. */
    GROUND_LIGHTS_SHARP,
    /** lightCount: lamps on the ground are stretched as the stars are. */
    GROUND_LIGHTS_SMEARED,
    /** ringPercent of the peak: a ring darker than the sky around stars of a sharpened picture. */
    DARK_RINGS,
    /** hotPixelCount, hotPixelFwhmPx: single photosites were spread when the picture was made. */
    HOT_PIXELS_SPREAD,
    /** hotPixelCount: single photosites are still points, so what is soft was soft before them. */
    HOT_PIXELS_SHARP,
    /** kurtosis, lineKurtosis: the smear's light lies evenly along a line, as in a trail. */
    SMEAR_EVEN,
    /** kurtosis, lineKurtosis: it lies at the ends of the line, as of a vibration. */
    SMEAR_AT_ENDS,
    /** kurtosis, lineKurtosis: it lies in one place and leaves a tail, as of a knock. */
    SMEAR_PEAKED
  }

  public Evidence {
    Objects.requireNonNull(kind, "kind");
    values = Map.copyOf(values);
  }
}
