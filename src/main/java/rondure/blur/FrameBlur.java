package rondure.blur;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import rondure.base.Moments;
import rondure.sky.Camera;
import rondure.sky.ImageVelocity;
import rondure.sky.Spin;

/**
 * What a budget says of the star at any place of a frame.
 *
 * @param optics camera, lens and focus
 * @param motion of sky and camera
 * @param core lens and sensor at their best
 * @param glow a faint halo, or none
 */
public record FrameBlur(Optics optics, Motion motion, StarBlur.Core core, StarBlur.Glow glow) {

  /**
   * The optics of a frame.
   *
   * @param camera where pixels look
   * @param widthPx stored
   * @param heightPx stored
   * @param lens what it does over the field
   * @param focus of this frame
   */
  public record Optics(Camera camera, int widthPx, int heightPx, LensSurface lens, Focus focus) {}

  /**
   * Focus and aperture.
   *
   * @param centreDiscPx signed disc in the image centre
   * @param stop f-number of the scene's widest aperture over this frame's
   */
  public record Focus(double centreDiscPx, double stop) {}

  /**
   * Motion during the exposure.
   *
   * @param sky the sky's own; none on a mount that follows it
   * @param stars all steady motion
   * @param seconds true exposure
   * @param shakePx2 covariance of the camera's swings, as they move the image centre; what a
   *     camera's path draws beyond the shapes of single stars is not in it
   */
  public record Motion(Spin sky, Spin stars, double seconds, Moments shakePx2) {}

  public FrameBlur {
    Objects.requireNonNull(optics, "optics");
    Objects.requireNonNull(motion, "motion");
    Objects.requireNonNull(core, "core");
    Objects.requireNonNull(glow, "glow");
  }

  /** Of a solved frame; its core a Gaussian and without a glow. */
  static FrameBlur of(SceneSolution solution, int frame) {
    FrameModel model = solution.models().get(frame);
    FieldPlaces places = model.stars().places;
    double[] own = solution.own(frame);
    Optics optics =
        new Optics(
            places.view.camera(),
            places.view.widthPx(),
            places.view.heightPx(),
            solution.lens(),
            new Focus(own[FrameModel.DISC], places.stop));
    Moments shake =
        new Moments(
            own[FrameModel.SHAKE] + own[FrameModel.ALONG],
            own[FrameModel.DIAGONAL],
            own[FrameModel.SHAKE] - own[FrameModel.ALONG]);
    FieldPlaces.Motion of = places.motion;
    double seconds = of.exposureSeconds() * Math.sqrt(model.lengthening());
    return new FrameBlur(
        optics,
        new Motion(of.sky(), of.stars(), seconds, shake),
        new StarBlur.Core(solution.corePx2(), 1),
        StarBlur.Glow.NONE);
  }

  FrameBlur withGlow(StarBlur.Glow other) {
    return new FrameBlur(optics, motion, core, other);
  }

  FrameBlur withCoreForm(double visibleShare) {
    return new FrameBlur(optics, motion, new StarBlur.Core(core.px2(), visibleShare), glow);
  }

  /** Whether light of the world falls on a pixel; nothing is known of others. */
  public boolean sees(double xPx, double yPx) {
    return optics.camera().sees(xPx, yPx);
  }

  /** How the sky moves at a place that the camera sees; empty on a mount that follows it. */
  public Optional<ImageVelocity> skyAt(double xPx, double yPx) {
    return motion.sky().rateRadPerS() > 0
        ? Optional.of(optics.camera().flow(motion.sky(), xPx, yPx))
        : Optional.empty();
  }

  /**
   * The stars at some places that the camera sees, stored coordinates.
   *
   * @param xsPx right
   * @param ysPx down
   */
  public List<StarBlur> at(double[] xsPx, double[] ysPx) {
    View view = new View(optics.camera(), optics.widthPx(), optics.heightPx());
    double stop = optics.focus().stop();
    FieldPlaces places =
        new FieldPlaces(
            xsPx,
            ysPx,
            view,
            new FieldPlaces.Motion(motion.sky(), motion.stars(), motion.seconds(), stop));
    List<StarBlur> stars = new ArrayList<>();
    for (int i = 0; i < places.count; i++) {
      double disc = optics.focus().centreDiscPx();
      stars.add(
          new StarBlur(
              core,
              optics.lens().discAt(places.x[i], places.y[i], disc, stop),
              optics.lens().comaAt(places.x[i], places.y[i], stop),
              new StarBlur.Motion(tensor(places.moved, i), shaken(places, i)),
              glow));
    }
    return stars;
  }

  private Moments shaken(FieldPlaces places, int i) {
    Moments shake = motion.shakePx2();
    return tensor(places.shakeX, i)
        .times(shake.xxPx2())
        .plus(tensor(places.shakeY, i).times(shake.yyPx2()))
        .plus(tensor(places.shakeXY, i).times(shake.xyPx2()));
  }

  /** From round, along and diagonal. */
  private static Moments tensor(double[] parts, int i) {
    double round = parts[3 * i];
    double along = parts[3 * i + 1];
    return new Moments(round + along, parts[3 * i + 2], round - along);
  }
}
