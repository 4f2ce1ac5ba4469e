package rondure.report.picture;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import rondure.base.Moments;
import rondure.base.Orientation;
import rondure.base.RobustStats;
import rondure.blur.FrameBlur;
import rondure.sky.ImageVelocity;
import rondure.stars.Star;

/**
 * Which way the sky moves the stars of a frame, as displayed; a way and its opposite are one.
 *
 * @param middleRad mean direction in [0, π), each star weighted by the square of its speed, as a
 *     trail's second moment grows
 * @param spreadRad four fifths of the stars are within this of it
 */
public record SkyDirections(double middleRad, double spreadRad) {
  private static final double MOST = 0.8;

  /** Beyond this the stars go round a pole in the frame. */
  private static final double ONE_WAY_RAD = Math.toRadians(50);

  /** Of a frame's stars; empty on a mount that follows the sky, and where no star is seen. */
  public static Optional<SkyDirections> of(
      FrameBlur blur, List<Star> stars, Orientation orientation) {
    List<Moments> trails =
        stars.stream()
            .filter(star -> blur.sees(star.xPx(), star.yPx()))
            .flatMap(star -> blur.skyAt(star.xPx(), star.yPx()).stream())
            .map(velocity -> orientation.display(trail(velocity)))
            .toList();
    if (trails.isEmpty()) {
      return Optional.empty();
    }
    Moments mean = trails.stream().reduce(Moments::plus).orElseThrow();
    double middle = mean.positionAngleRad();
    double[] off =
        trails.stream()
            .mapToDouble(trail -> Math.abs(off(trail.positionAngleRad(), middle)))
            .toArray();
    Arrays.sort(off);
    return Optional.of(new SkyDirections(middle, RobustStats.percentile(MOST, off)));
  }

  /** In a second, px². */
  private static Moments trail(ImageVelocity velocity) {
    return Moments.line(velocity.speedPxPerS(), velocity.directionRad());
  }

  /** From one axis to another, in [-π/2, π/2]. */
  private static double off(double angle, double middle) {
    return Math.IEEEremainder(angle - middle, Math.PI);
  }

  /** Whether there is one way to show. */
  public boolean isOneWay() {
    return spreadRad <= ONE_WAY_RAD;
  }
}
