package rondure.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Predicate;
import rondure.night.Grade;
import rondure.night.NightFrame;
import rondure.night.OutputUse;
import rondure.report.GlanceView.CauseRow;
import rondure.report.GlanceView.UseRow;
import rondure.report.picture.GradeBar;
import rondure.report.picture.GradeBar.Filling;
import rondure.report.picture.Mark;

/** Counts frames for the first page: by grade, by cause, and by what they serve for. */
record GlanceCounts(ReportContext context) {

  /** How many got which grade, as a bar; none where there is no frame. */
  List<PictureView> grades() {
    List<GradeBar.Part> parts = new ArrayList<>();
    add(parts, "keep", Filling.SOLID, has(Grade.KEEP));
    add(parts, "lookCloser", Filling.HATCHED, has(Grade.LOOK_CLOSER));
    add(parts, "setAside", Filling.PALE, has(Grade.SET_ASIDE));
    add(parts, "focusTests", Filling.EMPTY, NightFrame::isFocusTest);
    add(parts, "ungraded", Filling.EMPTY, GlanceCounts::isUngraded);
    add(parts, "notMeasurable", Filling.EMPTY, frame -> Mark.of(frame) == Mark.NOT_MEASURABLE);
    add(parts, "leftOut", Filling.EMPTY, frame -> Mark.of(frame) == Mark.LEFT_OUT);
    if (parts.isEmpty()) {
      return List.of();
    }
    context.pictures().add("grade-bar", new GradeBar(parts));
    String said = String.join(", ", parts.stream().map(p -> p.count() + " " + p.words()).toList());
    String alt = context.words().say("alt.grades", "counts", said);
    return List.of(
        new PictureView("grade-bar", alt, context.pictureWidthPx(), Math.round(GradeBar.height())));
  }

  private void add(
      List<GradeBar.Part> parts, String key, Filling filling, Predicate<NightFrame> wanted) {
    int count = (int) context.book().frames().stream().filter(wanted).count();
    if (count > 0) {
      parts.add(new GradeBar.Part(count, context.words().say("total." + key), filling));
    }
  }

  private static Predicate<NightFrame> has(Grade grade) {
    return frame -> frame.grade().equals(Optional.of(grade));
  }

  private static boolean isUngraded(NightFrame frame) {
    return Ranking.isMeasured(frame) && frame.grade().isEmpty() && !frame.isFocusTest();
  }

  /** Each cause with its sign, the commonest first. */
  List<CauseRow> causes(Map<Mark, Integer> tally) {
    int most = tally.values().stream().mapToInt(count -> count).max().orElse(1);
    return tally.entrySet().stream()
        .sorted(
            Map.Entry.<Mark, Integer>comparingByValue()
                .reversed()
                .thenComparing(Map.Entry.comparingByKey()))
        .map(entry -> row(entry.getKey(), entry.getValue(), most))
        .toList();
  }

  private CauseRow row(Mark mark, int count, int most) {
    return new CauseRow(
        context.mark(mark),
        context.words().say("glance.cause." + mark),
        Integer.toString(count),
        Math.max(1, Math.round(100.0 * count / most)));
  }

  /** The signs in the strip that are no cause. */
  List<GlanceView.Key> otherSigns() {
    return List.of(Mark.NOT_MEASURABLE, Mark.LEFT_OUT).stream()
        .filter(mark -> context.book().frames().stream().anyMatch(f -> Mark.of(f) == mark))
        .map(mark -> new GlanceView.Key(context.mark(mark), context.markName(mark)))
        .toList();
  }

  /** How many frames serve each use: what serves a larger one serves the smaller ones too. */
  List<UseRow> uses() {
    List<UseRow> rows = new ArrayList<>();
    int of = (int) usable(OutputUse.NONE);
    for (OutputUse use : List.of(OutputUse.FULL_SIZE, OutputUse.SCREEN_4K, OutputUse.WEB)) {
      long count = usable(use);
      if (of > 0) {
        rows.add(
            new UseRow(
                context.words().say("glance.use." + use),
                Long.toString(count),
                Math.round(100.0 * count / of)));
      }
    }
    return rows;
  }

  /** What the bars are counted against, and how many serve for nothing. */
  List<String> usesRemark() {
    long of = usable(OutputUse.NONE);
    long unfit = of - usable(OutputUse.WEB);
    if (of == 0) {
      return List.of();
    }
    String key = unfit == 0 ? "glance.uses.all" : unfit == 1 ? "glance.uses.one" : "glance.uses";
    return List.of(
        context
            .words()
            .say(
                key,
                "measured",
                context.words().count("count.frame", (int) of),
                "unfit",
                Long.toString(unfit)));
  }

  private long usable(OutputUse least) {
    return context.measured().stream()
        .filter(frame -> !frame.isFocusTest())
        .filter(frame -> frame.usefulness().filter(u -> serves(u.largestUse(), least)).isPresent())
        .count();
  }

  /** Uses are declared from the most demanding to none. */
  private static boolean serves(OutputUse largest, OutputUse least) {
    return largest.compareTo(least) <= 0;
  }
}
