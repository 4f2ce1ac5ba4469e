package rondure.stars;

/**
 * What a filtered plane shows of empty sky on a mesh: its offset, and its scatter where that
 * exceeds 1.
 */
final class SignificanceNorm {
  private static final int FEWEST_VALUES = 16;
  private static final int PLACES = 6;
  private static final double LEAST_SCATTER = 0.01;

  private final MeshRamp offset;
  private final MeshRamp scatter;

  private SignificanceNorm(MeshGrid offset, MeshGrid scatter, int width) {
    this.offset = new MeshRamp(offset, 1, width);
    this.scatter = new MeshRamp(scatter, 1, width);
  }

  /**
   * Measures a plane.
   *
   * @param plane significances, row after row
   * @param planeWidth their number in a row
   * @param cellSide side of a cell in them
   * @param mesh the cells, on the full grid
   * @param width width of the full grid
   */
  static SignificanceNorm of(
      float[] plane, int planeWidth, int cellSide, MeshGrid mesh, int width) {
    float[] offsets = new float[mesh.size()];
    float[] scatters = new float[mesh.size()];
    CellStatistics statistics = new CellStatistics();
    float[] values = new float[cellSide * cellSide];
    int height = planeWidth == 0 ? 0 : plane.length / planeWidth;
    for (int cell = 0; cell < mesh.size(); cell++) {
      int x0 = cell % mesh.columns() * cellSide;
      int y0 = cell / mesh.columns() * cellSide;
      int across = Math.max(0, Math.min(planeWidth - x0, cellSide));
      int count = 0;
      for (int y = y0; y < Math.min(height, y0 + cellSide); y++) {
        System.arraycopy(plane, y * planeWidth + x0, values, count, across);
        count += across;
      }
      if (count >= FEWEST_VALUES) {
        statistics.measure(values, count, some(values, across, count / across), LEAST_SCATTER);
      }
      offsets[cell] = count >= FEWEST_VALUES ? (float) statistics.level() : Float.NaN;
      scatters[cell] = count >= FEWEST_VALUES ? (float) statistics.noise() : Float.NaN;
    }
    return new SignificanceNorm(
        mesh.with(offsets).medianFiltered().withHolesFilled(0).flatAtBorder(),
        atLeastOne(mesh.with(scatters).medianFiltered().withHolesFilled(1)).flatAtBorder(),
        width);
  }

  private static float[] some(float[] values, int across, int down) {
    float[] some = new float[PLACES * PLACES];
    int next = 0;
    for (int y : CellPlaces.along(down, PLACES)) {
      for (int x : CellPlaces.along(across, PLACES)) {
        some[next++] = values[y * across + x];
      }
    }
    return some;
  }

  private static MeshGrid atLeastOne(MeshGrid scatter) {
    float[] raised = new float[scatter.size()];
    for (int i = 0; i < raised.length; i++) {
      raised[i] = Math.max(1, scatter.cell(i));
    }
    return scatter.with(raised);
  }

  /** Takes the offset off a row and divides by the scatter, in place from {@code start} on. */
  void apply(int row, float[] values, int start) {
    float offsetShare = offset.shareAt(row);
    float[] offsets = offset.from();
    float[] offsetRise = offset.rise();
    float scatterShare = scatter.shareAt(row);
    float[] scatters = scatter.from();
    float[] scatterRise = scatter.rise();
    for (int i = 0; i < offsets.length; i++) {
      values[start + i] =
          (values[start + i] - (offsets[i] + offsetShare * offsetRise[i]))
              / (scatters[i] + scatterShare * scatterRise[i]);
    }
  }
}
