package rondure.report.picture;

import java.awt.BasicStroke;
import java.awt.Graphics2D;
import java.awt.geom.Line2D;
import java.awt.geom.Path2D;
import java.util.ArrayList;
import java.util.List;

/** Names of events above one line of a strip: words, and a bracket over their frames. */
final class StripNames {
  private static final double APART = 8;
  private static final double BASE = 8.5;
  private static final double BRACKET = 11.5;

  private StripNames() {}

  /** From where to where a name stands. */
  record Words(NightStrip.Span span, double from, double to) {}

  /**
   * @param top of the line
   * @param first place of the line's first frame in the run
   * @param last place of its last one
   */
  static void draw(
      Graphics2D graphics,
      List<NightStrip.Span> spans,
      StripLayout layout,
      double top,
      int first,
      int last) {
    List<NightStrip.Span> here =
        spans.stream().filter(span -> span.first() <= last && span.last() >= first).toList();
    graphics.setStroke(new BasicStroke(0.8f));
    graphics.setFont(ReportFonts.sans(StripLayout.FONT_SIZE));
    for (Words words : placed(here, layout, first)) {
      drawBracket(graphics, words.span(), layout, top + BRACKET, first, last);
      graphics.setColor(Palette.INK);
      graphics.drawString(words.span().name(), (float) words.from(), (float) (top + BASE));
    }
  }

  private static void drawBracket(
      Graphics2D graphics,
      NightStrip.Span span,
      StripLayout layout,
      double y,
      int first,
      int last) {
    double half = layout.pitch() * 0.38;
    double from = layout.x(Math.max(first, span.first())) - half;
    double to = layout.x(Math.min(last, span.last())) + half;
    Path2D bracket = new Path2D.Double(new Line2D.Double(from, y, to, y));
    if (span.first() >= first) {
      bracket.append(new Line2D.Double(from, y, from, y + 3), false);
    }
    if (span.last() <= last) {
      bracket.append(new Line2D.Double(to, y, to, y + 3), false);
    }
    graphics.setColor(Palette.MUTED);
    graphics.draw(bracket);
  }

  /** The weightiest first; a name that would touch another is left out. */
  static List<Words> placed(List<NightStrip.Span> spans, StripLayout layout, int first) {
    double most = layout.left() + layout.perLine() * layout.pitch();
    List<Words> placed = new ArrayList<>();
    for (NightStrip.Span span : spans) {
      double wide =
          TextMeasure.width(ReportFonts.sans(StripLayout.FONT_SIZE), span.name()) + APART / 2;
      double start = layout.x(Math.max(first, span.first())) - layout.pitch() * 0.38;
      double from = Math.max(0, Math.min(start, most - wide));
      Words words = new Words(span, from, from + wide);
      boolean isFree =
          placed.stream().allMatch(o -> words.from() >= o.to() || words.to() <= o.from());
      if (isFree) {
        placed.add(words);
      }
    }
    return placed;
  }
}
