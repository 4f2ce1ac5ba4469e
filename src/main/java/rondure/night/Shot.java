package rondure.night;

import java.util.Optional;
import rondure.intake.CaptureTime;
import rondure.intake.Fact;
import rondure.intake.ShotFacts;
import rondure.sky.PlateScale;
import rondure.sky.SkyMotion;

/**
 * An exposure with its camera's name and its place in time.
 *
 * @param exposure as measured
 * @param cameraName for people
 * @param startSeconds start on a clock shared by the set
 */
record Shot(MeasuredExposure exposure, String cameraName, Optional<Double> startSeconds) {

  ShotFacts facts() {
    return exposure.facts();
  }

  Optional<Double> exposureSeconds() {
    return facts().exposureSeconds().map(Fact::value).filter(seconds -> seconds > 0);
  }

  /** Middle of the exposure; its start when the exposure time is unknown. */
  Optional<Double> midSeconds() {
    return startSeconds.map(start -> start + exposureSeconds().orElse(0.0) / 2);
  }

  Optional<Double> focalLengthPx() {
    return PlateScale.focalLengthPx(facts(), exposure.widthPx(), exposure.heightPx());
  }

  /** How finely the camera's clock tells the time. */
  double clockStepSeconds() {
    return facts().captureTime().map(CaptureTime::subSecondsKnown).orElse(false) ? 0.01 : 1;
  }

  /** Light gathered per star, relative: t · ISO / N². */
  Optional<Double> gain() {
    Optional<Double> fNumber = facts().fNumber().map(Fact::value).filter(n -> n > 0);
    Optional<Double> iso = facts().iso().map(Fact::value).filter(i -> i > 0);
    return exposureSeconds().flatMap(t -> iso.flatMap(i -> fNumber.map(n -> t * i / (n * n))));
  }

  /** ω f / p. */
  Optional<Double> skySpeedPxPerS() {
    return focalLengthPx().map(px -> px * SkyMotion.SIDEREAL_RATE_RAD_PER_S);
  }

  /** Trail of an equatorial star in the frame's centre. */
  Optional<Double> trailPx() {
    return exposureSeconds()
        .flatMap(s -> focalLengthPx().map(px -> SkyMotion.smallFieldTrailPx(px, 0, s)));
  }
}
