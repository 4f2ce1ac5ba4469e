package rondure.report;

import java.util.List;
import java.util.Map;
import java.util.Set;
import rondure.night.FrameShape;
import rondure.night.NightFrame;
import rondure.report.GlanceView.BestRow;
import rondure.report.picture.Mark;

/** The best frames of the set, with links to their entries. */
record GlanceBest(ReportContext context, Set<String> fullEntries) {
  static final int MOST = 3;
  private static final int LONGEST_NAME = 28;

  /** Of the frames to keep; where there is none, of all. */
  List<BestRow> rows() {
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
        Figures.shortened(frame.file(), LONGEST_NAME),
        fullEntries.contains(frame.file()) ? "#frame-" + position : "",
        figures);
  }
}
