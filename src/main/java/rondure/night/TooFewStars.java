package rondure.night;

import java.util.Arrays;
import java.util.Comparator;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import rondure.base.RobustStats;
import rondure.blur.DoubleImage;
import rondure.sky.StaticReport;
import rondure.stars.Refusal;
import rondure.stars.SkyState;
import rondure.stars.Star;
import rondure.stars.StarField;

/** Says in a sentence why a frame holds too few measured stars. */
final class TooFewStars {
  private static final double BLACK = 0.002;
  private static final double BRIGHT = 0.25;

  /** Fewer stars than this must also look alike to be taken for stars. */
  private static final int FEW = 20;

  /** Real stars of one frame share their width to 10 or 20 %; lamps and windows do not. */
  private static final double LARGEST_WIDTH_SCATTER = 0.3;

  /** A scatter by medians is blind when a minority lies far off; so most must be about as wide. */
  private static final double ALIKE = 1.5;

  private static final double LEAST_SHARE_ALIKE = 0.7;

  private TooFewStars() {}

  /**
   * True when the measured points give no width worth the name: too few, or of widths that differ,
   * and not smoothly over the field.
   *
   * @param followed whether other frames prove that they turn with the sky
   */
  static boolean applies(StarField field, BooleanSupplier followed, NightSettings settings) {
    return field.stars().size() < settings.leastStars()
        || (differ(field) && !smooth(field) && !followed.getAsBoolean());
  }

  private static boolean smooth(StarField field) {
    return SmoothWidths.explain(
        field.stars().stream().mapToDouble(Star::xPx).toArray(),
        field.stars().stream().mapToDouble(Star::yPx).toArray(),
        field.stars().stream().mapToDouble(Star::fwhmPx).toArray());
  }

  private static boolean differ(StarField field) {
    double[] widths = field.stars().stream().mapToDouble(Star::fwhmPx).toArray();
    double median = RobustStats.median(widths);
    long alike =
        Arrays.stream(widths).filter(w -> w < ALIKE * median && w > median / ALIKE).count();
    return widths.length < FEW
        && (RobustStats.madSigma(widths) > LARGEST_WIDTH_SCATTER * median
            || alike < LEAST_SHARE_ALIKE * widths.length);
  }

  static String reason(
      StarField field, int staticRemoved, StaticReport.Finding finding, NightSettings settings) {
    int count = field.stars().size();
    if (count >= settings.leastStars()) {
      return String.format(
          Locale.ROOT,
          "The %d points of light that could be measured differ too much in width to be stars.",
          count);
    }
    String start =
        count == 0
            ? "No star could be measured"
            : String.format(
                Locale.ROOT,
                "Only %s could be measured, %d are needed",
                count == 1 ? "1 star" : count + " stars",
                settings.leastStars());
    return start + ": " + why(field, staticRemoved, finding) + ".";
  }

  private static String why(StarField field, int staticRemoved, StaticReport.Finding finding) {
    if (finding == StaticReport.Finding.NOTHING_FOLLOWS_THE_SKY) {
      return "nothing in this frame follows the sky, its points of light are hot pixels or lights"
          + " on the ground";
    }
    Optional<DoubleImage> twice = DoubleImage.of(field);
    if (twice.isPresent()) {
      return String.format(
          Locale.ROOT,
          "every star is there twice, %.0f px apart, so the camera was knocked",
          twice.get().offsetPx());
    }
    Optional<Map.Entry<Refusal, Integer>> most =
        field.refused().entrySet().stream()
            .filter(entry -> entry.getKey() != Refusal.STATIC && entry.getValue() > 0)
            .max(
                Map.Entry.<Refusal, Integer>comparingByValue()
                    .thenComparing(Map.Entry.comparingByKey(Comparator.reverseOrder())));
    if (staticRemoved > most.map(Map.Entry::getValue).orElse(0)) {
      return staticRemoved
          + " points of light stay on the sensor while the sky moves (hot pixels or lights on the"
          + " ground)";
    }
    return most.map(entry -> refused(entry.getKey(), entry.getValue()))
        .orElseGet(() -> empty(field.sky()));
  }

  private static String refused(Refusal reason, int count) {
    String points = count == 1 ? "1 point of light" : count + " points of light";
    return switch (reason) {
      case SATURATED -> points + " overexposed";
      case CROWDED -> points + " too close to a neighbour";
      case EDGE -> points + " too close to the edge of the frame";
      case HOT_PIXEL -> count == 1 ? "1 hot pixel" : count + " hot pixels";
      case TOO_FAINT -> points + " too faint (cloud, haze, twilight or a short exposure)";
      case NOT_SETTLED -> points + " without a shape that can be measured";
      case NOT_SKY -> points + " outside the sky";
      case STREAK -> count == 1 ? "1 streak" : count + " streaks";
      case STATIC -> points + " that stay on the sensor";
    };
  }

  private static String empty(SkyState sky) {
    if (sky.levelFraction() > BRIGHT) {
      return String.format(
          Locale.ROOT,
          "the sky is bright, %.0f %% of full scale (twilight, lit cloud or stray light)",
          100 * sky.levelFraction());
    }
    if (sky.levelFraction() < BLACK || sky.clippedShare() > 0.5) {
      return "the picture is black and holds no points of light (lens cap, cloud or too short an"
          + " exposure)";
    }
    return "it holds no points of light (cloud, or far out of focus)";
  }
}
