package rondure.report;

import java.util.ArrayList;
import java.util.List;
import rondure.blur.Evidence;
import rondure.night.GradeReason;
import rondure.night.Graded;
import rondure.night.NightFrame;
import rondure.night.OutputUse;
import rondure.night.Usefulness;
import rondure.report.layout.Wording;

/** Says why a frame has its grade, and how large it may be shown. */
final class GradeWords {
  private final Wording words;

  GradeWords(Wording words) {
    this.words = words;
  }

  /** The weightiest reason, then its uses; none for a frame without a grade. */
  List<String> sentences(NightFrame frame) {
    List<String> sentences = new ArrayList<>();
    frame.graded().ifPresent(graded -> sentences.add(of(frame, graded, graded.why().get(0))));
    frame
        .usefulness()
        .filter(use -> use.largestUse() != OutputUse.NONE)
        .ifPresent(use -> sentences.add(of(use)));
    return sentences;
  }

  /** Whether the reason for its grade is that its stars are like the best of its lens. */
  static boolean comparesWithTheBest(NightFrame frame) {
    return !isAlone(frame)
        && frame
            .graded()
            .filter(graded -> graded.why().get(0).reason() == GradeReason.TIGHT)
            .isPresent();
  }

  private static boolean isAlone(NightFrame frame) {
    return frame.verdict().filter(v -> v.saw(Evidence.Kind.ONE_FRAME_ONLY)).isPresent();
  }

  /** A lone frame is the best of its scene whatever it is like. */
  private String of(NightFrame frame, Graded graded, Graded.Why why) {
    boolean alone = isAlone(frame);
    boolean compared = why.reason() == GradeReason.TIGHT;
    return words.say(
        "why." + why.reason() + (alone && compared ? ".lone" : ""),
        "grade",
        words.say("why.grade." + graded.grade()),
        "value",
        number(why, why.value().orElse(0.0)),
        "limit",
        number(why, why.limit().orElse(0.0)));
  }

  private static String number(Graded.Why why, double value) {
    return switch (why.reason()) {
      case NO_USE -> Figures.fixed(0, value);
      case OUT_OF_FOCUS -> Figures.px(value);
      default -> Figures.plain(2, value);
    };
  }

  private String of(Usefulness use) {
    return words.say("use." + use.largestUse(), "width", Figures.fixed(0, use.pointUpToWidthPx()));
  }
}
