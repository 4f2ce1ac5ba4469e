package rondure.sim;

import java.util.Objects;
import rondure.base.Orientation;

/**
 * Where the camera stands and looks.
 *
 * @param azimuthDeg of the optical axis, from north through east
 * @param altitudeDeg of the optical axis
 * @param rollDeg extra turn of the camera about its axis, clockwise as seen from behind
 * @param held how the camera is held, as EXIF Orientation: NORMAL upright, ROTATED_90_CW with its
 *     top to the right, ROTATED_270_CW with its top to the left, ROTATED_180 upside down
 */
public record AimPlan(double azimuthDeg, double altitudeDeg, double rollDeg, Orientation held) {

  public AimPlan {
    Checks.within("azimuthDeg", azimuthDeg, -360, 360);
    Checks.within("altitudeDeg", altitudeDeg, -90, 90);
    Checks.within("rollDeg", rollDeg, -180, 180);
    held = Objects.requireNonNullElse(held, Orientation.NORMAL);
    turnDeg(held);
  }

  /** Turn of the camera about its axis, clockwise as seen from behind, with the way it is held. */
  double fullRollDeg() {
    return rollDeg + turnDeg(held);
  }

  private static double turnDeg(Orientation held) {
    return switch (held) {
      case NORMAL -> 0;
      case ROTATED_90_CW -> 90;
      case ROTATED_180 -> 180;
      case ROTATED_270_CW -> 270;
      default -> throw new IllegalArgumentException("a camera cannot be held mirrored: " + held);
    };
  }
}
