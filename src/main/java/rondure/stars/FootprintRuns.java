package rondure.stars;

import java.util.Arrays;

/**
 * Connected footprints of light: places where any scale of a {@link ScaleSpace} rises above a low
 * level, joined to their 8 neighbours; only footprints that reach the detection level somewhere are
 * kept.
 *
 * <p>Places are stored as horizontal runs, in raster order, with the finest scale's significance of
 * every place.
 */
final class FootprintRuns {
  /** Places this far above the sky (σ) belong to a source that is detected elsewhere. */
  static final float LOW = 2.5f;

  private final ScaleSpace space;
  private final float detection;
  private final int scales;

  private int runCount;
  private int[] runY = new int[1024];
  private int[] runX = new int[1024];
  private int[] runEnd = new int[1024];
  private int[] runOffset = new int[1024];
  private int[] parent = new int[1024];

  private int placeCount;
  private float[] finest = new float[4096];
  private int previousRowStart;
  private int thisRowStart;
  private int[] footprintRuns = new int[0];
  private int[] footprintStart = {0};

  private FootprintRuns(ScaleSpace space, float detection) {
    this.space = space;
    this.detection = detection;
    this.scales = space.scales();
  }

  /** Traces the footprints that reach {@code detectionSnr} at some scale. */
  static FootprintRuns trace(ScaleSpace space, double detectionSnr) {
    FootprintRuns runs = new FootprintRuns(space, (float) detectionSnr);
    float[] coarse = new float[Math.max(1, (space.width() + 1) / 2)];
    space.readFinest((row, line) -> runs.addRow(row, line, coarse));
    runs.collect();
    return runs;
  }

  /** Number of footprints kept. */
  int size() {
    return footprintStart.length - 1;
  }

  /** Number of runs of footprint {@code index}. */
  int runsOf(int index) {
    return footprintStart[index + 1] - footprintStart[index];
  }

  /** The runs of footprint {@code index} are numbered 0 to runsOf(index) − 1, raster order. */
  int y(int index, int run) {
    return runY[footprintRuns[footprintStart[index] + run]];
  }

  int firstX(int index, int run) {
    return runX[footprintRuns[footprintStart[index] + run]];
  }

  /** One past the last column of a run. */
  int endX(int index, int run) {
    return runEnd[footprintRuns[footprintStart[index] + run]];
  }

  /** Copies the finest scale's significances of a run to {@code out} from {@code start} on. */
  void copyFinest(int index, int run, float[] out, int start) {
    int number = footprintRuns[footprintStart[index] + run];
    System.arraycopy(finest, runOffset[number], out, start, runEnd[number] - runX[number]);
  }

  private void addRow(int y, float[] line, float[] coarse) {
    if (y % 2 == 0) {
      space.readCoarse(y, LOW, coarse);
    }
    previousRowStart = thisRowStart;
    thisRowStart = runCount;
    int x = 0;
    while (x < line.length) {
      x = nextAbove(x, line, coarse);
      int end = x;
      while (end < line.length && (line[end] > LOW || coarse[end >> 1] > LOW)) {
        end++;
      }
      if (end > x) {
        addRun(y, x, end, line);
      }
      x = end + 1;
    }
    if (y > 0) {
      joinRows();
    }
  }

  /** The next place above the low level from {@code x} on, the end of the line without one. */
  private static int nextAbove(int x, float[] line, float[] coarse) {
    int from = x;
    if ((from & 1) == 1) {
      if (line[from] > LOW || coarse[from >> 1] > LOW) {
        return from;
      }
      from++;
    }
    int bin = from >> 1;
    int pairs = line.length >> 1;
    while (bin < pairs && !(coarse[bin] > LOW || line[2 * bin] > LOW || line[2 * bin + 1] > LOW)) {
      bin++;
    }
    from = 2 * bin;
    while (from < line.length && !(line[from] > LOW || coarse[from >> 1] > LOW)) {
      from++;
    }
    return from;
  }

  private void addRun(int y, int from, int end, float[] line) {
    if (runCount == runY.length) {
      int size = 2 * runCount;
      runY = Arrays.copyOf(runY, size);
      runX = Arrays.copyOf(runX, size);
      runEnd = Arrays.copyOf(runEnd, size);
      runOffset = Arrays.copyOf(runOffset, size);
      parent = Arrays.copyOf(parent, size);
    }
    int length = end - from;
    if (placeCount + length > finest.length) {
      finest = Arrays.copyOf(finest, Math.max(placeCount + length, finest.length * 3 / 2));
    }
    System.arraycopy(line, from, finest, placeCount, length);
    runY[runCount] = y;
    runX[runCount] = from;
    runEnd[runCount] = end;
    runOffset[runCount] = placeCount;
    parent[runCount] = runCount;
    placeCount += length;
    runCount++;
  }

  /** Joins the runs of the newest row to those they touch, corners too, in the row above. */
  private void joinRows() {
    int above = previousRowStart;
    for (int run = thisRowStart; run < runCount; run++) {
      while (above < thisRowStart && runEnd[above] < runX[run]) {
        above++;
      }
      for (int i = above; i < thisRowStart && runX[i] <= runEnd[run]; i++) {
        join(i, run);
      }
    }
  }

  private void join(int first, int second) {
    int low = root(first);
    int high = root(second);
    if (low != high) {
      parent[Math.max(low, high)] = Math.min(low, high);
    }
  }

  private int root(int run) {
    int at = run;
    while (parent[at] != at) {
      parent[at] = parent[parent[at]];
      at = parent[at];
    }
    return at;
  }

  /** Sorts the runs of detected footprints together, footprints in raster order. */
  private void collect() {
    boolean[] detected = new boolean[runCount];
    for (int run = 0; run < runCount; run++) {
      // roots come first: all earlier runs point to theirs already
      parent[run] = parent[parent[run]];
      int root = parent[run];
      detected[root] = detected[root] || reachesDetection(run);
    }
    int[] number = new int[runCount];
    int count = 0;
    for (int run = 0; run < runCount; run++) {
      int root = parent[run];
      number[run] = root != run ? number[root] : detected[run] ? count++ : -1;
    }
    footprintStart = new int[count + 1];
    for (int footprint : number) {
      if (footprint >= 0) {
        footprintStart[footprint + 1]++;
      }
    }
    for (int i = 0; i < count; i++) {
      footprintStart[i + 1] += footprintStart[i];
    }
    footprintRuns = new int[footprintStart[count]];
    int[] next = Arrays.copyOf(footprintStart, count);
    for (int run = 0; run < runCount; run++) {
      if (number[run] >= 0) {
        footprintRuns[next[number[run]]++] = run;
      }
    }
  }

  private boolean reachesDetection(int run) {
    for (int i = 0; i < runEnd[run] - runX[run]; i++) {
      if (finest[runOffset[run] + i] >= detection) {
        return true;
      }
    }
    for (int k = 1; k < scales; k++) {
      int step = 1 << k;
      for (int x = runX[run] & -step; x < runEnd[run]; x += step) {
        if (space.at(k, x, runY[run]) >= detection) {
          return true;
        }
      }
    }
    return false;
  }
}
