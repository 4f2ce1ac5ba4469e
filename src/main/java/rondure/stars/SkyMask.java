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
    int row = Math.max(0, Math.min(rows.size() - 1, (int) (yPx / meshPx)));
    String cells = rows.get(row);
    int column = Math.max(0, Math.min(cells.length() - 1, (int) (xPx / meshPx)));
    return cells.charAt(column) == '1';
  }
}
