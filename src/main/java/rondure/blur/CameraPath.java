package rondure.blur;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * What the camera's path left besides the shape of single stars.
 *
 * @param twice every star there twice
 * @param tail light far from the stars
 */
record CameraPath(Optional<DoubleImage> twice, Optional<FaintTail> tail) {

  static CameraPath of(FrameEvidence evidence) {
    return of(evidence, FieldShape.of(evidence.field()));
  }

  /** Of each frame of a scene, in order. */
  static List<CameraPath> of(SceneEvidence scene) {
    return scene.frames().stream().parallel().map(CameraPath::of).toList();
  }

  static CameraPath of(FrameEvidence evidence, FieldShape shape) {
    return new CameraPath(DoubleImage.of(evidence.field()), FaintTail.of(evidence.field(), shape));
  }

  /** Stretch that the tail adds, px². */
  double tailPx2() {
    return tail.map(FaintTail::spin2Px2).orElse(0.0);
  }

  /**
   * What the path adds to the mean second moment beyond the shapes of single stars, px²: a faint
   * tail lies along a line; two images apart by Δ that share the light as s to 1 - s add s (1 - s)
   * Δ² along it (variance of two points); half of either is the mean of the axes. Where there are
   * two images the tail is the fainter one, and is not counted again.
   */
  double roundPx2() {
    return twice.map(CameraPath::roundPx2).orElseGet(this::tailPx2);
  }

  /** Standard error of that, px²: of the tail's reach and light; two images are seen whole. */
  double roundErrorPx2() {
    return twice.isPresent() ? 0 : tail.map(FaintTail::errorPx2).orElse(0.0);
  }

  private static double roundPx2(DoubleImage twice) {
    double share = twice.fainterShare() * (1 - twice.fainterShare());
    return share * twice.offsetPx() * twice.offsetPx() / 2;
  }

  List<Evidence> evidence() {
    return Stream.concat(twice.map(CameraPath::said).stream(), tail.map(CameraPath::said).stream())
        .toList();
  }

  private static Evidence said(DoubleImage twice) {
    return new Evidence(
        Evidence.Kind.DOUBLE_IMAGE,
        Map.of(
            "offsetPx",
            twice.offsetPx(),
            "angleDeg",
            Math.toDegrees(twice.angleRad()),
            "fainterPercent",
            100 * twice.fainterShare(),
            "pairCount",
            (double) twice.pairs()));
  }

  private static Evidence said(FaintTail tail) {
    return new Evidence(
        Evidence.Kind.FAINT_TAIL,
        Map.of("angleDeg", Math.toDegrees(tail.angleRad()), "tailPx2", tail.spin2Px2()));
  }
}
