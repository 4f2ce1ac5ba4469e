package rondure.intake;

import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * Recognises developed pictures whose pixel pitch cannot be that of the camera.
 *
 * <p>Programs that make smaller copies often leave the camera's focal-plane resolution in the file.
 * Where the set shows that the camera makes larger pictures of the same shape, such a pitch is only
 * believed when the 35 mm equivalent, which resizing does not change, says the same. Larger
 * pictures of another shape are panoramas and say nothing about the camera.
 */
public final class ResizedCopies {
  private static final double SMALLER = 0.9;

  /** Sensor data with their borders and the picture made of them differ in shape by less. */
  private static final double SAME_SHAPE = 0.02;

  private ResizedCopies() {}

  /** The shots, in the same order, with doubtful pitches taken out. */
  public static List<Shot> withoutDoubtfulPitch(List<Shot> shots) {
    Map<String, Set<PictureSize>> sizes = new HashMap<>();
    for (Shot shot : shots) {
      PictureSize size = size(shot.facts());
      if (size.known() && !shot.facts().composite()) {
        shot.facts()
            .camera()
            .ifPresent(camera -> sizes.computeIfAbsent(camera, c -> new HashSet<>()).add(size));
      }
    }
    return shots.stream()
        .map(shot -> doubtful(shot.facts(), sizes) ? withoutPitch(shot) : shot)
        .toList();
  }

  private static boolean doubtful(ShotFacts facts, Map<String, Set<PictureSize>> sizes) {
    Optional<Fact<Double>> pitch = facts.pixelPitchMicrons();
    PictureSize own = size(facts);
    int cameraPx =
        facts.camera().map(sizes::get).stream()
            .flatMap(Set::stream)
            .filter(size -> Math.abs(size.aspect() / own.aspect() - 1) <= SAME_SHAPE)
            .mapToInt(PictureSize::longerPx)
            .max()
            .orElse(0);
    boolean derived = pitch.isPresent() && pitch.get().source() == Fact.Source.DERIVED;
    boolean developed = facts.format() != ImageFormat.RAW && facts.format() != ImageFormat.FITS;
    return derived
        && developed
        && own.longerPx() < SMALLER * cameraPx
        && !confirmed(facts, pitch.get().value());
  }

  private static boolean confirmed(ShotFacts facts, double pitchMicrons) {
    PictureSize size = size(facts);
    if (!size.known() || facts.focalLengthMm().isEmpty() || facts.focalLength35Mm().isEmpty()) {
      return false;
    }
    return PixelPitch.ofEquivalent(
            facts.focalLengthMm().get().value(), facts.focalLength35Mm().get().value(), size)
        .filter(equivalent -> PixelPitch.agree(pitchMicrons, equivalent))
        .isPresent();
  }

  private static PictureSize size(ShotFacts facts) {
    return new PictureSize(facts.widthPx(), facts.heightPx());
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
