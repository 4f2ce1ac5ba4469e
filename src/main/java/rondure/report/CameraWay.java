package rondure.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import rondure.night.FrameCourse;
import rondure.night.NightBook;
import rondure.night.NightFrame;
import rondure.night.Scene;
import rondure.night.SceneSolution;
import rondure.sky.SceneSky;

/**
 * The way that the image's centre went with the camera since its scene began, px: proven jumps, and
 * proven steady turning times its minutes. On a mount the drift of the stars takes the place of the
 * turning.
 */
final class CameraWay {
  static final String KEY = "pointing";

  /** Less motion of the camera than this is none. */
  private static final double LEAST_PX = 0.5;

  private static final double MILLIS_PER_MINUTE = 60_000;

  private CameraWay() {}

  /** Unknown of frames whose place is not known; of all frames where nothing moved. */
  static CourseQuantity of(NightBook book, List<NightFrame> frames) {
    List<Double> ways = new ArrayList<>();
    double way = 0;
    for (int i = 0; i < frames.size(); i++) {
      NightFrame frame = frames.get(i);
      boolean starts = i == 0 || !frame.sceneNumber().equals(frames.get(i - 1).sceneNumber());
      way = starts ? 0 : way + stepPx(book, frames.get(i - 1), frame);
      ways.add(isKnown(book, frame) ? way : Double.NaN);
    }
    CourseQuantity all = new CourseQuantity(KEY, ways, 0);
    return all.count() > 0 && all.most() >= LEAST_PX ? all : new CourseQuantity(KEY, List.of(), 0);
  }

  /** Whether the stars told how the camera stood in a frame, and the sky's turning is taken off. */
  static boolean isKnown(NightBook book, NightFrame frame) {
    boolean isSolved =
        solution(book, frame)
            .map(SceneSolution::finding)
            .filter(f -> f == SceneSky.Finding.SKY_TURNS || f == SceneSky.Finding.TRACKING)
            .isPresent();
    return isSolved && frame.course().flatMap(FrameCourse::jumpPx).isPresent();
  }

  private static double stepPx(NightBook book, NightFrame before, NightFrame frame) {
    if (!isKnown(book, frame)) {
      return 0;
    }
    double jump = frame.course().flatMap(FrameCourse::jumpPx).orElse(0.0);
    boolean timed = NightCourse.isTimed(before) && NightCourse.isTimed(frame);
    double minutes =
        timed ? (NightCourse.millis(frame) - NightCourse.millis(before)) / MILLIS_PER_MINUTE : 0;
    return jump + minutes * pxPerMin(book, frame);
  }

  private static double pxPerMin(NightBook book, NightFrame frame) {
    Optional<SceneSolution> solution = solution(book, frame);
    return solution.filter(s -> s.finding() == SceneSky.Finding.TRACKING).isPresent()
        ? solution.flatMap(SceneSolution::mount).map(SceneSolution.Drift::pxPerMin).orElse(0.0)
        : frame.course().flatMap(FrameCourse::creep).map(FrameCourse.Creep::pxPerMin).orElse(0.0);
  }

  private static Optional<SceneSolution> solution(NightBook book, NightFrame frame) {
    return book.scenes().stream()
        .filter(scene -> frame.sceneNumber().equals(Optional.of(scene.number())))
        .map(Scene::solution)
        .findFirst();
  }
}
