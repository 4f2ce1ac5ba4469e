package rondure.stars;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import rondure.base.Moments;
import rondure.base.PixelPlane;

/** The figures on finding in the accuracy page; each case also goes to target/finding-grid.txt. */
@Tag("thorough")
class FindingGridTest {
  private static final PixelContext LINEAR = new PixelContext(15000, 1, false);
  private static final double NOISE = 5;
  private static final int SIDE = 1024;
  private static final long SEED = 51;

  private final List<String> lines = new ArrayList<>();

  private void note(String text, Object... parts) {
    lines.add(String.format(Locale.ROOT, text, parts));
  }

  private static List<Candidate> find(SkyPainter painter, boolean bayer) {
    PixelPlane plane = bayer ? painter.checkerboard(NOISE, 1) : painter.full(NOISE);
    return StarFinder.find(plane, LINEAR, StarSettings.defaults()).candidates();
  }

  private static long near(List<Candidate> found, double[] place, double radius) {
    return found.stream()
        .filter(c -> Math.hypot(c.xPx() - place[0], c.yPx() - place[1]) <= radius)
        .count();
  }

  /** What is painted at a place. */
  private interface Brush {
    void paint(SkyPainter painter, double x, double y, int index);
  }

  /** Paints things apart from each other; the share of them found as exactly one source. */
  private double shareFoundAsOne(String name, double spacing, boolean bayer, Brush brush) {
    SkyPainter painter = new SkyPainter(SIDE, SIDE, SEED).level(200);
    List<double[]> places = new ArrayList<>();
    for (double y = spacing; y < SIDE - spacing; y += spacing) {
      for (double x = spacing; x < SIDE - spacing; x += spacing) {
        double[] place = {x + painter.uniform(0, 2), y + painter.uniform(0, 2)};
        brush.paint(painter, place[0], place[1], places.size());
        places.add(place);
      }
    }
    List<Candidate> found = find(painter, bayer);
    long single = places.stream().filter(place -> near(found, place, 0.45 * spacing) == 1).count();
    double share = (double) single / places.size();
    String lattice = bayer ? "greens" : "every pixel";
    note("%s, %s: %.3f of %d, %d sources", name, lattice, share, places.size(), found.size());
    return share;
  }

  @Test
  void isolatedStarsTrailsDiscsAndRingsAreOneSourceEach() throws IOException {
    double least = 1;
    for (boolean bayer : new boolean[] {false, true}) {
      for (double fwhm : new double[] {1.2, 1.6, 2.4, 4, 6, 8, 12, 20}) {
        least = bayer && fwhm < 1.6 ? least : Math.min(least, stars(fwhm, bayer));
      }
      for (double length : new double[] {6, 15, 30, 60}) {
        least = Math.min(least, trails(length, 4, bayer));
        least = Math.min(least, trails(length, 40, bayer));
      }
      for (double diameter : new double[] {4, 8, 14, 20}) {
        least = Math.min(least, rings(diameter, 0, bayer));
        least = diameter < 8 ? least : Math.min(least, rings(diameter, 0.5, bayer));
      }
    }
    Files.write(Path.of("target", "finding-grid.txt"), lines);
    assertTrue(least >= 0.95, "least share " + least + ": see target/finding-grid.txt");
  }

  /** Matched SNR of a Gaussian star: F / (√(4π) σ n); greens carry half the pixels. */
  private double stars(double fwhm, boolean bayer) {
    double sigma = fwhm / Moments.FWHM_PER_SIGMA;
    double unit = Math.sqrt(4 * Math.PI * (sigma * sigma + 1 / 12.0)) * NOISE;
    double perSnr = unit * (bayer ? Math.sqrt(2) : 1);
    return shareFoundAsOne(
        "stars of FWHM " + fwhm + ", SNR 8 to 40",
        Math.max(48, 5 * fwhm),
        bayer,
        (painter, x, y, i) ->
            painter.star(x, y, perSnr * (i % 2 == 0 ? 8 : painter.uniform(8, 40)), sigma));
  }

  private double trails(double length, double contrast, boolean bayer) {
    double flux = contrast * NOISE * Math.sqrt(2 * Math.PI) * length;
    return shareFoundAsOne(
        "trails of " + length + " px, " + contrast + " σ high",
        100,
        bayer,
        (painter, x, y, i) -> painter.trail(x, y, flux, length, Math.toRadians(13 * i), 1));
  }

  private double rings(double diameter, double hole, boolean bayer) {
    double area = Math.PI / 4 * diameter * diameter * (1 - hole * hole);
    return shareFoundAsOne(
        "discs of " + diameter + " px, hole " + hole,
        80,
        bayer,
        (painter, x, y, i) ->
            painter.ring(x, y, (i % 2 == 0 ? 5 : 60) * NOISE * area, diameter, hole, 0.9));
  }

  @Test
  void falseDetectionsAndTheSkyOfPlainNoise() throws IOException {
    for (boolean bayer : new boolean[] {false, true}) {
      int sources = 0;
      double level = 0;
      double noise = 0;
      for (int i = 0; i < 3; i++) {
        SkyPainter painter = new SkyPainter(3000, 3000, SEED + i).level(100);
        PixelPlane plane = bayer ? painter.checkerboard(NOISE, 1) : painter.full(NOISE);
        Found found = StarFinder.find(plane, LINEAR, StarSettings.defaults());
        sources += found.candidates().size();
        level += (found.sky().levelCounts() - 100) / NOISE / 3;
        noise += found.sky().noiseCounts() / NOISE / 3;
      }
      note(
          "noise, greens %s: %d in 27 megapixels, level %.4f σ, noise %.4f",
          bayer, sources, level, noise);
      assertTrue(sources <= 27, sources + " false detections on 27 megapixels");
      assertTrue(Math.abs(level) < 0.02, "level off by " + level + " σ");
      assertTrue(Math.abs(noise - 1) < 0.03, "noise over truth " + noise);
    }
    Files.write(Path.of("target", "finding-noise.txt"), lines);
  }
}
