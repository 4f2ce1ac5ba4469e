package rondure.report;

import java.util.List;
import java.util.Map;
import java.util.Set;
import rondure.night.FrameShape;
import rondure.night.NightFrame;
import rondure.report.GlanceView.BestRow;
import rondure.report.picture.Mark;
import rondure.report.picture.ReportFonts;
import rondure.report.picture.TextMeasure;

/** The best frames of the set, with links to their entries. */
record GlanceBest(ReportContext context, Set<String> fullEntries) {
  static final int MOST = 3;
  private static final int LONGEST_NAME = 28;
  private static final int SHORTEST_NAME = 9;

  /** One line of the column of names, whose width style.css gives, less the sign before them. */
  private static final double NAME_PX = 168;

  /** Of the frames to keep; where there is none, of all. A lone frame is compared with none. */
  List<BestRow> rows() {
    if (context.measured().size() < 2) {
      return List.of();
    }
    Map<String, Integer> positions = context.positions();
    boolean anyKept = context.kept() > 0;
    return context.measured().stream()
        .filter(frame -> !anyKept || Ranking.isKeep(frame))
        .sorted(Ranking.BEST_FIRST)
        .limit(MOST)
        .map(frame -> row(frame, positions.get(frame.file())))
        .toList();
  }

  private BestRow row(NightFrame frame, int position) {
    FrameShape shape = frame.shape().orElseThrow();
    String figures =
        context
            .words()
            .say(
                "glance.bestFigures",
                "width",
                Figures.px(shape.fwhmPx()),
                "roundness",
                Figures.fixed(2, shape.roundness()));
    return new BestRow(
        context.mark(Mark.of(frame)),
        onOneLine(frame.file()),
        fullEntries.contains(frame.file()) ? "#frame-" + position : "",
        figures);
  }

  /** Some letters are twice as wide as others. */
  private static String onOneLine(String file) {
    int most = LONGEST_NAME;
    String name = Figures.shortened(file, most);
    while (most > SHORTEST_NAME && TextMeasure.width(ReportFonts.sans(12), name) > NAME_PX) {
      most--;
      name = Figures.shortened(file, most);
    }
    return name;
  }
}
