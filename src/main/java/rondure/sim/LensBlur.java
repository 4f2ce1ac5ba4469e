package rondure.sim;

/**
 * Defocus, tilt, field curvature, astigmatism and coma by tracing rays through the pupil.
 *
 * <p>A ray through the pupil at (u, v), radial and tangential, u² + v² ≤ 1, lands at radial δT u /
 * 2N + c (3u² + v² - 1), tangential δS v / 2N + 2 c u v, where δT and δS are the tangential and
 * sagittal focus errors there (Seidel aberrations: Born &amp; Wolf, Principles of Optics, ch. 5,
 * from memory). A uniform disc of diameter D = |δ|/N follows, with D²/16 per axis. The mean of the
 * coma is taken off so that the star's position is the centre of its light.
 */
final class LensBlur {
  private static final double GOLDEN_ANGLE = Math.PI * (3 - Math.sqrt(5));
  private static final int FEWEST_RAYS = 160;
  private static final int MOST_RAYS = 6000;
  private static final double NEGLIGIBLE_PX = 0.02;
  private static final Rays SHARP = new Rays(new double[1], new double[1]);

  private final LensPlan lens;
  private final CameraPlan camera;
  private final double focusMicrons;
  private final double fNumber;

  LensBlur(NightPlan plan, Exposure exposure) {
    this.lens = plan.lens();
    this.camera = plan.camera();
    this.focusMicrons = exposure.focusMicrons();
    this.fNumber = exposure.fNumber();
  }

  /** Radius on the sensor of the pupil's edge ray for a focus error, px; signed. */
  private double pupilEdgePx(double focusErrorMicrons) {
    return focusErrorMicrons / (2 * fNumber * camera.pixelPitchMicrons());
  }

  /**
   * Mean second moment of the disc that refocusing would cure: the field's mean signed focus error
   * (r² averages to a third of its corner value over a rectangle), px².
   */
  double focusPx2() {
    double edge = pupilEdgePx(focusMicrons + lens.curvatureMicrons() / 3);
    return edge * edge / 4 * (1 + lens.obstruction() * lens.obstruction());
  }

  /** The rays of a star at a place of the sensor. */
  Rays at(double xPx, double yPx) {
    double x = xPx - camera.centreX();
    double y = yPx - camera.centreY();
    double r = Math.hypot(x, y);
    double share = r / camera.cornerRadiusPx();
    double focus =
        focusMicrons
            + lens.tiltRightMicrons() * 2 * x / camera.widthPx()
            + lens.tiltDownMicrons() * 2 * y / camera.heightPx()
            + lens.curvatureMicrons() * share * share;
    double split = lens.astigmatismMicrons() * share * share / 2;
    double stop = lens.fNumber() / fNumber;
    return traced(
        pupilEdgePx(focus + split),
        pupilEdgePx(focus - split),
        lens.comaPx() * share * stop * stop,
        r > 0 ? Math.atan2(y, x) : 0);
  }

  private Rays traced(double radialPx, double tangentialPx, double comaPx, double angle) {
    double reach = Math.max(Math.abs(radialPx), Math.abs(tangentialPx)) + 3 * Math.abs(comaPx);
    if (reach < NEGLIGIBLE_PX) {
      return SHARP;
    }
    int count = (int) Math.min(MOST_RAYS, FEWEST_RAYS + 12 * reach * reach);
    double hole2 = lens.obstruction() * lens.obstruction();
    double[] xs = new double[count];
    double[] ys = new double[count];
    double cos = Math.cos(angle);
    double sin = Math.sin(angle);
    double coma0 = comaPx * (1 + hole2);
    for (int i = 0; i < count; i++) {
      // Even cover of the pupil by a sunflower spiral (Vogel 1979, Math. Biosci. 44, 179).
      double rho = Math.sqrt(hole2 + (1 - hole2) * (i + 0.5) / count);
      double u = rho * Math.cos(i * GOLDEN_ANGLE);
      double v = rho * Math.sin(i * GOLDEN_ANGLE);
      double radial = radialPx * u + comaPx * (3 * u * u + v * v) - coma0;
      double tangential = tangentialPx * v + 2 * comaPx * u * v;
      xs[i] = cos * radial - sin * tangential;
      ys[i] = sin * radial + cos * tangential;
    }
    return new Rays(xs, ys);
  }
}
