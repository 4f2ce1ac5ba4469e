package rondure.report;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import rondure.blur.Cause;
import rondure.blur.Evidence;
import rondure.blur.Verdict;
import rondure.night.FocusSeries;
import rondure.night.FocusSeries.Curve;
import rondure.night.FocusSeries.Ending;
import rondure.night.FocusSeries.Others;
import rondure.night.FocusSeries.Point;
import rondure.night.FocusSeries.Side;
import rondure.night.FocusSeries.Steps;
import rondure.night.Grade;
import rondure.night.GradeReason;
import rondure.night.Graded;
import rondure.night.NightBook;
import rondure.night.NightFrame;

/** A night in which everything happens that the report has words for. */
final class TalkativeBook {
  private static final int FRAMES = 170;
  private static final int SEEN_IN_ONE_FRAME = 3;

  private TalkativeBook() {}

  /** Every cause with every evidence, every grade and its reasons, every event, focus tests. */
  static NightBook night() {
    NightBook plain = BookFixture.night(FRAMES);
    List<NightFrame> frames = new ArrayList<>();
    int count = 0;
    for (NightFrame frame : plain.frames()) {
      frames.add(Ranking.isMeasured(frame) ? told(frame, count++) : frame);
    }
    return new NightBook(
        plain.inputName(),
        plain.nights(),
        plain.scenes(),
        frames,
        plain.leftOut(),
        plain.staticDetections(),
        plain.events(),
        tests(plain),
        plain.notes());
  }

  private static NightFrame told(NightFrame frame, int count) {
    List<Evidence> evidence = new ArrayList<>();
    Evidence.Kind[] kinds = Evidence.Kind.values();
    for (int i = 0; i < SEEN_IN_ONE_FRAME; i++) {
      evidence.add(seen(kinds[(count * SEEN_IN_ONE_FRAME + i) % kinds.length]));
    }
    return BookFixture.with(
        frame,
        Optional.of(Verdict.of(probabilities(count), evidence)),
        Optional.of(graded(count)),
        frame.measurement());
  }

  private static Map<Cause, Double> probabilities(int count) {
    Cause[] causes = Cause.values();
    double sureness = new double[] {0.93, 0.7, 0.45}[count % 3];
    Map<Cause, Double> probabilities = new HashMap<>();
    for (Cause cause : causes) {
      probabilities.put(cause, (1 - sureness) / (causes.length - 1));
    }
    probabilities.put(causes[count / 3 % causes.length], sureness);
    return probabilities;
  }

  private static Evidence seen(Evidence.Kind kind) {
    Map<String, Double> values = new HashMap<>();
    CauseWords.EVIDENCE_VALUES.forEach(name -> values.put(name, 0.9));
    return new Evidence(kind, values);
  }

  private static Graded graded(int count) {
    GradeReason[] reasons = GradeReason.values();
    GradeReason reason = reasons[count % reasons.length];
    Grade worse = count % 2 == 0 ? Grade.LOOK_CLOSER : Grade.SET_ASIDE;
    Grade grade = reason == GradeReason.TIGHT ? Grade.KEEP : worse;
    return new Graded(grade, List.of(new Graded.Why(reason, Optional.of(1.4), Optional.of(1.25))));
  }

  /** A test for each thing that is known of the steps and of where it ends. */
  private static List<FocusSeries> tests(NightBook book) {
    List<Integer> members =
        book.scenes().get(0).frames().stream()
            .filter(i -> Ranking.isMeasured(book.frames().get(i)))
            .limit(5)
            .toList();
    List<FocusSeries> tests = new ArrayList<>();
    for (Steps steps : Steps.values()) {
      tests.add(test(tests.size() + 1, members, steps, Ending.BOTH_SIDES));
    }
    for (Ending ending : Ending.values()) {
      tests.add(test(tests.size() + 1, members, Steps.UNKNOWN, ending));
    }
    return tests;
  }

  private static FocusSeries test(int number, List<Integer> members, Steps steps, Ending ending) {
    List<Point> points = new ArrayList<>();
    for (int i = 0; i < members.size(); i++) {
      points.add(new Point(members.get(i), i, 1 + Math.pow(i - 2.3, 2) / 16, 0.05));
    }
    boolean told = steps != Steps.UNKNOWN;
    List<Others> others = new ArrayList<>();
    for (Side side : Side.values()) {
      others.add(new Others(side.ordinal() % 2 == 0, 7, side, 1.9));
    }
    return new FocusSeries(
        number,
        1,
        number % 2 == 0,
        points,
        List.of(members.get(0)),
        steps,
        ending,
        told ? Optional.of(new Curve(2.3, 0.12, 1, 1)) : Optional.empty(),
        members.get(2),
        others);
  }
}
