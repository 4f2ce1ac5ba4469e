package rondure.report;

import java.time.LocalDateTime;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.IntStream;
import rondure.intake.CaptureTime;
import rondure.report.GlanceView.BestRow;
import rondure.report.GlanceView.CauseRow;
import rondure.report.GlanceView.Numbered;
import rondure.report.picture.Mark;

/** Makes the view of "The night at a glance", all of it on one page. */
final class GlancePage {
  private static final double STRIP_MOST = 185;
  private static final double STRIP_LEAST = 44;
  private static final double STRIP_WANTED = 84;
  private static final double GRADES = 37;
  private static final double NOTE_LABEL = 27;
  private static final double NOTE_LEAST = 26;
  private static final double NOTE_MOST = 300;

  /** Where nothing was measured the list of reasons may begin on the same page. */
  private static final double NOTE_MOST_OF_NOTHING = 90;

  private static final double CAPTION = 22;
  private static final int LONGEST_TITLE = 60;
  private final ReportContext context;

  private GlancePage(ReportContext context) {
    this.context = context;
  }

  /**
   * @param fullEntries files that have an entry to point to
   */
  static GlanceView view(ReportContext context, Set<String> fullEntries) {
    return new GlancePage(context).view(fullEntries);
  }

  private GlanceView view(Set<String> fullEntries) {
    Map<Mark, Integer> tally = context.tally(frame -> true);
    String title = Figures.shortened(context.book().inputName(), LONGEST_TITLE);
    String verdict = new GlanceVerdict(context).sentence();
    GlanceCounts counts = new GlanceCounts(context);
    List<CauseRow> causes = counts.causes(tally);
    List<String> nights = GlanceNights.lines(context);
    List<AdvicePoint> advice = Advice.of(context, tally);
    GlanceRoom room = new GlanceRoom(context);
    room.takeHead(title, verdict);
    room.takeWidePoints(nights);
    room.takeAdvice(advice);
    room.take(GRADES + CAPTION + NOTE_LABEL + NOTE_LEAST);
    IntStream.range(0, nights.isEmpty() ? 3 : 4).forEach(i -> room.takeHeading());
    room.takeHalves(causes.size());
    double remarksLeast = GlanceRemarks.least(context, room);
    List<BestRow> best =
        room.left() - room.forBest(causes.size()) - remarksLeast < STRIP_WANTED
            ? List.of()
            : new GlanceBest(context, fullEntries).rows();
    room.take(best.isEmpty() ? 0 : room.forBest(causes.size()));
    double stripMost = room.left() - remarksLeast;
    PictureView strip =
        new GlanceStrip(context).view(Math.max(STRIP_LEAST, Math.min(STRIP_MOST, stripMost)));
    room.take(strip.heightPx());
    GlanceRemarks remarks = GlanceRemarks.of(context, room);
    room.take(remarks.height(room));
    return new GlanceView(
        title,
        when(),
        verdict,
        counts.grades(),
        strip,
        counts.otherSigns(),
        nightsTitle(nights),
        nights,
        causes,
        counts.uses(),
        counts.usesRemark(),
        numbered(advice),
        best,
        remarks.lines(),
        remarks.more(),
        context.words().say("glance.noteTitle"),
        noteHeight(room));
  }

  private long noteHeight(GlanceRoom room) {
    double most = context.measured().isEmpty() ? NOTE_MOST_OF_NOTHING : NOTE_MOST;
    return Math.round(NOTE_LEAST + Math.max(0, Math.min(most - NOTE_LEAST, room.left())));
  }

  private static List<Numbered> numbered(List<AdvicePoint> advice) {
    return IntStream.range(0, advice.size())
        .mapToObj(i -> new Numbered(i + 1, advice.get(i).action(), advice.get(i).reason()))
        .toList();
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
}
