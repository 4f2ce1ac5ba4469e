package rondure.sim;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import rondure.base.Moments;

/**
 * Painted light, summed pixel by pixel, has the moments of the textbook kernels. Moments of
 * convolved kernels add; a pixel adds 1/12 (Sheppard's correction).
 */
class PaintedMomentsTest {
  private static final int SIDE = 80;
  private static final double CORE_PX2 = 0.81;
  private static final double PIXEL_PX2 = 1.0 / 12;
  private static final Rays NO_RAYS = new Rays(new double[1], new double[1]);

  private static float[] painted(double[] x, double[] y, Rays rays) {
    float[] plane = new float[SIDE * SIDE];
    LightPainter painter =
        new LightPainter(SIDE, SIDE, plane, List.of(new StarCore.Part(1, CORE_PX2)));
    painter.paint(x, y, x.length, rays, (px, py) -> 1);
    return plane;
  }

  private static double[] sums(float[] plane) {
    double light = 0;
    double x = 0;
    double y = 0;
    for (int i = 0; i < plane.length; i++) {
      light += plane[i];
      x += plane[i] * (i % SIDE);
      y += plane[i] * (i / SIDE);
    }
    return new double[] {light, x / light, y / light};
  }

  private static Moments moments(float[] plane) {
    double[] sums = sums(plane);
    double xx = 0;
    double xy = 0;
    double yy = 0;
    for (int i = 0; i < plane.length; i++) {
      double dx = i % SIDE - sums[1];
      double dy = i / SIDE - sums[2];
      xx += plane[i] * dx * dx;
      xy += plane[i] * dx * dy;
      yy += plane[i] * dy * dy;
    }
    return new Moments(xx / sums[0], xy / sums[0], yy / sums[0]);
  }

  /** The painted moments less those of core and pixel. */
  private static Moments added(double[] x, double[] y, Rays rays) {
    return moments(painted(x, y, rays)).minus(Moments.round(CORE_PX2 + PIXEL_PX2));
  }

  private static double[][] line(double length, double angle, int steps) {
    double[][] path = new double[2][steps];
    for (int i = 0; i < steps; i++) {
      double along = length * ((i + 0.5) / steps - 0.5);
      path[0][i] = 39.3 + along * Math.cos(angle);
      path[1][i] = 40.1 + along * Math.sin(angle);
    }
    return path;
  }

  private static LensBlur lens(String... changes) {
    NightPlan plan = Plans.with(changes);
    return new LensBlur(plan, Exposure.timetable(plan).get(0));
  }

  @Property(tries = 60)
  void lightIsKeptAndCentredWhereItWasPut(
      @ForAll @DoubleRange(min = 30, max = 50) double x,
      @ForAll @DoubleRange(min = 30, max = 50) double y) {
    double[] sums = sums(painted(new double[] {x}, new double[] {y}, NO_RAYS));
    assertEquals(1, sums[0], 1e-5);
    assertEquals(x, sums[1], 1e-5);
    assertEquals(y, sums[2], 1e-5);
  }

  /** A uniform line: L²/12 along, nothing across. */
  @ParameterizedTest
  @CsvSource({"6, 0", "6, 0.7", "1, 1.2", "20, 2.4"})
  void lineAddsTwelfthOfItsSquare(double length, double angle) {
    double[][] path = line(length, angle, 400);
    Moments added = added(path[0], path[1], NO_RAYS);
    assertEquals(length * length / 12, added.majorPx2(), 0.005);
    assertEquals(0, added.minorPx2(), 0.005);
    assertEquals(Math.cos(2 * angle), Math.cos(2 * added.positionAngleRad()), 0.02);
  }

  /** A trail longer than one piece of the painter's lattice is still one trail. */
  @Test
  void longTrailIsPaintedInPiecesWithoutSeam() {
    double[][] path = line(60, 0, 4000);
    float[] plane = painted(path[0], path[1], NO_RAYS);
    assertEquals(1, sums(plane)[0], 1e-5);
    assertEquals(60 * 60 / 12.0, moments(plane).xxPx2() - CORE_PX2 - PIXEL_PX2, 0.05);
    for (int x = 15; x < 63; x++) {
      assertEquals(plane[40 * SIDE + 38], plane[40 * SIDE + x], 2e-4);
    }
  }

  /** A uniform disc D: D²/16 per axis; D = |δz|/N: 30 µm at f/2.8 with 6 µm is 1.7857 px. */
  @Test
  void defocusAddsSixteenthOfTheDiscsSquare() {
    Rays rays = lens("shots", shot(30)).at(60, 80);
    Moments added = added(new double[] {40}, new double[] {40}, rays);
    assertEquals(0.19930, added.meanPx2(), 0.003);
    assertEquals(0, added.spin2Px2(), 0.003);
  }

  /** A disc of 8 px: 4.000; with a hole of 3.2 px: (D² + d²)/16 = 4.640. */
  @Test
  void annulusAddsBothDiameters() {
    String focus = shot(8 * 6 * 2.8);
    double[] at = {40};
    assertEquals(4.0, added(at, at, lens("shots", focus).at(9, 9)).meanPx2(), 0.015);
    LensBlur holed = lens("shots", focus, "lens.obstruction", "0.4");
    assertEquals(4.64, added(at, at, holed.at(9, 9)).meanPx2(), 0.015);
    assertEquals(4.64, holed.focusPx2(), 1e-9);
  }

  /** Line 6, disc 8 and Gaussian 0.9 together: 3 + 4 + 0.81 along the line. */
  @Test
  void momentsOfConvolvedKernelsAdd() {
    double[][] path = line(6, 0, 400);
    Rays disc = lens("shots", shot(8 * 6 * 2.8)).at(9, 9);
    Moments whole = moments(painted(path[0], path[1], disc));
    assertEquals(7.81 + PIXEL_PX2, whole.xxPx2(), 0.02);
    assertEquals(4.81 + PIXEL_PX2, whole.yyPx2(), 0.02);
  }

  /** Seidel coma with unit coefficient: radial 1/2, tangential 1/6 (Born &amp; Wolf, memory). */
  @Test
  void comaIsThreeTimesLongerRadially() {
    LensBlur coma = lens("lens.comaPx", "1");
    Rays rays = coma.at(119.5 + Math.hypot(120, 80), 79.5);
    assertEquals(0.5, rays.moments().xxPx2(), 0.01);
    assertEquals(1.0 / 6, rays.moments().yyPx2(), 0.005);
    Moments painted = added(new double[] {40}, new double[] {40}, rays);
    assertEquals(0.5, painted.xxPx2(), 0.015);
  }

  /**
   * Astigmatism: M_rr = (z - z_T)²/(16 N² p²), tangential likewise with z_S. For z_T = -20 µm, z_S
   * = 0 at f/2.8 and 6 µm: z = 20 gives (0.35431, 0.08858), z = 0 gives (0.08858, 0).
   */
  @ParameterizedTest
  @CsvSource({"20, 0.35431, 0.08858", "0, 0.08858, 0", "-10, 0.02214, 0.02214"})
  void astigmatismTurnsAcrossFocus(double focus, double radial, double tangential) {
    LensBlur lens =
        lens("shots", shot(focus + 10), "lens.astigmatismMicrons", "20", "lens.comaPx", "0");
    Rays rays = lens.at(119.5, 79.5 + Math.hypot(120, 80));
    assertEquals(radial, rays.moments().yyPx2(), 0.004);
    assertEquals(tangential, rays.moments().xxPx2(), 0.004);
  }

  /** Field curvature and tilt: focus error at the places they are named for. */
  @Test
  void tiltAndCurvatureAreNamedForEdgeAndCorner() {
    double scale = 16 * 2.8 * 2.8 * 36;
    LensBlur tilted = lens("lens.tiltRightMicrons", "30");
    assertEquals(900 / scale, tilted.at(239.5, 79.5).moments().meanPx2(), 0.004);
    assertEquals(0, tilted.at(119.5, 159.5).moments().meanPx2(), 1e-9);
    LensBlur curved = lens("lens.curvatureMicrons", "30");
    assertEquals(900 / scale, curved.at(239.5, 159.5).moments().meanPx2(), 0.004);
    assertEquals(100 / scale, curved.focusPx2(), 1e-9);
  }

  /** Moffat 1969, A&amp;A 3, 455 (from memory): (1 + r²/α²)^-β, FWHM = 2α√(2^(1/β) - 1). */
  @ParameterizedTest
  @CsvSource({"2.5", "3", "4.765"})
  void mixtureOfGaussiansIsTheMoffatProfile(double beta) {
    double fwhm = 2.2;
    double alpha = fwhm / (2 * Math.sqrt(Math.pow(2, 1 / beta) - 1));
    List<StarCore.Part> parts = StarCore.moffat(fwhm, beta);
    for (double r = 0; r <= 2.5 * fwhm; r += 0.1) {
      double sum = 0;
      double centre = 0;
      for (StarCore.Part part : parts) {
        double peak = part.share() / part.variancePx2();
        centre += peak;
        sum += peak * Math.exp(-r * r / (2 * part.variancePx2()));
      }
      double moffat = Math.pow(1 + r * r / (alpha * alpha), -beta);
      assertEquals(moffat, sum / centre, 0.02 * moffat + 1e-4, "at r = " + r);
    }
    assertEquals(1, parts.stream().mapToDouble(StarCore.Part::share).sum(), 1e-3);
  }

  private static String shot(double focusMicrons) {
    return "[{\"count\":1,\"exposureSeconds\":20,\"intervalSeconds\":25,\"iso\":800,"
        + "\"focusMicrons\":"
        + focusMicrons
        + "}]";
  }
}
