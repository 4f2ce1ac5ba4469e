package rondure.night;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import org.junit.jupiter.api.Test;

/** Which frames show the same picture (what a photographer calls alike: common practice). */
class LookalikesTest {
  private final List<MeasuredExposure> exposures = new ArrayList<>();
  private final List<Optional<Double>> jumps = new ArrayList<>();

  /** A frame so many seconds after the evening began, the camera turned by a share of the frame. */
  private void frame(int seconds, double jumpShare, Consumer<Exposures> change) {
    Exposures made =
        Exposures.at("f" + exposures.size() + ".tif", Exposures.EVENING.plusSeconds(seconds));
    change.accept(made);
    exposures.add(made.make());
    jumps.add(jumpShare < 0 ? Optional.empty() : Optional.of(jumpShare));
  }

  private void frame(int seconds, double jumpShare) {
    frame(seconds, jumpShare, made -> {});
  }

  private List<List<Integer>> groups() {
    NightBook book = Exposures.book(exposures);
    List<NightFrame> frames = new ArrayList<>();
    for (int i = 0; i < jumps.size(); i++) {
      frames.add(with(book.frames().get(i), jumps.get(i)));
    }
    NightBook turned =
        new NightBook(
            "night",
            book.nights(),
            book.scenes(),
            frames,
            Map.of(),
            Map.of(),
            List.of(),
            List.of(),
            List.of());
    return Lookalikes.of(turned).stream().map(Lookalikes.Group::frames).toList();
  }

  private static NightFrame with(NightFrame frame, Optional<Double> jumpShare) {
    FrameCourse course =
        new FrameCourse(
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            jumpShare.map(share -> share * Exposures.WIDTH),
            jumpShare,
            Optional.empty());
    return new NightFrame(
        frame.file(),
        frame.copies(),
        frame.cameraName(),
        frame.sceneNumber(),
        frame.nightIndex(),
        frame.facts(),
        frame.status(),
        frame.reason(),
        frame.trailPredictedPx(),
        frame.shape(),
        frame.verdict(),
        frame.budget(),
        Optional.of(course),
        frame.usefulness(),
        frame.graded(),
        frame.measurement());
  }

  @Test
  void aNewAimBeginsAnotherGroupAndAKnockDoesNot() {
    double[] jumps = {0, 0, 0.001, 0.3, 0, 0.06};
    for (int i = 0; i < jumps.length; i++) {
      frame(15 * i, jumps[i]);
    }
    assertEquals(List.of(List.of(0, 1, 2), List.of(3, 4)), groups());
  }

  @Test
  void anotherExposureApertureOrSensitivityIsAnotherPicture() {
    frame(0, 0);
    frame(15, 0);
    frame(30, 0, made -> made.exposure = Optional.of(5.0));
    frame(45, 0, made -> made.exposure = Optional.of(5.0));
    frame(60, 0, made -> made.fNumber = Optional.of(4.0));
    frame(75, 0, made -> made.iso = Optional.of(800.0));
    assertEquals(List.of(List.of(0, 1), List.of(2, 3)), groups());
  }

  /** The sky turns by 5° in 20 minutes (15.04° an hour). */
  @Test
  void whenTheSkyHasTurnedByFiveDegreesThePictureIsAnother() {
    for (int minutes : new int[] {0, 10, 20, 21, 30, 60}) {
      frame(60 * minutes, 0);
    }
    assertEquals(List.of(List.of(0, 1, 2), List.of(3, 4)), groups());
    assertEquals(5.0, Lookalikes.LONGEST_SECONDS / 3600 * 15.041, 0.02);
  }

  @Test
  void aFrameWhoseAimIsNotKnownIsLikeNone() {
    frame(0, 0);
    frame(15, -1);
    frame(30, 0);
    frame(45, -1);
    assertEquals(List.of(List.of(0, 2)), groups());
  }

  @Test
  void framesWithoutATimeAreGroupedByOrder() {
    frame(0, 0, made -> made.time = Optional.empty());
    frame(0, 0, made -> made.time = Optional.empty());
    assertEquals(List.of(List.of(0, 1)), groups());
  }
}
