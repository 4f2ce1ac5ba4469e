package rondure.evaluation;

import java.util.List;
import java.util.Locale;

/** Draws how often verdicts were right over how sure they were, as SVG. */
final class ReliabilityChart {
  private static final int SIDE = 360;
  private static final int MARGIN = 50;

  private ReliabilityChart() {}

  static String svg(String title, Reliability reliability) {
    int whole = SIDE + 2 * MARGIN;
    StringBuilder svg = new StringBuilder();
    add(
        svg,
        "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"%d\" height=\"%d\" font-family=\"sans-serif\""
            + " font-size=\"13\">",
        whole,
        whole);
    add(svg, "<rect width=\"%d\" height=\"%d\" fill=\"white\"/>", whole, whole);
    add(svg, "<text x=\"%d\" y=\"24\">%s</text>", MARGIN, title);
    axes(svg);
    for (Reliability.Bin bin : reliability.bins()) {
      if (bin.frames() > 0) {
        point(svg, bin);
      }
    }
    return svg.append("</svg>\n").toString();
  }

  private static void axes(StringBuilder svg) {
    double band = 0.07;
    add(
        svg,
        "<polygon points=\"%s\" fill=\"#dde6ee\"/>",
        String.join(
            " ",
            List.of(
                at(0, band), at(1 - band, 1), at(1, 1), at(1, 1 - band), at(band, 0), at(0, 0))));
    add(
        svg,
        "<rect x=\"%d\" y=\"%d\" width=\"%d\" height=\"%d\" fill=\"none\" stroke=\"black\"/>",
        MARGIN,
        MARGIN,
        SIDE,
        SIDE);
    for (int tenth = 0; tenth <= 10; tenth += 2) {
      String label = String.format(Locale.ROOT, "%.1f", tenth / 10.0);
      double along = MARGIN + SIDE * tenth / 10.0;
      double up = MARGIN + SIDE - SIDE * tenth / 10.0;
      add(svg, "<text x=\"%.0f\" y=\"%d\">%s</text>", along - 9, MARGIN + SIDE + 18, label);
      add(svg, "<text x=\"%d\" y=\"%.0f\">%s</text>", MARGIN - 28, up + 5, label);
    }
    add(
        svg,
        "<text x=\"%d\" y=\"%d\">probability said</text>",
        MARGIN + SIDE / 2 - 45,
        MARGIN + SIDE + 38);
    add(
        svg,
        "<text transform=\"translate(14 %d) rotate(-90)\">share that was right</text>",
        MARGIN + SIDE / 2 + 60);
  }

  private static void point(StringBuilder svg, Reliability.Bin bin) {
    double x = MARGIN + SIDE * bin.confidence();
    double y = MARGIN + SIDE * (1 - bin.right());
    double error = SIDE * bin.error();
    double top = Math.max(MARGIN, y - error);
    double bottom = Math.min(MARGIN + SIDE, y + error);
    add(
        svg,
        "<line x1=\"%.1f\" x2=\"%.1f\" y1=\"%.1f\" y2=\"%.1f\" stroke=\"black\"/>",
        x,
        x,
        top,
        bottom);
    add(svg, "<circle cx=\"%.1f\" cy=\"%.1f\" r=\"4\"/>", x, y);
    double below = Math.min(MARGIN + SIDE - 4, y + 18);
    add(svg, "<text x=\"%.1f\" y=\"%.1f\" font-size=\"11\">%d</text>", x + 6, below, bin.frames());
  }

  private static String at(double x, double y) {
    return String.format(Locale.ROOT, "%.1f,%.1f", MARGIN + SIDE * x, MARGIN + SIDE * (1 - y));
  }

  private static void add(StringBuilder svg, String form, Object... values) {
    svg.append(String.format(Locale.ROOT, form, values)).append('\n');
  }
}
