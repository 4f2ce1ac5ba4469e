package rondure.intake;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Recognises developed pictures whose pixel pitch cannot be that of the camera.
 *
 * <p>Programs that make smaller copies often leave the camera's focal-plane resolution in the file.
 * Where the set shows that the camera makes larger pictures, such a pitch is only believed when the
 * 35 mm equivalent, which resizing does not change, says the same.
 */
public final class ResizedCopies {
  private static final double SMALLER = 0.9;

  private ResizedCopies() {}

  /** The shots, in the same order, with doubtful pitches taken out. */
  public static List<Shot> withoutDoubtfulPitch(List<Shot> shots) {
    Map<String, Integer> largest = new HashMap<>();
    for (Shot shot : shots) {
      shot.facts()
          .camera()
          .ifPresent(camera -> largest.merge(camera, longerPx(shot.facts()), Math::max));
    }
    return shots.stream()
        .map(shot -> doubtful(shot.facts(), largest) ? withoutPitch(shot) : shot)
        .toList();
  }

  private static boolean doubtful(ShotFacts facts, Map<String, Integer> largest) {
    Optional<Fact<Double>> pitch = facts.pixelPitchMicrons();
    int cameraPx = facts.camera().map(largest::get).orElse(0);
    boolean derived = pitch.isPresent() && pitch.get().source() == Fact.Source.DERIVED;
    boolean developed = facts.format() != ImageFormat.RAW && facts.format() != ImageFormat.FITS;
    return derived
        && developed
        && longerPx(facts) < SMALLER * cameraPx
        && !confirmed(facts, pitch.get().value());
  }

  private static boolean confirmed(ShotFacts facts, double pitchMicrons) {
    PictureSize size = new PictureSize(facts.widthPx(), facts.heightPx());
    if (!size.known() || facts.focalLengthMm().isEmpty() || facts.focalLength35Mm().isEmpty()) {
      return false;
    }
    return PixelPitch.ofEquivalent(
            facts.focalLengthMm().get().value(), facts.focalLength35Mm().get().value(), size)
        .filter(equivalent -> PixelPitch.agree(pitchMicrons, equivalent))
        .isPresent();
  }

  private static int longerPx(ShotFacts facts) {
    return Math.max(facts.widthPx(), facts.heightPx());
  }

  private static Shot withoutPitch(Shot shot) {
    ShotFacts facts = shot.facts();
    return new Shot(
        shot.file(),
        new ShotFacts(
            facts.format(),
            facts.widthPx(),
            facts.heightPx(),
            facts.orientation(),
            facts.captureTime(),
            facts.exposureSeconds(),
            facts.fNumber(),
            facts.iso(),
            facts.focalLengthMm(),
            facts.focalLength35Mm(),
            Optional.empty(),
            facts.ambientTemperatureC(),
            facts.cameraModel(),
            facts.lensModel(),
            facts.composite()));
  }
}
