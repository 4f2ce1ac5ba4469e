package rondure.blur;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import rondure.base.Moments;
import rondure.sky.Camera;
import rondure.sky.FrameSky;
import rondure.sky.Rotation;
import rondure.sky.SceneSky;
import rondure.sky.Spin;
import rondure.sky.StarTracks;
import rondure.stars.Star;
import rondure.stars.StarField;
import rondure.testing.Fields;

/**
 * Scenes whose stars' tensors are drawn from a formula with Gaussian noise.
 *
 * @param camera the camera
 * @param widthPx of the frames
 * @param heightPx of the frames
 * @param starCount in each frame, even over the frame
 * @param noisePx2 standard error of Mxx and Myy; that of Mxy is √2 smaller
 */
record DrawnScene(Camera camera, int widthPx, int heightPx, int starCount, double noisePx2) {

  /** Tensor of a star of a frame, from 0. */
  interface Shape {
    Moments at(int frame, double xPx, double yPx);
  }

  /** A 24 mm lens on 36 x 24 mm with pixels of 6 µm. */
  static DrawnScene wide(int starCount) {
    return new DrawnScene(Camera.rectilinear(4000, 6000, 4000), 6000, 4000, starCount, 0.04);
  }

  double halfDiagonalPx() {
    return Math.hypot(widthPx, heightPx) / 2;
  }

  /** The lens's own part at a place. */
  Moments lens(LensSurface lens, double discPx, double xPx, double yPx) {
    double x = (xPx - camera.centreXPx()) / halfDiagonalPx();
    double y = (yPx - camera.centreYPx()) / halfDiagonalPx();
    return lens.at(x, y, discPx, 1);
  }

  /** Evidence of frames that all move alike. */
  SceneEvidence evidence(int frames, Optional<FrameSky> sky, double seconds, Shape shape) {
    List<StarField> fields = new ArrayList<>();
    for (int frame = 0; frame < frames; frame++) {
      fields.add(field(frame, shape));
    }
    List<SceneReference.Member> members = new ArrayList<>();
    fields.forEach(
        field ->
            members.add(new SceneReference.Member(FieldShape.of(field), Optional.of(seconds))));
    SceneReference reference = SceneReference.of(members);
    List<FrameEvidence> evidence = new ArrayList<>();
    List<Integer> places = new ArrayList<>();
    for (StarField field : fields) {
      places.add(places.size());
      evidence.add(
          new FrameEvidence(
              field,
              Optional.of(seconds),
              Optional.of(camera.focalLengthPx()),
              Optional.empty(),
              Optional.empty(),
              false,
              reference));
    }
    return new SceneEvidence(evidence, places, sky(frames, sky.orElse(still())));
  }

  /** A frame whose stars do not move. */
  static FrameSky still() {
    return moving(Spin.NONE, Spin.NONE);
  }

  static FrameSky moving(Spin sky, Spin creep) {
    return new FrameSky(Optional.of(Rotation.NONE), Optional.of(sky), creep, 0, 0);
  }

  private SceneSky sky(int frames, FrameSky sky) {
    return new SceneSky(
        SceneSky.Finding.SKY_TURNS,
        Optional.of(camera),
        false,
        Optional.empty(),
        1,
        Collections.nCopies(frames, sky),
        StarTracks.NONE);
  }

  private StarField field(int frame, Shape shape) {
    SplittableRandom chance = new SplittableRandom(77 + frame);
    List<Star> stars = new ArrayList<>();
    for (int i = 0; i < starCount; i++) {
      double x = chance.nextDouble() * (widthPx - 1);
      double y = chance.nextDouble() * (heightPx - 1);
      Moments exact = shape.at(frame, x, y);
      Moments seen =
          new Moments(
              exact.xxPx2() + noisePx2 * chance.nextGaussian(),
              exact.xyPx2() + noisePx2 / Math.sqrt(2) * chance.nextGaussian(),
              exact.yyPx2() + noisePx2 * chance.nextGaussian());
      stars.add(Fields.star(x, y, seen, noisePx2));
    }
    return Fields.field(widthPx, heightPx, stars, List.of());
  }
}
