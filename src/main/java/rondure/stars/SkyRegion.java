package rondure.stars;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import rondure.base.RobustStats;

/**
 * Which mesh cells are sky.
 *
 * <p>Vignetting, city glow, the Milky Way and aurora change the level smoothly; a horizon is a
 * step. So cells are joined to neighbours of similar level, and of the regions that come out the
 * one with the most stars is the sky, whether it is brighter or darker than the rest; others join
 * it when they are about as rich in stars, much darker ones when they are no poorer: lamps on dark
 * land are found as stars are. Cells much rougher than the sky's level implies (trees, rocks in
 * moonlight, buildings) are not sky even where their level fits, nor are cells cut by the horizon.
 * Small holes (the Moon, a lamp) are closed. A frame whose sky is clipped to black tells nothing
 * about its ground: there all is sky. In a frame that shows objects all over, what is near them is
 * not sky either ({@link Texture}).
 */
final class SkyRegion {
  /** Neighbouring cells of one region differ by less than this factor per 64 px. */
  private static final double STEP_FACTOR = 1.8;

  private static final double STEP_PX = 64;
  private static final double LEAST_STEP_FACTOR = 1.4;

  private static final double ROUGH_FACTOR = 3;
  private static final double CUT_FACTOR = 2.5;
  private static final double STEEPER = 1.5;
  private static final double RICH_SHARE = 0.3;

  /** Sky seen through a gap has about the level of the rest; land by night has less. */
  private static final double DARK_SHARE = 0.45;

  private static final int FEWEST_STARS = 3;
  private static final double HOLE_SHARE = 0.05;
  private static final double BLACK_SHARE = 0.5;

  private final BackgroundMesh background;
  private final PixelContext context;
  private final MeshGrid level;
  private final double[] stars;
  private final double[] implied;
  private final double stepFactor;

  private SkyRegion(BackgroundMesh background, double[] stars, PixelContext context, int meshPx) {
    this.background = background;
    this.context = context;
    this.level = background.level();
    this.stars = stars;
    this.implied = new double[level.size()];
    this.stepFactor = Math.max(LEAST_STEP_FACTOR, Math.pow(STEP_FACTOR, meshPx / STEP_PX));
  }

  /**
   * Finds the sky.
   *
   * @param sources everything found in the frame
   * @param meshPx the cells' side
   */
  static SkyMask find(
      BackgroundMesh background, List<Source> sources, PixelContext context, int meshPx) {
    MeshGrid level = background.level();
    double[] stars = StarEvidence.perCell(sources, level.columns(), level.rows(), meshPx);
    boolean[] sky = new SkyRegion(background, stars, context, meshPx).cells();
    List<String> rows = new ArrayList<>();
    for (int row = 0; row < level.rows(); row++) {
      StringBuilder line = new StringBuilder();
      for (int column = 0; column < level.columns(); column++) {
        line.append(sky[row * level.columns() + column] ? '1' : '0');
      }
      rows.add(line.toString());
    }
    return new SkyMask(meshPx, rows);
  }

  private boolean[] cells() {
    boolean[] all = new boolean[level.size()];
    Arrays.fill(all, true);
    int[] region = regions(all);
    boolean[] sky = richest(region);
    if (isBlack(sky)) {
      return all;
    }
    learnNoise(sky);
    boolean[] smooth = new boolean[level.size()];
    for (int i = 0; i < smooth.length; i++) {
      smooth[i] = !isRough(i);
    }
    sky = richest(regions(smooth));
    dropCutCells(sky);
    closeHoles(sky);
    Texture.takeOut(background, stars, sky);
    return sky;
  }

  /** Region number of each cell: joined where neighbours' levels are alike; −1 where not usable. */
  private int[] regions(boolean[] usable) {
    return CellRegions.label(level.columns(), level.rows(), usable, this::alike);
  }

  private boolean alike(int first, int second) {
    double a = Math.max(0, level.cell(first)) + floor(first);
    double b = Math.max(0, level.cell(second)) + floor(second);
    return Math.max(a, b) < stepFactor * Math.min(a, b);
  }

  private double floor(int cell) {
    return Math.max(context.codeStepCounts(), 0.3 * background.noise().cell(cell));
  }

  /** The region with the most stars, and those about as rich in stars. */
  private boolean[] richest(int[] region) {
    int count = Arrays.stream(region).max().orElse(-1) + 1;
    double[] found = new double[count];
    int[] size = new int[count];
    for (int i = 0; i < region.length; i++) {
      if (region[i] >= 0) {
        found[region[i]] += stars[i];
        size[region[i]]++;
      }
    }
    int best = best(found, size);
    double rich = found[best] / size[best];
    boolean[] joined = new boolean[count];
    for (int number = 0; number < count; number++) {
      double own = found[number] / size[number];
      joined[number] =
          number == best
              || found[number] >= FEWEST_STARS
                  && own >= RICH_SHARE * rich
                  && (own >= rich || levelOf(region, number) >= DARK_SHARE * levelOf(region, best));
    }
    boolean[] sky = new boolean[region.length];
    for (int i = 0; i < sky.length; i++) {
      sky[i] = region[i] >= 0 && joined[region[i]];
    }
    return sky;
  }

  /** Median over the cells of a region. */
  private double levelOf(int[] region, int number) {
    double[] levels =
        IntStream.range(0, region.length)
            .filter(i -> region[i] == number)
            .mapToDouble(i -> Math.max(0, level.cell(i)))
            .toArray();
    return levels.length == 0 ? 0 : RobustStats.median(levels);
  }

  private static int best(double[] found, int[] size) {
    int best = 0;
    for (int i = 1; i < size.length; i++) {
      best = found[i] > found[best] ? i : best;
    }
    if (size.length == 0 || found[best] >= FEWEST_STARS) {
      return best;
    }
    for (int i = 0; i < size.length; i++) {
      best = size[i] > size[best] ? i : best;
    }
    return best;
  }

  private boolean isBlack(boolean[] sky) {
    double[] shares = values(sky, background.clippedShare());
    return shares.length > 0 && shares[shares.length / 2] > BLACK_SHARE;
  }

  /**
   * What noise a level implies: proportional to the square root of the light in linear files, to
   * the light itself in developed ones (a tone curve keeps relative contrast), never below a code
   * step; the factor is the median over the sky.
   */
  private void learnNoise(boolean[] sky) {
    double[] ratios = new double[level.size()];
    int count = 0;
    for (int i = 0; i < level.size(); i++) {
      if (sky[i] && !Float.isNaN(background.cellNoise().cell(i))) {
        ratios[count++] = background.cellNoise().cell(i) / shape(i);
      }
    }
    Arrays.sort(ratios, 0, count);
    double factor = count == 0 ? Double.POSITIVE_INFINITY : ratios[count / 2];
    for (int i = 0; i < implied.length; i++) {
      implied[i] = Math.max(factor * shape(i), CodeSteps.at(context, level.cell(i)));
    }
  }

  private double shape(int cell) {
    double light = Math.max(0, level.cell(cell)) + floor(cell);
    return context.developed() ? light : Math.sqrt(light);
  }

  private boolean isRough(int cell) {
    return background.cellNoise().cell(cell) > ROUGH_FACTOR * implied[cell]
        && background.roughness().cell(cell) > ROUGH_FACTOR * implied[cell];
  }

  /**
   * Drops cells at the rim of the sky whose scatter shows the step of the horizon inside them, as
   * far as the slope of the sky above does not explain it.
   */
  private void dropCutCells(boolean[] sky) {
    boolean[] before = sky.clone();
    int columns = level.columns();
    for (int i = 0; i < sky.length; i++) {
      double slope = STEEPER * steepestStep(before, i);
      double noise = background.cellNoise().cell(i);
      boolean cut = noise * noise > Math.pow(CUT_FACTOR * implied[i], 2) + slope * slope / 12;
      if (cut && CellRegions.touches(columns, level.rows(), before, i)) {
        sky[i] = false;
      }
    }
  }

  /** The largest change of level from a cell to its neighbours in the sky. */
  private double steepestStep(boolean[] sky, int cell) {
    double steepest = 0;
    for (int side = 0; side < 4; side++) {
      int other = CellRegions.neighbour(level.columns(), level.rows(), cell, side);
      if (other >= 0 && sky[other]) {
        MeshGrid cells = background.cellLevel();
        steepest = Math.max(steepest, Math.abs(cells.cell(cell) - cells.cell(other)));
      }
    }
    return steepest;
  }

  private void closeHoles(boolean[] sky) {
    boolean[] ground = new boolean[sky.length];
    for (int i = 0; i < sky.length; i++) {
      ground[i] = !sky[i];
    }
    int[] holes = CellRegions.label(level.columns(), level.rows(), ground, (a, b) -> true);
    int count = Arrays.stream(holes).max().orElse(-1) + 1;
    int[] size = new int[count];
    boolean[] atBorder = new boolean[count];
    for (int i = 0; i < holes.length; i++) {
      if (holes[i] >= 0) {
        size[holes[i]]++;
        atBorder[holes[i]] |= CellRegions.atBorder(level.columns(), level.rows(), i);
      }
    }
    double largest = Math.max(4, HOLE_SHARE * sky.length);
    for (int i = 0; i < sky.length; i++) {
      sky[i] |= holes[i] >= 0 && !atBorder[holes[i]] && size[holes[i]] <= largest;
    }
  }

  /** Values of the marked cells, sorted, NaN left out. */
  private static double[] values(boolean[] marked, MeshGrid grid) {
    double[] kept = new double[marked.length];
    int count = 0;
    for (int i = 0; i < marked.length; i++) {
      if (marked[i] && !Float.isNaN(grid.cell(i))) {
        kept[count++] = grid.cell(i);
      }
    }
    Arrays.sort(kept, 0, count);
    return Arrays.copyOf(kept, count);
  }

  /** The background of the sky in a few numbers; of the whole frame when nothing is sky. */
  static SkyState state(BackgroundMesh background, SkyMask mask, PixelContext context) {
    MeshGrid level = background.level();
    boolean[] sky = new boolean[level.size()];
    int skyCells = 0;
    for (int i = 0; i < sky.length; i++) {
      sky[i] = mask.rows().get(i / level.columns()).charAt(i % level.columns()) == '1';
      skyCells += sky[i] ? 1 : 0;
    }
    if (skyCells == 0) {
      Arrays.fill(sky, true);
    }
    double[] levels = values(sky, level);
    double[] noises = values(sky, background.noise());
    double clipped = Arrays.stream(values(sky, background.clippedShare())).average().orElse(0);
    double median = levels[levels.length / 2];
    return new SkyState(
        median,
        noises[noises.length / 2],
        median / context.whiteLevelCounts(),
        (double) skyCells / sky.length,
        clipped);
  }
}
