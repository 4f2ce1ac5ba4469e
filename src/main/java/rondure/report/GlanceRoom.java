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
  private static final double RESERVE = 10;
  private static final double HEADING = 35.5;
  private static final double ROW = 19.5;
  private static final int USES = 3;
  private static final double REMARK = 18;

  /** Height of the large number beside each piece of advice, its line as the renderer sets it. */
  private static final double ADVICE_NUMBER = 34;

  private static final double POINT_INDENT = 12;
  private static final Font BODY = ReportFonts.sans(12);
  private final double width;
  private double left;

  GlanceRoom(ReportContext context) {
    boolean isA4 = context.settings().pageSize() == PageSize.A4;
    width = context.pictureWidthPx();
    left = (isA4 ? 297 : 279.4) * PX_PER_MM - PX_PER_MM * MARGINS_MM - RESERVE;
  }

  double left() {
    return left;
  }

  void take(double height) {
    left -= height;
  }

  /** Folder, dates and verdict. */
  void takeHead(String title, String verdict) {
    take(18 + 35 * TextMeasure.lines(ReportFonts.serif(26.7f), title, width) + 27);
    take(12 + 27.5 * TextMeasure.lines(ReportFonts.serif(21.4f), verdict, width));
  }

  void takeHeading() {
    take(HEADING);
  }

  /** Causes on the left, uses on the right. */
  void takeHalves(int causes) {
    take(HEADING + Math.max(ROW * Math.max(1, causes), ROW * USES + REMARK));
  }

  /** What the best frames take below the uses, beyond the causes on the left. */
  double forBest(int causes) {
    double right = ROW * USES + REMARK + HEADING + ROW * GlanceBest.MOST;
    return Math.max(0, right - Math.max(ROW * Math.max(1, causes), ROW * USES + REMARK));
  }

  void takeWidePoints(List<String> points) {
    points.forEach(point -> take(pointHeight(point)));
  }

  void takeAdvice(List<AdvicePoint> advice) {
    double column = width - 44;
    for (AdvicePoint point : advice) {
      double words = 19.5 * TextMeasure.lines(ReportFonts.bold(14), point.action(), column);
      boolean hasReason = !point.reason().isEmpty();
      words += hasReason ? 16.5 * TextMeasure.lines(BODY, point.reason(), column) : 0;
      take(8 + Math.max(ADVICE_NUMBER, words));
    }
  }

  /** Height of a point as wide as the page. */
  double pointHeight(String point) {
    return 4 + 15.6 * TextMeasure.lines(BODY, point, width - POINT_INDENT);
  }
}
