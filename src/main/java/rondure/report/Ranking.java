package rondure.report;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.function.Consumer;
import rondure.night.FrameShape;
import rondure.night.FrameStatus;
import rondure.night.Grade;
import rondure.night.NightBook;
import rondure.night.NightFrame;
import rondure.night.Scene;
import rondure.report.picture.Mark;

/** Which frames come first, and which are worth a full entry. */
public final class Ranking {

  /** Keep before the others, then by the long axis of the stars: tight and round at once. */
  static final Comparator<NightFrame> BEST_FIRST =
      Comparator.comparing((NightFrame frame) -> !isKeep(frame))
          .thenComparingDouble(frame -> frame.shape().map(Ranking::longAxisPx).orElse(1e9))
          .thenComparing(NightFrame::file);

  private static final int BEST_OF_SCENE = 4;
  private static final int WORST_OF_SCENE = 3;

  private Ranking() {}

  static boolean isKeep(NightFrame frame) {
    return frame.grade().filter(grade -> grade == Grade.KEEP).isPresent();
  }

  static boolean isMeasured(NightFrame frame) {
    return frame.status() == FrameStatus.MEASURED && frame.shape().isPresent();
  }

  /** FWHM along the long axis: √(major · minor) / √(minor / major). */
  static double longAxisPx(FrameShape shape) {
    return shape.fwhmPx() / Math.sqrt(Math.max(1e-3, shape.roundness()));
  }

  /** The measured frames of a scene, best first. */
  static List<NightFrame> bestFirst(NightBook book, Scene scene) {
    return scene.frames().stream()
        .map(book.frames()::get)
        .filter(Ranking::isMeasured)
        .sorted(BEST_FIRST)
        .toList();
  }

  /** The files of the best kept frame of each scene; a scene with nothing to keep has none. */
  public static Set<String> bestOfScenes(NightBook book) {
    Set<String> best = new LinkedHashSet<>();
    for (Scene scene : book.scenes()) {
      bestFirst(book, scene).stream()
          .limit(1)
          .filter(Ranking::isKeep)
          .forEach(frame -> best.add(frame.file()));
    }
    return best;
  }

  /**
   * The files that get a full entry. A set too large for all: of each scene the best and the worst
   * and the first of each cause, then undecided ones, then the next best, up to the limit.
   */
  static Set<String> fullEntries(NightBook book, ReportSettings settings) {
    List<NightFrame> measured = book.frames().stream().filter(Ranking::isMeasured).toList();
    Set<String> chosen = new LinkedHashSet<>();
    int limit = settings.fullEntriesUpTo();
    switch (settings.entries()) {
      case NONE -> limit = 0;
      case ALL -> limit = Integer.MAX_VALUE;
      case AUTO -> {}
    }
    if (measured.size() <= limit) {
      measured.forEach(frame -> chosen.add(frame.file()));
      return chosen;
    }
    int most = limit;
    Consumer<NightFrame> choose =
        frame -> {
          if (chosen.size() < most) {
            chosen.add(frame.file());
          }
        };
    worthIt(book, measured).forEach(choose);
    return chosen;
  }

  private static List<NightFrame> worthIt(NightBook book, List<NightFrame> measured) {
    List<NightFrame> inTurn = new ArrayList<>();
    List<List<NightFrame>> scenes =
        book.scenes().stream().map(scene -> bestFirst(book, scene)).toList();
    scenes.forEach(scene -> inTurn.addAll(scene.subList(0, Math.min(1, scene.size()))));
    Set<Mark> seen = EnumSet.noneOf(Mark.class);
    measured.stream().filter(frame -> seen.add(Mark.of(frame))).forEach(inTurn::add);
    for (List<NightFrame> scene : scenes) {
      inTurn.addAll(scene.subList(0, Math.min(BEST_OF_SCENE, scene.size())));
      inTurn.addAll(scene.subList(Math.max(0, scene.size() - WORST_OF_SCENE), scene.size()));
    }
    measured.stream().filter(frame -> Mark.of(frame) == Mark.UNDECIDED).forEach(inTurn::add);
    measured.stream().sorted(BEST_FIRST).forEach(inTurn::add);
    return inTurn;
  }
}
