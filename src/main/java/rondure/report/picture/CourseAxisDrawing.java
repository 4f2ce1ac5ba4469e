package rondure.report.picture;

import java.awt.BasicStroke;
import java.awt.Graphics2D;
import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;
import java.util.List;

/** The axis under a course, the names of events under it, and the lines where scenes begin. */
record CourseAxisDrawing(CourseAxis axis, double plot) {

  /** Beside a panel, so that no line runs through the words above it. */
  void drawSceneLines(
      Graphics2D graphics, List<CourseChart.SceneStart> scenes, double top, double bottom) {
    graphics.setColor(Palette.MUTED);
    graphics.setStroke(
        new BasicStroke(0.7f, BasicStroke.CAP_BUTT, BasicStroke.JOIN_MITER, 1, dashes(), 0));
    for (CourseChart.SceneStart scene : scenes.subList(Math.min(1, scenes.size()), scenes.size())) {
      double x = CourseChart.GUTTER + axis.x(scene.x(), plot);
      graphics.draw(new Line2D.Double(x, top, x, bottom));
    }
  }

  void drawScenes(Graphics2D graphics, List<CourseChart.SceneStart> scenes) {
    graphics.setFont(ReportFonts.sans(CourseChart.FONT_SIZE));
    graphics.setColor(Palette.MUTED);
    double freeFrom = 0;
    for (CourseChart.SceneStart scene : scenes) {
      double x = CourseChart.GUTTER + axis.x(scene.x(), plot);
      double wide = TextMeasure.width(graphics.getFont(), scene.words());
      if (x + 3 >= freeFrom && x + 3 + wide <= CourseChart.GUTTER + plot) {
        graphics.drawString(scene.words(), (float) x + 3, 8.5f);
        freeFrom = x + wide + 10;
      }
    }
  }

  private static float[] dashes() {
    return new float[] {2.5f, 2.5f};
  }

  void drawAxis(Graphics2D graphics, double y) {
    graphics.setFont(ReportFonts.sans(CourseChart.FONT_SIZE));
    graphics.setStroke(new BasicStroke(0.8f));
    for (NiceTicks.Tick tick : axis.ticks(plot)) {
      double x = CourseChart.GUTTER + axis.x(tick.value(), plot);
      graphics.setColor(Palette.MUTED);
      graphics.draw(new Line2D.Double(x, y, x, y + 3));
      double wide = TextMeasure.width(graphics.getFont(), tick.words());
      if (x - wide / 2 >= CourseChart.GUTTER - 6
          && x + wide / 2 <= CourseChart.GUTTER + plot + CourseChart.RIGHT) {
        graphics.drawString(tick.words(), (float) (x - wide / 2), (float) y + 12.5f);
      }
    }
    graphics.setColor(Palette.MUTED);
    graphics.draw(new Line2D.Double(CourseChart.GUTTER, y, CourseChart.GUTTER + plot, y));
    double wide = TextMeasure.width(graphics.getFont(), axis.label());
    graphics.drawString(axis.label(), (float) (CourseChart.GUTTER - 12 - wide), (float) y + 12.5f);
  }

  void drawEvent(Graphics2D graphics, EventLanes.Place place, double y) {
    graphics.setColor(Palette.INK);
    for (EventLanes.Bar bar : place.named().bars()) {
      graphics.fill(
          new Rectangle2D.Double(CourseChart.GUTTER + bar.from(), y, bar.to() - bar.from(), 2.5));
    }
    graphics.setFont(ReportFonts.sans(CourseChart.FONT_SIZE));
    graphics.drawString(
        place.named().words(), (float) (CourseChart.GUTTER + place.wordsFrom()), (float) y + 12f);
  }
}
