package rondure.report;

import java.util.List;
import java.util.Optional;
import java.util.function.DoubleUnaryOperator;
import java.util.function.Function;
import rondure.base.RobustStats;
import rondure.intake.Fact;
import rondure.night.FrameCourse;
import rondure.night.NightBook;
import rondure.night.NightFrame;

/**
 * A quantity that changes through the night, as one panel shows it.
 *
 * @param key of its words
 * @param values one for each frame, NaN where it is not known
 * @param decimals of its middle
 */
record CourseQuantity(String key, List<Double> values, int decimals) {
  private static final double LEAST_SHARE_OF_SKY = 0.8;

  /** Of the white level; developed files of 8 bits have no finer steps near black (1/255/12.9). */
  private static final double LEAST_SKY = 0.0003;

  CourseQuantity {
    values = List.copyOf(values);
  }

  /** Those that the frames know, in the order of their panels. */
  static List<CourseQuantity> of(NightBook book, List<NightFrame> frames) {
    return List.of(
            known("width", frames, f -> f.shape().map(s -> s.fwhmPx()), 1),
            known("roundness", frames, f -> f.shape().map(s -> s.roundness()), 2),
            sky(frames),
            known("light", frames, CourseQuantity::light, 0),
            known("temperature", frames, f -> f.facts().ambientTemperatureC().map(Fact::value), 0),
            CameraWay.of(book, frames))
        .stream()
        .filter(quantity -> quantity.count() > 1)
        .filter(quantity -> !quantity.isSky() || !isCutOff(frames))
        .toList();
  }

  private boolean isSky() {
    return key.equals("sky") || key.equals("skyLevel");
  }

  /** A sky that the files cut off at black is nothing to draw. */
  private static boolean isCutOff(List<NightFrame> frames) {
    double[] levels =
        frames.stream()
            .flatMap(frame -> frame.shape().stream())
            .mapToDouble(shape -> shape.skyBackground())
            .toArray();
    return levels.length > 0 && RobustStats.median(levels) < LEAST_SKY;
  }

  private static CourseQuantity known(
      String key, List<NightFrame> frames, Function<NightFrame, Optional<Double>> value, int by) {
    return new CourseQuantity(
        key, frames.stream().map(frame -> value.apply(frame).orElse(Double.NaN)).toList(), by);
  }

  /** For equal exposure, ISO and f-number where they are known, else as it is in the files. */
  private static CourseQuantity sky(List<NightFrame> frames) {
    CourseQuantity mag = known("sky", frames, f -> f.course().flatMap(FrameCourse::skyMag), 1);
    boolean oneCamera = frames.stream().map(NightFrame::cameraName).distinct().count() == 1;
    if (!oneCamera || mag.count() < LEAST_SHARE_OF_SKY * frames.size()) {
      return known("skyLevel", frames, f -> f.shape().map(s -> 100 * s.skyBackground()), 1);
    }
    double middle = mag.median();
    return mag.with(value -> Math.pow(10, -0.4 * (value - middle)));
  }

  /** 2.5 log10 of the light ratio is the loss in magnitudes (Pogson 1856). */
  private static Optional<Double> light(NightFrame frame) {
    return frame
        .course()
        .flatMap(FrameCourse::lightLostMag)
        .map(lost -> 100 * Math.pow(10, -0.4 * lost));
  }

  private CourseQuantity with(DoubleUnaryOperator change) {
    return new CourseQuantity(
        key, values.stream().map(value -> change.applyAsDouble(value)).toList(), decimals);
  }

  private double[] finite() {
    return values.stream().mapToDouble(v -> v).filter(Double::isFinite).toArray();
  }

  long count() {
    return finite().length;
  }

  double median() {
    return RobustStats.median(finite());
  }

  double least() {
    return RobustStats.percentile(0, finite());
  }

  double most() {
    return RobustStats.percentile(1, finite());
  }

  /** Least and largest value of its axis. */
  double lowest() {
    return switch (key) {
      case "width" -> Math.max(0, 0.8 * least() - 0.5 * (most() - least()));
      case "roundness" -> Math.max(0, Math.min(0.6, Math.floor((least() - 0.03) * 5) / 5));
      case "light" -> Math.max(0, Math.min(50, 20 * Math.floor((least() - 5) / 20)));
      case "temperature" -> Math.floor(least() - 1);
      default -> 0;
    };
  }

  double highest() {
    return switch (key) {
      case "roundness" -> 1.02;
      case "light" -> Math.max(110, 1.03 * most());
      case "temperature" -> Math.ceil(most() + 1);
      case "sky", "skyLevel" -> Math.max(1.25 * most(), 0.01);
      default -> Math.max(1.08 * most(), 0.01);
    };
  }

  String printed(double value) {
    return Figures.fixed(decimals, value);
  }
}
