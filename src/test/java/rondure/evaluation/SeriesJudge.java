package rondure.evaluation;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import rondure.base.RobustStats;
import rondure.blur.Attribution;
import rondure.crew.FrameMeasurement;
import rondure.crew.Outcome;
import rondure.night.Event;
import rondure.night.FocusSeries;
import rondure.night.MeasuredExposure;
import rondure.night.NamedSeries;
import rondure.night.NightBook;
import rondure.night.NightBuilder;
import rondure.night.NightInput;
import rondure.night.NightSettings;

/** Holds the focus tests that are recognised against those that were made. */
final class SeriesJudge {
  int nights;
  int found;
  int whole;
  int falseSeries;
  int curves;
  int held;
  int sidesTold;
  int sidesRight;
  int sidesOff;
  int bestWrong;
  int eventsOfTest;
  final List<Double> pulls = new ArrayList<>();
  final List<Double> errors = new ArrayList<>();
  final List<String> faults = new ArrayList<>();

  static NightBook book(
      String name, List<FrameMeasurement> frames, Attribution attribution, NamedSeries... named) {
    List<MeasuredExposure> exposures = new ArrayList<>();
    for (FrameMeasurement frame : frames) {
      exposures.add(
          new MeasuredExposure(
              file(exposures.size()), List.of(), frame.facts(), new Outcome.Done<>(frame)));
    }
    return NightBuilder.build(
        new NightInput(name, exposures, Map.of(), List.of(), List.of(named)),
        NightSettings.defaults(),
        attribution);
  }

  static String file(int index) {
    return String.format(Locale.ROOT, "frame-%04d", index);
  }

  void add(SeriesJudge other) {
    nights += other.nights;
    found += other.found;
    whole += other.whole;
    falseSeries += other.falseSeries;
    curves += other.curves;
    held += other.held;
    sidesTold += other.sidesTold;
    sidesRight += other.sidesRight;
    sidesOff += other.sidesOff;
    bestWrong += other.bestWrong;
    eventsOfTest += other.eventsOfTest;
    pulls.addAll(other.pulls);
    errors.addAll(other.errors);
    faults.addAll(other.faults);
  }

  void add(SeriesNight night, Attribution attribution) {
    add(night, TruthNight.frames(night.plan()), attribution);
  }

  void add(SeriesNight night, List<FrameMeasurement> frames, Attribution attribution) {
    NightBook book = book(night.plan().title(), frames, attribution);
    nights++;
    FocusSeries match = null;
    for (FocusSeries series : book.focusSeries()) {
      int from = series.points().get(0).frame();
      int to = series.points().get(series.points().size() - 1).frame();
      int shared = Math.min(to, night.last()) - Math.max(from, night.first()) + 1;
      if (match == null && 2 * shared > night.steps().size()) {
        match = series;
        boolean exact = from == night.first() && to == night.last();
        whole += exact ? 1 : 0;
        if (!exact) {
          faults.add("ENDS " + line(night) + " told " + from + "-" + to);
        }
      } else {
        falseSeries++;
        faults.add("FALSE " + line(night) + " told " + from + "-" + to);
      }
    }
    if (match == null) {
      faults.add("MISSED " + line(night));
    } else {
      found++;
      judge(night, match);
    }
    for (Event event : book.events()) {
      eventsOfTest++;
      faults.add("EVENT " + line(night) + " " + event);
    }
  }

  private void judge(SeriesNight night, FocusSeries series) {
    if (series.curve().isPresent()) {
      curves++;
      double truth = truth(night, series);
      double pull = (series.curve().get().at() - truth) / series.curve().get().atError();
      pulls.add(pull);
      errors.add(series.curve().get().atError() * series.curve().get().discPxPerStep());
      held += Math.abs(pull) <= 2 ? 1 : 0;
      if (!(Math.abs(pull) <= 2)) {
        faults.add(
            String.format(
                Locale.ROOT,
                "OFF %s %s: truth %.3f %s steps %s at %s",
                line(night),
                series.steps(),
                truth,
                series.curve().get(),
                night.steps(),
                series.points().stream().map(FocusSeries.Point::position).toList()));
      }
    } else {
      faults.add("NO CURVE " + line(night) + " " + series.steps() + " " + series.ending());
    }
    for (FocusSeries.Others others : series.others()) {
      boolean first = night.steps().get(0) < 0 == night.nightDiscPx() < 0;
      switch (others.side()) {
        case TOWARDS_FIRST, TOWARDS_LAST -> {
          sidesOff++;
          sidesTold++;
          boolean right = first == (others.side() == FocusSeries.Side.TOWARDS_FIRST);
          sidesRight += right ? 1 : 0;
          if (!right) {
            faults.add("SIDE " + line(night) + " " + others + " truth " + night.nightDiscPx());
          }
        }
        case UNTOLD -> sidesOff++;
        case AT_BEST -> bestWrong += Math.abs(night.nightDiscPx()) > others.discPx() + 0.2 ? 1 : 0;
      }
    }
  }

  /** Where the steps pass best focus, between the positions told of the frames beside it. */
  private static double truth(SeriesNight night, FocusSeries series) {
    for (int i = 1; i < series.points().size(); i++) {
      int at = series.points().get(i).frame() - night.first();
      if (at < 1 || at >= night.steps().size()) {
        continue;
      }
      double one = night.steps().get(at - 1);
      double two = night.steps().get(at);
      if (one <= 0 != two <= 0) {
        double from = series.points().get(i - 1).position();
        return from + one / (one - two) * (series.points().get(i).position() - from);
      }
    }
    return Double.NaN;
  }

  private static String line(SeriesNight night) {
    return String.format(
        Locale.ROOT,
        "%s (%d frames, test %d-%d, %.0f mm, night %.2f px)",
        night.plan().title(),
        night.plan().frameCount(),
        night.first(),
        night.last(),
        night.plan().lens().focalLengthMm(),
        night.nightDiscPx());
  }

  String table() {
    double[] all = pulls.stream().mapToDouble(p -> p).toArray();
    double rms = Math.sqrt(pulls.stream().mapToDouble(p -> p * p).average().orElse(0));
    return String.format(
        Locale.ROOT,
        "%d nights: %d found (%d with both ends), %d false; minimum in %d, of these %d within 2"
            + " sigma (%.1f %%), pull rms %.2f median %.2f, error median %.3f px of disc; side told"
            + " %d of %d, right %d, best wrongly %d; events %d%n",
        nights,
        found,
        whole,
        falseSeries,
        curves,
        held,
        100.0 * held / Math.max(1, curves),
        rms,
        RobustStats.median(all),
        RobustStats.median(errors.stream().mapToDouble(e -> e).toArray()),
        sidesTold,
        sidesOff,
        sidesRight,
        bestWrong,
        eventsOfTest);
  }

  /** By command: seed of the first night, count, "scene" or "frame" attribution, kinds. */
  public static void main(String[] arguments) {
    long seed = Long.parseLong(arguments[0]);
    int count = Integer.parseInt(arguments[1]);
    Attribution attribution =
        arguments[2].equals("scene")
            ? new rondure.blur.SceneAttribution(rondure.blur.AttributionSettings.defaults())
            : new rondure.blur.OneFrameAttribution(rondure.blur.AttributionSettings.defaults());
    for (int k = 3; k < arguments.length; k++) {
      SeriesJudge judge = new SeriesJudge();
      SeriesNight.Kind kind = SeriesNight.Kind.valueOf(arguments[k]);
      long start = System.nanoTime();
      for (int n = 0; n < count; n++) {
        judge.add(SeriesNight.draw(seed + n, kind), attribution);
      }
      System.out.println("== " + kind + " " + (System.nanoTime() - start) / 1_000_000_000 + " s");
      System.out.print(judge.table());
      judge.faults.forEach(System.out::println);
    }
  }
}
