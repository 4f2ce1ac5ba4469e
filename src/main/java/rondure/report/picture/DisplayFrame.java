package rondure.report.picture;

import java.awt.geom.Path2D;
import java.util.List;
import rondure.base.Orientation;
import rondure.stars.SkyMask;
import rondure.stars.StarField;

/**
 * A frame as it is shown, fitted into a rectangle: stored positions become drawing positions.
 *
 * @param widthPx stored width
 * @param heightPx stored height
 * @param orientation how the stored raster is turned
 * @param scale drawing units per frame pixel
 */
record DisplayFrame(int widthPx, int heightPx, Orientation orientation, double scale) {

  /** The frame as large as it fits into the rectangle from (0, 0), at its top left. */
  static DisplayFrame fit(StarField field, Orientation orientation, double width, double height) {
    int shownWidth = orientation.displayWidthPx(field.widthPx(), field.heightPx());
    int shownHeight = orientation.displayHeightPx(field.widthPx(), field.heightPx());
    double scale = Math.min(width / shownWidth, height / shownHeight);
    return new DisplayFrame(field.widthPx(), field.heightPx(), orientation, scale);
  }

  double x(double storedX, double storedY) {
    return scale * (orientation.displayX(storedX, storedY, widthPx, heightPx) + 0.5);
  }

  double y(double storedX, double storedY) {
    return scale * (orientation.displayY(storedX, storedY, widthPx, heightPx) + 0.5);
  }

  double width() {
    return scale * orientation.displayWidthPx(widthPx, heightPx);
  }

  double height() {
    return scale * orientation.displayHeightPx(widthPx, heightPx);
  }

  /** The parts of the frame that are not sky, as one path. */
  Path2D ground(SkyMask mask) {
    Path2D ground = new Path2D.Double(Path2D.WIND_NON_ZERO);
    List<String> rows = mask.rows();
    for (int row = 0; row < rows.size(); row++) {
      String cells = rows.get(row);
      int start = -1;
      for (int column = 0; column <= cells.length(); column++) {
        boolean isGround = column < cells.length() && cells.charAt(column) != '1';
        if (isGround && start < 0) {
          start = column;
        } else if (!isGround && start >= 0) {
          addCells(ground, mask.meshPx(), row, start, column);
          start = -1;
        }
      }
    }
    return ground;
  }

  /** The line between sky and ground, along the mesh. */
  Path2D horizon(SkyMask mask) {
    Path2D line = new Path2D.Double();
    List<String> rows = mask.rows();
    int mesh = mask.meshPx();
    for (int row = 0; row < rows.size(); row++) {
      for (int column = 0; column < rows.get(row).length(); column++) {
        char cell = rows.get(row).charAt(column);
        double right = Math.min((column + 1) * mesh, widthPx) - 0.5;
        double bottom = Math.min((row + 1) * mesh, heightPx) - 0.5;
        double left = column * mesh - 0.5;
        double top = row * mesh - 0.5;
        if (column + 1 < rows.get(row).length() && cell != rows.get(row).charAt(column + 1)) {
          addLine(line, right, top, right, bottom);
        }
        if (row + 1 < rows.size() && cell != rows.get(row + 1).charAt(column)) {
          addLine(line, left, bottom, right, bottom);
        }
      }
    }
    return line;
  }

  private void addCells(Path2D path, int mesh, int row, int fromColumn, int toColumn) {
    double left = fromColumn * mesh - 0.5;
    double top = row * mesh - 0.5;
    double right = Math.min(toColumn * mesh, widthPx) - 0.5;
    double bottom = Math.min((row + 1) * mesh, heightPx) - 0.5;
    path.moveTo(x(left, top), y(left, top));
    path.lineTo(x(right, top), y(right, top));
    path.lineTo(x(right, bottom), y(right, bottom));
    path.lineTo(x(left, bottom), y(left, bottom));
    path.closePath();
  }

  private void addLine(Path2D path, double fromX, double fromY, double toX, double toY) {
    path.moveTo(x(fromX, fromY), y(fromX, fromY));
    path.lineTo(x(toX, toY), y(toX, toY));
  }
}
