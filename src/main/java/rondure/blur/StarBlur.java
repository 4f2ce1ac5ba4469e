package rondure.blur;

import java.util.Objects;
import rondure.base.Moments;

/**
 * All that makes the image of one star, each part with the form it is known to have: the image is
 * their convolution, so their transforms multiply and their second moments add.
 *
 * @param core lens and sensor at their best
 * @param disc defocus there: an evenly lit ellipse
 * @param coma drawn as a Gaussian of its second moments
 * @param motion of sky and camera
 * @param glow a faint halo
 */
public record StarBlur(Core core, Disc disc, Moments coma, Motion motion, Glow glow) {

  /** Second moment of a pixel's box, 1/12 px². */
  private static final double PIXEL_PX2 = 1 / 12.0;

  /**
   * The core, drawn as the mixture of two neighbouring {@link CoreWaves} with these two numbers.
   *
   * @param px2 its second moment, the pixel included
   * @param visibleShare second moment of the Gaussian as wide at half maximum over its own, the
   *     pixel not included; 1 for a Gaussian
   */
  public record Core(double px2, double visibleShare) {
    public Core {
      if (!(px2 > 0 && visibleShare > 0 && visibleShare <= 1)) {
        throw new IllegalArgumentException(
            "core must be > 0 and its visible share in (0, 1], were " + px2 + ", " + visibleShare);
      }
    }

    /** Its transform in the wave number k, rad/px, the pixel left out. */
    double wave(double k) {
      double bare = Math.max(PIXEL_PX2, px2 - PIXEL_PX2);
      double fwhm = Moments.FWHM_PER_SIGMA * Math.sqrt(bare * visibleShare);
      CoreWaves[] forms = CoreWaves.values();
      int below = 0;
      while (below + 2 < forms.length && forms[below + 1].wings() * visibleShare > 1) {
        below++;
      }
      CoreWaves winged = forms[below];
      CoreWaves plain = forms[below + 1];
      double part = (1 / visibleShare - plain.wings()) / (winged.wings() - plain.wings());
      double share = Math.max(0, Math.min(1, part));
      return share * winged.at(k, fwhm) + (1 - share) * plain.at(k, fwhm);
    }
  }

  /**
   * The disc of defocus with astigmatism.
   *
   * @param alongPx diameter along the radius
   * @param acrossPx across
   * @param radialRad where the radius points, from +x towards +y
   */
  public record Disc(double alongPx, double acrossPx, double radialRad) {
    Moments moments() {
      return Moments.ofAxes(alongPx * alongPx / 16, acrossPx * acrossPx / 16, radialRad);
    }

    double wave(double kx, double ky) {
      double along = (kx * Math.cos(radialRad) + ky * Math.sin(radialRad)) * alongPx / 2;
      double across = (ky * Math.cos(radialRad) - kx * Math.sin(radialRad)) * acrossPx / 2;
      return RoundWaves.disc(Math.sqrt(along * along + across * across));
    }
  }

  /**
   * Motion during the exposure.
   *
   * @param steady of the sky and a sagging camera together: an even line along its major axis
   * @param shaken by the camera: a Gaussian
   */
  public record Motion(Moments steady, Moments shaken) {
    double wave(double kx, double ky) {
      double length = Math.sqrt(12 * Math.max(0, steady.majorPx2() - steady.minorPx2()));
      double angle = steady.positionAngleRad();
      double phase = (kx * Math.cos(angle) + ky * Math.sin(angle)) * length / 2;
      double across = Math.max(0, steady.minorPx2()) * (kx * kx + ky * ky);
      return sinc(phase) * Math.exp(-across / 2) * gaussian(shaken, kx, ky);
    }
  }

  /**
   * A round, wide Gaussian of a share of the light.
   *
   * @param share of the light
   * @param px2 what it adds to the star's second moment
   */
  public record Glow(double share, double px2) {
    public static final Glow NONE = new Glow(0, 0);

    double wave(double square) {
      return share > 0 ? 1 - share + share * Math.exp(-square * px2 / share / 2) : 1;
    }
  }

  public StarBlur {
    Objects.requireNonNull(core, "core");
    Objects.requireNonNull(disc, "disc");
    Objects.requireNonNull(coma, "coma");
    Objects.requireNonNull(motion, "motion");
    Objects.requireNonNull(glow, "glow");
  }

  /** Sum of the parts' second moments. */
  public Moments moments() {
    return Moments.round(core.px2() + glow.px2())
        .plus(disc.moments())
        .plus(coma)
        .plus(motion.steady())
        .plus(motion.shaken());
  }

  /**
   * The transform of the image, the pixel included; 1 at (0, 0), real since every part is alike on
   * both sides of its middle.
   *
   * @param kx wave number, rad/px
   * @param ky likewise, down
   */
  double wave(double kx, double ky) {
    double square = kx * kx + ky * ky;
    double pixel = sinc(kx / 2) * sinc(ky / 2);
    return pixel
        * core.wave(Math.sqrt(square))
        * disc.wave(kx, ky)
        * gaussian(coma, kx, ky)
        * motion.wave(kx, ky)
        * glow.wave(square);
  }

  private static double gaussian(Moments m, double kx, double ky) {
    double form = m.xxPx2() * kx * kx + 2 * m.xyPx2() * kx * ky + m.yyPx2() * ky * ky;
    return Math.exp(-Math.max(0, form) / 2);
  }

  static double sinc(double x) {
    return Math.abs(x) < 1e-6 ? 1 : Math.sin(x) / x;
  }
}
