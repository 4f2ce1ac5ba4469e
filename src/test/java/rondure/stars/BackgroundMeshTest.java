package rondure.stars;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import org.junit.jupiter.api.Test;
import rondure.base.PixelPlane;

class BackgroundMeshTest {
  private static final PixelContext LINEAR = new PixelContext(15000, 1, false);

  @Test
  void aVignettedSkyIsFollowedToATenthOfItsNoise() {
    SkyPainter painter = new SkyPainter(1400, 1000, 1);
    painter.add(BackgroundMeshTest::vignette);
    PixelPlane plane = PixelPlane.full(1400, 1000, painter.exposed(5, 0));
    BackgroundMesh mesh = BackgroundMesh.measure(plane, LINEAR, 64);
    double sum = 0;
    double noise = 0;
    double worst = 0;
    int count = 0;
    for (int y = 0; y < 1000; y += 7) {
      for (int x = 0; x < 1400; x += 7) {
        double error = mesh.levelAt(x, y) - vignette(x, y);
        sum += error;
        worst = Math.max(worst, Math.abs(error));
        count++;
        noise += mesh.noiseAt(x, y);
        assertEquals(5, mesh.noiseAt(x, y), 0.6);
      }
    }
    assertEquals(0, sum / count, 0.12 * 5, "mean error of level");
    assertEquals(5, noise / count, 0.03 * 5, "mean noise");
    assertTrue(worst < 0.5 * 5, "largest error " + worst);
  }

  private static double vignette(int x, int y) {
    double radius = Math.hypot(x - 700, y - 500) / 860;
    return 400 * (1 - 0.4 * radius * radius);
  }

  @Test
  void greensOfABayerPlaneAndHolesAreMeasuredAlike() {
    SkyPainter painter = new SkyPainter(256, 256, 2);
    float[] samples = painter.level(200).exposed(4, 0);
    float[] scattered = samples.clone();
    for (int i = 0; i < scattered.length; i += 3) {
      scattered[i] = Float.NaN;
    }
    PixelPlane green =
        PixelPlane.checkerboard(256, 256, SkyPainter.greens(samples.clone(), 256, 1), 1);
    BackgroundMesh bayer = BackgroundMesh.measure(green, LINEAR, 64);
    BackgroundMesh holed =
        BackgroundMesh.measure(PixelPlane.scattered(256, 256, scattered), LINEAR, 64);
    assertFalse(bayer.hasHoles());
    assertTrue(holed.hasHoles());
    assertEquals(200, bayer.levelAt(128, 128), 0.5);
    assertEquals(200, holed.levelAt(128, 128), 0.5);
    assertEquals(4, bayer.noiseAt(128, 128), 0.12);
    assertEquals(4, holed.noiseAt(128, 128), 0.12);
  }

  @Test
  void cellsWithoutPixelsTakeTheirNeighboursSky() {
    float[] samples = new SkyPainter(256, 256, 3).level(100).exposed(3, 0);
    for (int i = 0; i < samples.length; i++) {
      if (i % 256 < 70) {
        samples[i] = Float.NaN;
      }
    }
    PixelPlane plane = PixelPlane.scattered(256, 256, samples);
    BackgroundMesh mesh = BackgroundMesh.measure(plane, LINEAR, 64);
    assertEquals(100, mesh.levelAt(10, 10), 1);
    BackgroundMesh empty =
        BackgroundMesh.measure(PixelPlane.scattered(8, 8, nothing(64)), LINEAR, 64);
    assertEquals(0, empty.levelAt(3, 3), 0);
  }

  private static float[] nothing(int count) {
    float[] samples = new float[count];
    Arrays.fill(samples, Float.NaN);
    return samples;
  }

  @Test
  void noiseIsNeverBelowHalfACodeStepNorBelowOneOnClippedSky() {
    float[] flat = new float[128 * 128];
    Arrays.fill(flat, 700);
    flat[0] = 0;
    PixelContext eightBit = new PixelContext(65535, 20, false);
    BackgroundMesh mesh = BackgroundMesh.measure(PixelPlane.full(128, 128, flat), eightBit, 64);
    assertEquals(10, mesh.noiseAt(100, 100), 1e-3);
    BackgroundMesh black =
        BackgroundMesh.measure(PixelPlane.full(128, 128, new float[128 * 128]), eightBit, 64);
    assertEquals(20, black.noiseAt(64, 64), 1e-3);
    assertEquals(1, black.clippedShare().cell(0), 0);
  }

  /** IEC 61966-2-1: code 118 of 255 is 18 % grey; neighbours there differ as the curve says. */
  @Test
  void codeStepsOfDevelopedFilesFollowTheSrgbCurve() {
    double step = 65535 / 255.0 / 12.92;
    PixelContext developed = new PixelContext(65535, step, true);
    for (int code : new int[] {5, 20, 60, 118, 200, 250}) {
      double here = 65535 * linear(code / 255.0);
      double next = 65535 * (linear((code + 0.5) / 255.0) - linear((code - 0.5) / 255.0));
      assertEquals(1, CodeSteps.at(developed, here) / next, 0.01, "code " + code);
    }
    assertEquals(step, CodeSteps.at(new PixelContext(65535, step, false), 30000), 0);
  }

  private static double linear(double code) {
    return code <= 0.04045 ? code / 12.92 : Math.pow((code + 0.055) / 1.055, 2.4);
  }
}
