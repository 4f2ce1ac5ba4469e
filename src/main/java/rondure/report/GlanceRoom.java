package rondure.report;

import java.awt.Font;
import java.util.List;
import rondure.report.ReportSettings.PageSize;
import rondure.report.picture.ReportFonts;
import rondure.report.picture.TextMeasure;

/**
 * The room that is left on the first page, reckoned from the sizes in style.css: the strip and the
 * remarks take what fits, and the field for notes the rest. All in CSS pixels.
 */
final class GlanceRoom {
  private static final double PX_PER_MM = 96 / 25.4;
  private static final double MARGINS_MM = 28;
  private static final double RESERVE = 26;
  private static final double WIDTH = 652;
  private static final double HALF = 306;
  private static final double HEADING = 36;
  private static final double POINT_INDENT = 12;
  private static final Font BODY = ReportFonts.sans(12);
  private double left;

  GlanceRoom(PageSize paper) {
    left = (paper == PageSize.A4 ? 297 : 279.4) * PX_PER_MM - PX_PER_MM * MARGINS_MM - RESERVE;
  }

  double left() {
    return left;
  }

  void take(double height) {
    left -= height;
  }

  /** Folder, dates and verdict. */
  void takeHead(String title, String verdict) {
    take(18 + 35 * TextMeasure.lines(ReportFonts.serif(26.7f), title, WIDTH) + 27);
    take(20 + 27.5 * TextMeasure.lines(ReportFonts.serif(21.4f), verdict, WIDTH));
  }

  void takeHeading() {
    take(HEADING);
  }

  /** Rows with a bar each, in columns beside each other. */
  void takeRows(int rows) {
    take(HEADING + 22.0 * rows);
  }

  void takeWidePoints(List<String> points) {
    points.forEach(point -> take(pointHeight(point, WIDTH - POINT_INDENT)));
  }

  void takeAdvice(List<AdvicePoint> advice) {
    double column = WIDTH - 44;
    for (AdvicePoint point : advice) {
      take(8 + 19.5 * TextMeasure.lines(ReportFonts.bold(14), point.action(), column));
      boolean hasReason = !point.reason().isEmpty();
      take(hasReason ? 16.5 * TextMeasure.lines(BODY, point.reason(), column) : 0);
    }
  }

  /** Height of a point in one of two columns. */
  static double halfPointHeight(String point) {
    return pointHeight(point, HALF - POINT_INDENT);
  }

  private static double pointHeight(String point, double width) {
    return 4.5 + 15.6 * TextMeasure.lines(BODY, point, width);
  }
}
