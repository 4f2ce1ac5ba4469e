package rondure.night;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.IntUnaryOperator;
import java.util.stream.IntStream;
import rondure.base.RobustStats;
import rondure.blur.Terms;

/**
 * Focus that creeps or was knocked, from the width that focus alone leaves: √(core + focus). A
 * trend is creep, a change of level a knock; whichever leaves the smaller residuals is told.
 */
final class FocusEvents {
  /** Fewest frames that show one. */
  private static final int LEAST_FRAMES = 6;

  /** Fewest frames that creep. */
  private static final int LEAST_CREEPING = 4;

  /** Creep below this share of the width in all is not told, however fast. */
  private static final double LEAST_GROWTH = 0.05;

  /** In a few minutes focus hardly creeps: there the growth must be one that anybody sees. */
  private static final double SHORT_HOURS = 0.2;

  private static final double LEAST_GROWTH_IF_SHORT = 0.25;

  /**
   * Of core and focus: where sky and tripod together differ from their usual share by less, changes
   * of the width are the focus's.
   */
  private static final double MOST_UNUSUAL = 0.2;

  /** Fewer frames are no new level of the focus. */
  private static final int LEAST_OF_LEVEL = 2;

  /** More steps than this are a series of tests, not an accident. */
  private static final int MOST_STEPS = 3;

  private final Course course;
  private final EventSettings settings;
  private final List<Integer> members;
  private final double[] widthPx;
  private final double[] sigmaPx;

  private FocusEvents(Course course, EventSettings settings, List<Event> shakes) {
    this.course = course;
    this.settings = settings;
    this.members =
        IntStream.range(0, course.size())
            .filter(i -> course.frames().get(i).budget().isPresent())
            .filter(i -> shakes.stream().noneMatch(event -> event.covers(course.place(i))))
            .boxed()
            .toList();
    this.widthPx = new double[members.size()];
    this.sigmaPx = new double[members.size()];
    for (int k = 0; k < widthPx.length; k++) {
      Terms terms = course.frames().get(members.get(k)).budget().orElseThrow().sky();
      Terms error = course.frames().get(members.get(k)).budget().orElseThrow().error();
      widthPx[k] = Math.sqrt(Math.max(1 / 12.0, terms.corePx2() + terms.focusPx2()));
      sigmaPx[k] = Math.max(0.01 * widthPx[k], error.focusPx2() / (2 * widthPx[k]));
    }
  }

  /**
   * @param shakes events whose frames say little about the focus, as their blur is shared between
   *     it and the tripod
   */
  static List<Event> of(Course course, EventSettings settings, List<Event> shakes) {
    return new FocusEvents(course, settings, shakes).find();
  }

  private List<Event> find() {
    if (widthPx.length < LEAST_FRAMES) {
      return List.of();
    }
    List<Integer> starts = ChangePoints.of(widthPx, sigmaPx, settings.falseAlarmRate());
    Optional<Event> creep = course.isTimed() ? creep(starts) : Optional.empty();
    return creep.map(List::of).orElseGet(() -> steps(starts));
  }

  private Optional<Event> creep(List<Integer> starts) {
    double[] hours = hours();
    Hinge hinge = Hinge.straight(hours, widthPx, sigmaPx, LEAST_CREEPING);
    double span = hours[hours.length - 1] - hours[hinge.start()];
    double perHour = hinge.slope() / hinge.level();
    double price = ChangePoints.price(settings.falseAlarmRate());
    double steps = misfit(levels(starts)) + price * (starts.size() - 1);
    double least = span < SHORT_HOURS ? LEAST_GROWTH_IF_SHORT : LEAST_GROWTH;
    boolean large = perHour >= settings.focusPerHour() && perHour * span >= least;
    boolean clear = hinge.misfit() + price < Math.min(steps, misfit(levels(List.of(0))));
    if (!large || !clear) {
      return Optional.empty();
    }
    Map<String, Double> sizes = new HashMap<>(Map.of("growthPercentPerHour", 100 * perHour));
    perDegree(hinge.level()).ifPresent(growth -> sizes.put("growthPercentPerDegree", growth));
    return Optional.of(dated(hours, sizes));
  }

  /**
   * Dated by the stars' whole width where that grows too: it leaves its level before the budget can
   * tell a small disc from the core. Frames that the sky or the tripod widened more than they
   * usually do, or less, do not count there.
   */
  private Event dated(double[] hours, Map<String, Double> sizes) {
    Hinge byBudget = Hinge.of(hours, widthPx, sigmaPx, LEAST_CREEPING);
    FrameSpan start =
        new FrameSpan(Onset.after(byBudget.earliest()), Onset.after(byBudget.latest()));
    int first = Onset.after(byBudget.start());
    int[] calm = calm();
    if (calm.length >= LEAST_FRAMES) {
      Hinge seen = byWidth(hours, calm);
      if (seen.slope() > 0 && (seen.start() > 0 || calm[0] <= first)) {
        first = calm[Onset.after(seen.start())];
        start =
            new FrameSpan(
                Math.min(start.earliest(), calm[Onset.after(seen.earliest())]),
                Math.max(start.latest(), calm[Onset.after(seen.latest())]));
      }
    }
    Event creep = event(EventKind.FOCUS_CREEP, first, members.size() - 1, sizes);
    IntUnaryOperator place = k -> course.place(members.get(k));
    return creep.within(start.by(place), FrameSpan.at(creep.lastFrame()));
  }

  /** Members that sky and tripod widen as usual. */
  private int[] calm() {
    double usualPx2 =
        RobustStats.median(
            IntStream.range(0, members.size()).mapToDouble(this::othersPx2).toArray());
    return IntStream.range(0, members.size())
        .filter(k -> Math.abs(othersPx2(k) - usualPx2) < MOST_UNUSUAL * widthPx[k] * widthPx[k])
        .toArray();
  }

  private double othersPx2(int member) {
    Terms terms = course.frames().get(members.get(member)).budget().orElseThrow().sky();
    return Math.max(0, terms.trailingPx2()) + Math.max(0, terms.tripodPx2());
  }

  private Hinge byWidth(double[] hours, int[] calm) {
    double[] when = Arrays.stream(calm).mapToDouble(k -> hours[k]).toArray();
    double[] fwhmPx =
        Arrays.stream(calm)
            .map(members::get)
            .mapToDouble(i -> course.frames().get(i).shape().orElseThrow().fwhmPx())
            .toArray();
    double[] even = new double[calm.length];
    Arrays.fill(even, 1);
    return Hinge.of(when, fwhmPx, even, LEAST_CREEPING);
  }

  private double[] hours() {
    double start = course.seconds(members.get(0)).orElseThrow();
    return members.stream()
        .mapToDouble(i -> (course.seconds(i).orElseThrow() - start) / 3600)
        .toArray();
  }

  /** Growth in percent for each degree Celsius, where every frame knows its temperature. */
  private Optional<Double> perDegree(double startPx) {
    double[] celsius =
        members.stream()
            .mapToDouble(
                i ->
                    course
                        .frames()
                        .get(i)
                        .facts()
                        .ambientTemperatureC()
                        .map(fact -> fact.value())
                        .orElse(Double.NaN))
            .toArray();
    double span = Arrays.stream(celsius).max().orElse(0) - Arrays.stream(celsius).min().orElse(0);
    if (!(span >= 1)) {
      return Optional.empty();
    }
    double meanC = Arrays.stream(celsius).average().orElse(0);
    double meanPx = Arrays.stream(widthPx).average().orElse(0);
    double product = 0;
    double square = 0;
    for (int k = 0; k < celsius.length; k++) {
      product += (celsius[k] - meanC) * (widthPx[k] - meanPx);
      square += (celsius[k] - meanC) * (celsius[k] - meanC);
    }
    return Optional.of(100 * product / square / startPx);
  }

  private double misfit(double[] model) {
    double sum = 0;
    for (int k = 0; k < model.length; k++) {
      sum += Math.pow((widthPx[k] - model[k]) / sigmaPx[k], 2);
    }
    return sum;
  }

  private double[] levels(List<Integer> starts) {
    double[] model = new double[widthPx.length];
    for (int s = 0; s < starts.size(); s++) {
      int end = s + 1 < starts.size() ? starts.get(s + 1) : model.length;
      Arrays.fill(model, starts.get(s), end, mean(starts.get(s), end));
    }
    return model;
  }

  private double mean(int start, int end) {
    return Arrays.stream(widthPx, start, end).average().orElseThrow();
  }

  private List<Event> steps(List<Integer> starts) {
    if (starts.size() > MOST_STEPS + 1) {
      return List.of();
    }
    List<Event> events = new ArrayList<>();
    int[] before = null;
    for (int s = 0; s < starts.size(); s++) {
      int end = s + 1 < starts.size() ? starts.get(s + 1) : widthPx.length;
      int[] stretch = {starts.get(s), end};
      if (end - stretch[0] < LEAST_OF_LEVEL) {
        continue;
      }
      double ratio = before == null ? 1 : mean(stretch[0], end) / mean(before[0], before[1]);
      if (ratio >= 1 + settings.focusStep() || ratio <= 1 / (1 + settings.focusStep())) {
        Map<String, Double> sizes = Map.of("widthRatio", ratio);
        events.add(event(EventKind.FOCUS_KNOCKED, stretch[0], stretch[0], sizes));
      }
      before = stretch;
    }
    return events;
  }

  private Event event(EventKind kind, int first, int last, Map<String, Double> sizes) {
    return Event.of(
        kind,
        course.scene().number(),
        course.place(members.get(first)),
        course.place(members.get(last)),
        sizes);
  }
}
