package rondure.blur;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import rondure.stars.Star;
import rondure.stars.StarField;

/**
 * What in a lone frame passes for stars and is none: no other frame shows that lamps stay in place,
 * but beside stars that are all stretched one way they are round. Stars stretched unlike the common
 * smear and lens, by six standard deviations, are left out; unless they are so many that "alike"
 * means little.
 */
final class Strays {
  private static final double MOST_SHARE = 0.3;

  private Strays() {}

  static StarField without(FrameEvidence frame) {
    StarField field = frame.field();
    SmearField smears =
        SmearField.of(field, frame.focalLengthPx().orElse(SmearField.NARROW_FOCAL_PX));
    SmearSum sum = SmearSum.of(smears);
    Set<List<Double>> places = new HashSet<>();
    for (int i = 0; i < smears.count(); i++) {
      if (sum.stray(i)) {
        places.add(List.of(smears.xs[i], smears.ys[i]));
      }
    }
    if (places.isEmpty() || places.size() > MOST_SHARE * smears.count()) {
      return field;
    }
    List<Star> alike =
        field.stars().stream()
            .filter(star -> !places.contains(List.of(star.xPx(), star.yPx())))
            .toList();
    return new StarField(
        field.widthPx(),
        field.heightPx(),
        alike,
        field.others(),
        field.refused(),
        field.sky(),
        field.mask(),
        field.averageStars(),
        field.groundLights(),
        field.surroundings());
  }
}
