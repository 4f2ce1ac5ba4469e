package rondure.stars;

import java.util.List;

/**
 * Which mesh cells of a frame are sky, in stored coordinates.
 *
 * @param meshPx side of a mesh cell; the last column and row may be cut by the frame
 * @param rows one string per mesh row, one character per cell: '1' sky, '0' not sky
 */
public record SkyMask(int meshPx, List<String> rows) {
  public SkyMask {
    if (meshPx <= 0) {
      throw new IllegalArgumentException("meshPx must be > 0, was " + meshPx);
    }
    rows = List.copyOf(rows);
  }

  /** True when the pixel at (x, y) lies in a sky cell; positions outside are clamped. */
  public boolean isSky(double xPx, double yPx) {
    return isSkyCell((int) Math.floor(xPx / meshPx), (int) Math.floor(yPx / meshPx));
  }

  /** True when the cell is sky; cells outside are clamped. */
  public boolean isSkyCell(int column, int row) {
    String cells = rows.get(Math.max(0, Math.min(rows.size() - 1, row)));
    return cells.charAt(Math.max(0, Math.min(cells.length() - 1, column))) == '1';
  }

  /** True when the cell or one of the eight around it is sky. */
  public boolean isNearSkyCell(int column, int row) {
    for (int i = -1; i <= 1; i++) {
      for (int j = -1; j <= 1; j++) {
        if (isSkyCell(column + i, row + j)) {
          return true;
        }
      }
    }
    return false;
  }

  /** The same for the cell of a pixel. */
  public boolean isNearSky(double xPx, double yPx) {
    return isNearSkyCell((int) Math.floor(xPx / meshPx), (int) Math.floor(yPx / meshPx));
  }
}
