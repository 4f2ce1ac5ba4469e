package rondure.night;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import rondure.base.RobustStats;
import rondure.crew.FrameMeasurement;
import rondure.crew.Outcome;
import rondure.intake.Fact;
import rondure.intake.Linearity;
import rondure.intake.ShotFacts;
import rondure.stars.Refusal;
import rondure.stars.SkyState;
import rondure.stars.Star;
import rondure.stars.StarField;

/** Recognises, one by one, the frames that are not part of the night. */
final class FirstLook {
  /** From here on daylight: a clear dusk after sunset is about EV 100 = 7 (common practice). */
  private static final double DAYLIGHT_EV = 7;

  /** Lit streets at night reach about 5 (common practice): brighter, and no stars, is dusk. */
  private static final double DUSK_EV = 5;

  private static final double LARGER_THAN_CAMERA = 1.5;
  private static final double BLACK_LEVEL = 0.0005;
  private static final double FLAT_NOISE_SHARE = 0.05;
  private static final double MINUTES_LONG_SECONDS = 240;
  private static final int STARS_TO_PROVE_A_MOUNT = 20;

  /** A mount's drift draws every star alike: 0.03 to 0.05 in simulated frames. */
  private static final double ONE_LENGTH_SPREAD = 0.15;

  private final NightSettings settings;
  private final UsualSizes sizes;

  FirstLook(NightSettings settings, UsualSizes sizes) {
    this.settings = settings;
    this.sizes = sizes;
  }

  /** Why the frame is left out, or empty when it belongs to the night. */
  Optional<Ruling> at(Shot shot) {
    if (shot.exposure().outcome() instanceof Outcome.Failed<FrameMeasurement> failed) {
      return Optional.of(new Ruling(FrameStatus.UNREADABLE, failed.reason()));
    }
    FrameMeasurement measurement = shot.exposure().measurement().orElseThrow();
    return composite(shot)
        .or(() -> daylight(shot, measurement.field()))
        .or(() -> capped(shot, measurement))
        .or(() -> flat(shot, measurement.field()))
        .or(() -> trails(shot, measurement.field()));
  }

  private Optional<Ruling> composite(Shot shot) {
    int width = shot.exposure().widthPx();
    int height = shot.exposure().heightPx();
    double aspect = Math.max(width, height) / (double) Math.max(1, Math.min(width, height));
    if (shot.facts().composite()) {
      return rule(
          FrameStatus.COMPOSITE, "The file says that it is a panorama, stack or composite.");
    }
    if (aspect > settings.panoramaAspect()) {
      return rule(
          FrameStatus.COMPOSITE,
          "At %d x %d px it is %.1f times as long as high, like a panorama.",
          width,
          height,
          aspect);
    }
    Optional<UsualSizes.Size> usual = sizes.of(shot.cameraName());
    if (usual.isPresent() && (double) width * height > LARGER_THAN_CAMERA * usual.get().areaPx()) {
      return rule(
          FrameStatus.COMPOSITE,
          "At %d x %d px it is larger than the other frames of %s (%d x %d px):"
              + " stitched or enlarged.",
          width,
          height,
          shot.cameraName(),
          usual.get().widthPx(),
          usual.get().heightPx());
    }
    return Optional.empty();
  }

  /** Exposure value at ISO 100, log2(N²/t · 100/ISO): what scene the settings suit (ISO 2720). */
  static Optional<Double> exposureValue(ShotFacts facts) {
    Optional<Double> seconds = facts.exposureSeconds().map(Fact::value).filter(v -> v > 0);
    Optional<Double> fNumber = facts.fNumber().map(Fact::value).filter(v -> v > 0);
    Optional<Double> iso = facts.iso().map(Fact::value).filter(v -> v > 0);
    if (seconds.isEmpty() || fNumber.isEmpty() || iso.isEmpty()) {
      return Optional.empty();
    }
    double ratio = fNumber.get() * fNumber.get() / seconds.get() * 100 / iso.get();
    return Optional.of(Math.log(ratio) / Math.log(2));
  }

  private Optional<Ruling> daylight(Shot shot, StarField field) {
    boolean fewStars = field.stars().size() < settings.leastStars();
    double value = exposureValue(shot.facts()).orElse(Double.NEGATIVE_INFINITY);
    double level = field.sky().levelFraction();
    boolean exposedForLight = value >= DAYLIGHT_EV || (value >= DUSK_EV && fewStars);
    boolean shortAndBright =
        fewStars && level > 0.05 && shot.exposureSeconds().map(s -> s < 0.1).orElse(false);
    if (level > 0.01 && (exposedForLight || shortAndBright)) {
      return rule(
          FrameStatus.NOT_NIGHT,
          "Exposed for daylight or dusk (%s s), not for stars.",
          shot.exposureSeconds().map(FirstLook::seconds).orElse("?"));
    }
    return Optional.empty();
  }

  private Optional<Ruling> capped(Shot shot, FrameMeasurement measurement) {
    boolean blackIsKnown =
        measurement.linearity() == Linearity.SENSOR || measurement.linearity() == Linearity.TAGGED;
    boolean longEnough = shot.exposureSeconds().map(s -> s >= 1).orElse(false);
    SkyState sky = measurement.field().sky();
    if (blackIsKnown
        && longEnough
        && sky.levelFraction() < BLACK_LEVEL
        && points(measurement.field()) < settings.leastStars()) {
      return rule(
          FrameStatus.NOT_NIGHT,
          "No light at all in %s s: lens cap or dark frame.",
          seconds(shot.exposureSeconds().orElseThrow()));
    }
    return Optional.empty();
  }

  private Optional<Ruling> flat(Shot shot, StarField field) {
    SkyState sky = field.sky();
    boolean shortExposure = shot.exposureSeconds().map(s -> s < 2).orElse(false);
    boolean fewPoints = points(field) < settings.leastStars();
    boolean smooth = sky.noiseCounts() < FLAT_NOISE_SHARE * sky.levelCounts();
    if (shortExposure && smooth && sky.levelFraction() > 0.15 && fewPoints) {
      return rule(
          FrameStatus.NOT_NIGHT,
          "Bright (%.0f %% of full scale) and even all over: a flat frame.",
          100 * sky.levelFraction());
    }
    return Optional.empty();
  }

  private Optional<Ruling> trails(Shot shot, StarField field) {
    double seconds = shot.exposureSeconds().orElse(0.0);
    double predicted = shot.trailPx().orElse(0.0);
    boolean wanted =
        (predicted > settings.trailsIntendedPx() && seconds >= settings.trailsIntendedSeconds())
            || (shot.trailPx().isEmpty() && seconds >= MINUTES_LONG_SECONDS);
    if (wanted && !followed(field)) {
      String trail =
          predicted > 0 ? String.format(Locale.ROOT, ", trails of %.0f px", predicted) : "";
      return rule(
          FrameStatus.TRAILS_INTENDED,
          "Exposed for %s s%s: star trails on purpose, no points to measure.",
          seconds(seconds),
          trail);
    }
    double measured = trailLength(field.stars());
    if (measured > settings.trailsIntendedPx()) {
      return rule(
          FrameStatus.TRAILS_INTENDED,
          "The stars are trails of about %.0f px: too long to measure as points.",
          measured);
    }
    return Optional.empty();
  }

  /**
   * Many short stars in a long exposure, round or all of one length: a mount followed the sky, well
   * or badly. Pieces of broken trails are neither.
   */
  private boolean followed(StarField field) {
    List<Star> stars = field.stars();
    if (stars.size() < STARS_TO_PROVE_A_MOUNT
        || trailLength(stars) >= settings.trailsIntendedPx() / 2) {
      return false;
    }
    double[] lengths = stars.stream().mapToDouble(FirstLook::length).toArray();
    double spread = RobustStats.madSigma(lengths) / median(lengths);
    return spread < ONE_LENGTH_SPREAD
        || median(stars.stream().mapToDouble(s -> s.fwhmMinorPx() / s.fwhmMajorPx()).toArray())
            > 0.6;
  }

  /** Length of the line whose moment, L²/12, is the long axis of the stars; 0 for too few. */
  private double trailLength(List<Star> stars) {
    if (stars.size() < settings.leastStars()) {
      return 0;
    }
    return median(stars.stream().mapToDouble(FirstLook::length).toArray());
  }

  private static double length(Star star) {
    return Math.sqrt(12 * star.moments().majorPx2());
  }

  private static double median(double[] values) {
    return RobustStats.median(values);
  }

  /** Points of light that are not hot pixels. */
  private static long points(StarField field) {
    return field.stars().size()
        + field.others().stream().filter(o -> o.reason() != Refusal.HOT_PIXEL).count();
  }

  private static String seconds(double seconds) {
    if (seconds > 0 && seconds < 0.3) {
      return "1/" + Math.round(1 / seconds);
    }
    String text = String.format(Locale.ROOT, "%.1f", seconds);
    return text.endsWith(".0") ? text.substring(0, text.length() - 2) : text;
  }

  private static Optional<Ruling> rule(FrameStatus status, String sentence, Object... values) {
    return Optional.of(new Ruling(status, String.format(Locale.ROOT, sentence, values)));
  }
}
