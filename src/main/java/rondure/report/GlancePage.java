package rondure.report;

import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import rondure.intake.CaptureTime;
import rondure.night.FrameShape;
import rondure.night.NightFrame;
import rondure.night.OutputUse;
import rondure.report.picture.Mark;
import rondure.report.picture.NightStrip;

/** Makes the view of "The night at a glance". */
final class GlancePage {
  private static final int STRIP_WIDTH = 655;
  private static final int STRIP_HEIGHT_MOST = 125;

  /** The strip gives way to the lines of the nights. */
  private static final int STRIP_HEIGHT_PER_NIGHT = 15;

  private static final int BEST = 5;
  private static final int REMARKS = 2;
  private static final int LONGEST_TITLE = 60;
  private static final int LONGEST_NAME = 28;
  private final ReportContext context;

  private GlancePage(ReportContext context) {
    this.context = context;
  }

  /**
   * @param fullEntries files that have an entry to point to
   */
  static GlanceView view(ReportContext context, Set<String> fullEntries) {
    GlancePage page = new GlancePage(context);
    Map<Mark, Integer> tally = context.tally(frame -> true);
    List<String> nights = GlanceNights.lines(context);
    return new GlanceView(
        Figures.shortened(context.book().inputName(), LONGEST_TITLE),
        page.when(),
        new GlanceVerdict(context).sentence(),
        page.strip(nights.size()),
        page.nightsTitle(nights),
        nights,
        page.totals(),
        page.uses(),
        page.causes(tally),
        page.best(fullEntries),
        Advice.of(context, tally),
        Problems.of(context),
        context.book().notes().stream().limit(nights.size() > 1 ? 0 : REMARKS).toList(),
        context.words().say("glance.noteTitle"));
  }

  private String nightsTitle(List<String> nights) {
    boolean many = context.book().nights().size() > 1;
    return nights.isEmpty() ? "" : context.words().say(many ? "glance.nights" : "glance.events");
  }

  private String when() {
    List<LocalDateTime> times =
        context.book().frames().stream()
            .filter(frame -> frame.nightIndex().isPresent())
            .flatMap(frame -> frame.facts().captureTime().stream())
            .map(CaptureTime::local)
            .sorted()
            .toList();
    if (times.isEmpty()) {
      return context.words().say("glance.noTimes");
    }
    LocalDateTime first = times.get(0);
    LocalDateTime last = times.get(times.size() - 1);
    boolean oneDay = first.toLocalDate().equals(last.toLocalDate());
    return context
        .words()
        .say(
            first.equals(last) ? "glance.oneTime" : oneDay ? "glance.oneDay" : "glance.severalDays",
            "from",
            Figures.clock(first),
            "fromDate",
            Figures.date(first),
            "to",
            Figures.clock(last),
            "toDate",
            Figures.date(last));
  }

  private PictureView strip(int nights) {
    NightStrip strip = new NightStrip(runs());
    context.pictures().add("night-strip", strip);
    String alt =
        context
            .words()
            .say(
                "alt.strip",
                "frames",
                context.words().count("count.frame", context.book().frames().size()),
                "kept",
                Integer.toString(context.kept()));
    int most = STRIP_HEIGHT_MOST - STRIP_HEIGHT_PER_NIGHT * nights;
    long height = Math.round(Math.ceil(strip.heightFor(STRIP_WIDTH, most)));
    return new PictureView("night-strip", alt, STRIP_WIDTH, height);
  }

  /** The frames as they come; the first frame of another night starts a new run. */
  private List<NightStrip.Run> runs() {
    List<NightStrip.Run> runs = new ArrayList<>();
    List<NightStrip.Item> run = new ArrayList<>();
    Optional<Integer> night = Optional.empty();
    for (NightFrame frame : context.book().frames()) {
      Optional<Integer> its = frame.nightIndex();
      if (its.isPresent() && night.isPresent() && !its.equals(night)) {
        runs.add(new NightStrip.Run(run));
        run = new ArrayList<>();
      }
      night = its.isPresent() ? its : night;
      run.add(item(frame));
    }
    runs.add(new NightStrip.Run(run));
    return runs;
  }

  private NightStrip.Item item(NightFrame frame) {
    String time =
        frame.facts().captureTime().map(taken -> Figures.clock(taken.local())).orElse("–");
    return new NightStrip.Item(Mark.of(frame), Ranking.isKeep(frame), time);
  }

  private List<GlanceView.Total> totals() {
    int copies = context.book().frames().stream().mapToInt(frame -> frame.copies().size()).sum();
    List<GlanceView.Total> totals = new ArrayList<>();
    add(totals, "measured", context.measured().size());
    add(totals, "keep", context.kept());
    int tests = (int) context.measured().stream().filter(NightFrame::isFocusTest).count();
    if (tests > 0) {
      add(totals, "focusTests", tests);
    }
    add(totals, "notMeasurable", countMarks(Mark.NOT_MEASURABLE));
    add(totals, "leftOut", countMarks(Mark.LEFT_OUT));
    add(totals, "copies", copies);
    return totals;
  }

  /** Each frame counts once, by the largest use that it serves. */
  private List<String> uses() {
    if (context.measured().isEmpty()) {
      return List.of();
    }
    return List.of(
        context
            .words()
            .say(
                "glance.uses",
                "full",
                Integer.toString(countUses(OutputUse.FULL_SIZE)),
                "screen",
                Integer.toString(countUses(OutputUse.SCREEN_4K)),
                "web",
                Integer.toString(countUses(OutputUse.WEB)),
                "none",
                Integer.toString(countUses(OutputUse.NONE))));
  }

  private int countUses(OutputUse use) {
    return (int)
        context.measured().stream()
            .filter(frame -> frame.usefulness().filter(u -> u.largestUse() == use).isPresent())
            .count();
  }

  private int countMarks(Mark mark) {
    return (int) context.book().frames().stream().filter(f -> Mark.of(f) == mark).count();
  }

  private void add(List<GlanceView.Total> totals, String key, int count) {
    totals.add(new GlanceView.Total(Integer.toString(count), context.words().say("total." + key)));
  }

  private List<GlanceView.CauseRow> causes(Map<Mark, Integer> tally) {
    int most = tally.values().stream().mapToInt(count -> count).max().orElse(1);
    return tally.entrySet().stream()
        .sorted(
            Map.Entry.<Mark, Integer>comparingByValue()
                .reversed()
                .thenComparing(Map.Entry.comparingByKey()))
        .map(
            entry ->
                new GlanceView.CauseRow(
                    context.mark(entry.getKey()),
                    context.words().say("glance.cause." + entry.getKey()),
                    Integer.toString(entry.getValue()),
                    Math.max(1, Math.round(100.0 * entry.getValue() / most))))
        .toList();
  }

  /** Of the frames to keep; where there is none, of all. */
  private List<GlanceView.BestRow> best(Set<String> fullEntries) {
    Map<String, Integer> positions = context.positions();
    boolean anyKept = context.kept() > 0;
    return context.measured().stream()
        .filter(frame -> !anyKept || Ranking.isKeep(frame))
        .sorted(Ranking.BEST_FIRST)
        .limit(BEST)
        .map(
            frame -> {
              FrameShape shape = frame.shape().orElseThrow();
              String href =
                  fullEntries.contains(frame.file()) ? "#frame-" + positions.get(frame.file()) : "";
              String figures =
                  context
                      .words()
                      .say(
                          "glance.bestFigures",
                          "width",
                          Figures.px(shape.fwhmPx()),
                          "roundness",
                          Figures.fixed(2, shape.roundness()));
              return new GlanceView.BestRow(
                  context.mark(Mark.of(frame)),
                  Figures.shortened(frame.file(), LONGEST_NAME),
                  href,
                  figures);
            })
        .toList();
  }
}
