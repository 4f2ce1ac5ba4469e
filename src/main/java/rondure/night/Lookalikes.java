package rondure.night;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import rondure.intake.Fact;

/**
 * Frames that show the same picture, of which one is enough: of one scene, with the same exposure,
 * f-number and ISO, the camera not aimed anew, and the sky not turned on by much.
 *
 * <p>Only frames whose place in the sky is known from their stars are put together: two aims may
 * have the same settings. A knock by a few pixels leaves the picture the same; what it did to the
 * stars is for the ranking to say.
 */
public final class Lookalikes {
  /** In this time the sky turns by 5°, on a wide frame as much as a new framing. */
  static final double LONGEST_SECONDS = 1200;

  private final NightBook book;
  private final EventSettings settings;
  private final List<Group> groups = new ArrayList<>();

  private Lookalikes(NightBook book, EventSettings settings) {
    this.book = book;
    this.settings = settings;
  }

  /**
   * Frames alike.
   *
   * @param sceneNumber their scene
   * @param frames indices into NightBook.frames, time order, two at least
   */
  public record Group(int sceneNumber, List<Integer> frames) {
    public Group {
      frames = List.copyOf(frames);
    }
  }

  /** The groups of a book, by scene and time; frames that are like no other are in none. */
  public static List<Group> of(NightBook book) {
    Lookalikes search = new Lookalikes(book, EventSettings.defaults());
    book.scenes().forEach(search::inScene);
    return List.copyOf(search.groups);
  }

  private void inScene(Scene scene) {
    List<Integer> run = new ArrayList<>();
    for (int index : scene.frames()) {
      NightFrame frame = book.frames().get(index);
      if (jumpShare(frame).isEmpty()) {
        continue;
      }
      if (!run.isEmpty() && !isLike(book.frames().get(run.get(0)), frame)) {
        close(scene, run);
        run.clear();
      }
      run.add(index);
    }
    close(scene, run);
  }

  private void close(Scene scene, List<Integer> run) {
    if (run.size() > 1) {
      groups.add(new Group(scene.number(), run));
    }
  }

  /** Whether a frame may join the group that another began; all between them did. */
  private boolean isLike(NightFrame first, NightFrame next) {
    return jumpShare(next).orElse(1.0) < settings.reAimShare()
        && Objects.equals(exposure(first), exposure(next))
        && apart(first, next).map(seconds -> seconds <= LONGEST_SECONDS).orElse(true);
  }

  /** Empty where the stars do not tell where the frame looks. */
  private static Optional<Double> jumpShare(NightFrame frame) {
    return frame.shape().isEmpty()
        ? Optional.empty()
        : frame.course().flatMap(FrameCourse::jumpShare);
  }

  private static List<Optional<Double>> exposure(NightFrame frame) {
    return List.of(
        frame.facts().exposureSeconds().map(Fact::value),
        frame.facts().fNumber().map(Fact::value),
        frame.facts().iso().map(Fact::value));
  }

  private static Optional<Double> apart(NightFrame first, NightFrame next) {
    return first
        .facts()
        .captureTime()
        .flatMap(
            one ->
                next.facts()
                    .captureTime()
                    .map(two -> java.time.Duration.between(one.local(), two.local()).toMillis()))
        .map(millis -> Math.abs(millis) / 1000.0);
  }
}
