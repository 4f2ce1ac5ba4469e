package rondure.night;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * Frames between which the focus was stepped, and where it is best.
 *
 * @param number counted from 1 over the whole set
 * @param sceneNumber the scene it belongs to
 * @param named whether the user named it; else it was recognised
 * @param points its measured frames, in time order
 * @param onTheWay frames of it that are on no curve, as the focus went there or back: indices into
 *     NightBook.frames
 * @param steps what is known of the way between them
 * @param ending where the sharpest lies
 * @param curve the parabola, where positions are known well enough
 * @param bestFrame index into NightBook.frames of the frame nearest to best focus
 * @param others where the focus of the scene's other frames is, before and after the series
 */
public record FocusSeries(
    int number,
    int sceneNumber,
    boolean named,
    List<Point> points,
    List<Integer> onTheWay,
    Steps steps,
    Ending ending,
    Optional<Curve> curve,
    int bestFrame,
    List<Others> others) {
  public FocusSeries {
    points = List.copyOf(points);
    onTheWay = List.copyOf(onTheWay);
    others = List.copyOf(others);
    Objects.requireNonNull(steps, "steps");
    Objects.requireNonNull(ending, "ending");
    Objects.requireNonNull(curve, "curve");
    if (points.stream().noneMatch(point -> point.frame() == bestFrame)) {
      throw new IllegalArgumentException("the best frame must be a point, was " + bestFrame);
    }
  }

  /** What is known of the positions of the focus. */
  public enum Steps {
    /** Equal: positions count them. */
    EQUAL,
    /** Roughly equal: positions count them, their scatter is in the errors. */
    UNEVEN,
    /** Read from the signs and sizes of the field's pattern: positions are discs, px. */
    FROM_FIELD,
    /** Not known: positions count frames. */
    UNKNOWN
  }

  /** Where the sharpest frame lies. */
  public enum Ending {
    /** Softer frames on both sides of it. */
    BOTH_SIDES,
    /** It is the first: best focus may lie before it. */
    FIRST_SHARPEST,
    /** It is the last: best focus may lie beyond it. */
    LAST_SHARPEST,
    /** No frame is softer than what noise explains. */
    NO_CHANGE
  }

  /**
   * One frame.
   *
   * @param frame index into NightBook.frames
   * @param position of the focus, in the unit of {@link Steps}
   * @param px2 second moment, mean of both axes and of its stars
   * @param errorPx2 standard error
   */
  public record Point(int frame, double position, double px2, double errorPx2) {}

  /**
   * The parabola M = least + (discPxPerStep (position - at))² / 16.
   *
   * @param at position of best focus
   * @param atError standard error: the truth is within two in 95 of 100 series
   * @param leastPx2 second moment there
   * @param discPxPerStep how much one step widens the disc of defocus, px
   */
  public record Curve(double at, double atError, double leastPx2, double discPxPerStep) {
    public double px2At(double position) {
      return leastPx2 + Math.pow(discPxPerStep * (position - at), 2) / 16;
    }
  }

  /** On which side of best focus frames are. */
  public enum Side {
    /** At best focus, as far as noise allows. */
    AT_BEST,
    /** Where the first frames of the series are. */
    TOWARDS_FIRST,
    /** Where the last frames of the series are. */
    TOWARDS_LAST,
    /** Off it, and the pattern of the field does not tell to which side. */
    UNTOLD
  }

  /**
   * Frames of the scene that are in no series.
   *
   * @param after whether they come after the series, up to the next; else before it
   * @param frames how many were looked at: the nearest
   * @param side of best focus
   * @param discPx disc of defocus that widens the median frame, in px; where they are at best focus
   *     the largest that noise allows
   */
  public record Others(boolean after, int frames, Side side, double discPx) {}

  /** Indices of all its frames into NightBook.frames. */
  public List<Integer> members() {
    return Stream.concat(points.stream().map(Point::frame), onTheWay.stream()).sorted().toList();
  }

  /** The point of the frame nearest to best focus. */
  public Point best() {
    return points.stream().filter(p -> p.frame() == bestFrame).findFirst().orElseThrow();
  }

  /** The last point not beyond a position, by position; empty when all are. */
  public Optional<Point> below(double position) {
    return points.stream()
        .filter(p -> p.position() <= position)
        .reduce((a, b) -> b.position() >= a.position() ? b : a);
  }

  /** The first point beyond a position, by position; empty when none is. */
  public Optional<Point> above(double position) {
    return points.stream()
        .filter(p -> p.position() > position)
        .reduce((a, b) -> b.position() < a.position() ? b : a);
  }
}
