package rondure.night;

import java.util.List;
import java.util.Optional;
import rondure.blur.Budget;
import rondure.blur.Verdict;
import rondure.crew.FrameMeasurement;
import rondure.intake.ShotFacts;

/**
 * One exposure of the set with all that is known about it.
 *
 * @param file path relative to the input, forward slashes
 * @param copies other files of the same exposure, same form
 * @param cameraName short name for people ("camera 1" when the file names none)
 * @param sceneNumber the scene it belongs to, counted from 1; empty for frames outside the night
 * @param nightIndex the night it belongs to, counted from 1; empty for frames outside the night
 * @param facts facts after the user's overrides and clock shift
 * @param status what became of it
 * @param reason why, for every status but MEASURED; also why a measured frame has no verdict or, in
 *     a focus test series, no grade; one sentence
 * @param trailPredictedPx trail that the sky draws at the frame's centre; where the pole is not
 *     known the longest that the exposure can give (a star on the celestial equator), when
 *     exposure, focal length and pitch are known
 * @param shape star widths, when status is MEASURED
 * @param verdict likely cause, when status is MEASURED; empty where a fault of this program left
 *     the scene unexplained
 * @param budget the blur shared out, where the scene allows it
 * @param course what changed from frame to frame, when status is MEASURED
 * @param usefulness how large it may be shown, when status is MEASURED
 * @param graded what to do and why, when status is MEASURED and there is a verdict; none for the
 *     frames of a focus test series
 * @param measurement everything the worker measured, when the file could be read
 */
public record NightFrame(
    String file,
    List<String> copies,
    String cameraName,
    Optional<Integer> sceneNumber,
    Optional<Integer> nightIndex,
    ShotFacts facts,
    FrameStatus status,
    Optional<String> reason,
    Optional<Double> trailPredictedPx,
    Optional<FrameShape> shape,
    Optional<Verdict> verdict,
    Optional<Budget> budget,
    Optional<FrameCourse> course,
    Optional<Usefulness> usefulness,
    Optional<Graded> graded,
    Optional<FrameMeasurement> measurement) {
  public NightFrame {
    copies = List.copyOf(copies);
  }

  /** Said of a frame of a focus test series. */
  static final String FOCUS_TEST = "Part of a focus test series, so not graded.";

  /** Whether it is part of a focus test series: explained, but not graded. */
  public boolean isFocusTest() {
    return verdict.isPresent() && graded.isEmpty();
  }

  /** The same frame as a part of a focus test series: soft on purpose, so not graded. */
  NightFrame asFocusTest() {
    return new NightFrame(
        file,
        copies,
        cameraName,
        sceneNumber,
        nightIndex,
        facts,
        status,
        verdict.isPresent() ? Optional.of(FOCUS_TEST) : reason,
        trailPredictedPx,
        shape,
        verdict,
        budget,
        course,
        usefulness,
        Optional.empty(),
        measurement);
  }

  /** What to do with it, when that can be told. */
  public Optional<Grade> grade() {
    return graded.map(Graded::grade);
  }
}
