package rondure.report;

import java.util.ArrayList;
import java.util.List;
import rondure.intake.CaptureTime;
import rondure.night.NightFrame;
import rondure.night.NightSummary;

/** A sentence for each night of a set that holds several. */
final class NightLines {
  private static final int MOST = 3;

  private final ReportContext context;

  NightLines(ReportContext context) {
    this.context = context;
  }

  /** Empty for a single night; of many the first, and how many more there are. */
  List<String> lines() {
    List<NightSummary> nights = context.book().nights();
    List<String> lines = new ArrayList<>();
    if (nights.size() > 1) {
      nights.stream().limit(MOST).map(this::line).forEach(lines::add);
    }
    if (nights.size() > MOST) {
      int more = nights.size() - MOST;
      lines.add(context.words().say("glance.nightsMore", "nights", Integer.toString(more)));
    }
    return lines;
  }

  private String line(NightSummary night) {
    List<NightFrame> measured =
        context.measured().stream()
            .filter(frame -> frame.nightIndex().orElse(0) == night.index())
            .toList();
    return context
        .words()
        .say(
            "glance.night",
            "when",
            night.start().map(this::when).orElseGet(() -> number(night)),
            "frames",
            context.words().count("count.frame", night.frameCount()),
            "kept",
            Integer.toString(night.keepCount()),
            "rest",
            measured.stream().allMatch(Ranking::isKeep)
                ? ""
                : new GlanceVerdict(context).rest(measured))
        .strip();
  }

  private String number(NightSummary night) {
    return context.words().say("glance.nightNumber", "number", Integer.toString(night.index()));
  }

  private String when(CaptureTime start) {
    return context
        .words()
        .say(
            "glance.nightFrom",
            "date",
            Figures.date(start.local()),
            "time",
            Figures.clock(start.local()));
  }
}
