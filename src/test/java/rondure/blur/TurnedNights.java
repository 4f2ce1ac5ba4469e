package rondure.blur;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;
import rondure.base.Orientation;
import rondure.sim.NightPlan;
import rondure.sky.Registration;
import rondure.sky.SkyShot;
import rondure.stars.Detection;
import rondure.stars.Star;
import rondure.stars.StarField;
import rondure.testing.Fields;
import rondure.testing.TruthFields;

/** The measured stars of a night as a camera held or built otherwise would have given them. */
final class TurnedNights {
  private TurnedNights() {}

  /**
   * How the other camera differs.
   *
   * @param held how its pictures must be turned to give the first camera's
   * @param scale its pixels are so many times smaller
   */
  record Other(Orientation held, double scale) {

    StarField seen(StarField field) {
      List<Star> stars = field.stars().stream().map(star -> seen(star, field)).toList();
      List<Detection> others = field.others().stream().map(other -> seen(other, field)).toList();
      return Fields.field(
          size(held.displayWidthPx(field.widthPx(), field.heightPx())),
          size(held.displayHeightPx(field.widthPx(), field.heightPx())),
          stars,
          others,
          Map.copyOf(field.refused()),
          field.sky());
    }

    private int size(int px) {
      return (int) Math.round(scale * px);
    }

    /** The tag of the other camera's files: back to how the first camera was held. */
    Orientation tag() {
      return switch (held) {
        case ROTATED_90_CW -> Orientation.ROTATED_270_CW;
        case ROTATED_270_CW -> Orientation.ROTATED_90_CW;
        default -> held;
      };
    }

    /** Pixel centres are at whole numbers, so the corner of the frame is at -0.5. */
    private double scaled(double px) {
      return scale * (px + 0.5) - 0.5;
    }

    private double x(double x, double y, StarField field) {
      return scaled(held.displayX(x, y, field.widthPx(), field.heightPx()));
    }

    private double y(double x, double y, StarField field) {
      return scaled(held.displayY(x, y, field.widthPx(), field.heightPx()));
    }

    private Detection seen(Detection other, StarField field) {
      return new Detection(
          x(other.xPx(), other.yPx(), field),
          y(other.xPx(), other.yPx(), field),
          other.fluxCounts(),
          other.reason());
    }

    private Star seen(Star star, StarField field) {
      double square = scale * scale;
      boolean swaps = held.swapsSides();
      return new Star(
          x(star.xPx(), star.yPx(), field),
          y(star.xPx(), star.yPx(), field),
          star.fluxCounts(),
          star.snr(),
          held.display(star.moments()).times(square),
          square * (swaps ? star.yyErrorPx2() : star.xxErrorPx2()),
          square * star.xyErrorPx2(),
          square * (swaps ? star.xxErrorPx2() : star.yyErrorPx2()),
          scale * star.fwhmMajorPx(),
          scale * star.fwhmMinorPx(),
          scale * held.displayX(star.skewXPx(), star.skewYPx(), 1, 1),
          scale * held.displayY(star.skewXPx(), star.skewYPx(), 1, 1),
          star.wingRatio(),
          star.peakFraction());
    }
  }

  /** The night, registered by its stars, as the other camera gives it. */
  static SceneEvidence of(NightPlan plan, BudgetNights.Night night, Other other) {
    List<FrameEvidence> first = night.evidence().frames();
    List<SkyShot> shots = new ArrayList<>();
    List<SceneReference.Member> members = new ArrayList<>();
    for (int i = 0; i < first.size(); i++) {
      StarField field = other.seen(first.get(i).field());
      SkyShot shot = TruthFields.shot(plan, night.truths().get(i), field);
      shots.add(
          new SkyShot(
              field,
              shot.midSeconds(),
              shot.clockStepSeconds(),
              shot.exposureSeconds(),
              shot.focalLengthPx().map(px -> other.scale() * px),
              other.tag()));
      members.add(new SceneReference.Member(FieldShape.of(field), shot.exposureSeconds()));
    }
    SceneReference reference = SceneReference.of(members);
    List<FrameEvidence> frames =
        IntStream.range(0, first.size())
            .mapToObj(i -> frame(first.get(i), shots.get(i), other, reference))
            .toList();
    return new SceneEvidence(frames, night.evidence().places(), Registration.of(shots));
  }

  private static FrameEvidence frame(
      FrameEvidence first, SkyShot shot, Other other, SceneReference reference) {
    Optional<Double> airy = first.diffractionFwhmPx().map(px -> other.scale() * px);
    return new FrameEvidence(
        shot.field(),
        shot.exposureSeconds(),
        shot.focalLengthPx(),
        airy,
        first.gain(),
        first.developed(),
        reference);
  }
}
