package rondure.sky;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Optional;
import org.junit.jupiter.api.Test;

class MountDriftTest {
  private static final double OMEGA = SkyMotion.SIDEREAL_RATE_RAD_PER_S;

  /**
   * An axis 1° off the pole: stars drift by up to 15.041″/s sin 1° = 15.75″ a minute (closed form;
   * the rule of thumb of drift alignment, 1′ off gives 0.26″ a minute, from memory, says the same).
   */
  @Test
  void aDriftTellsHowFarTheAxisIsOffThePole() {
    Direction pole = Direction.of(0.3, -0.8, 0.5);
    Direction axis = pole.rotatedAbout(Direction.of(0.8, 0.3, 0), Math.toRadians(1));
    Spin mount = Spin.ofSky(axis);
    Spin stars = Spin.ofSky(pole).minus(mount);
    MountDrift drift = new MountDrift(stars);
    assertEquals(1, drift.axisOffDeg(), 1e-9);
    assertEquals(15.75, Math.toDegrees(stars.rateRadPerS()) * 3600 * 60, 0.01);
    double along =
        (axis.x() - pole.x()) * stars.xRadPerS()
            + (axis.y() - pole.y()) * stars.yRadPerS()
            + (axis.z() - pole.z()) * stars.zRadPerS();
    assertEquals(OMEGA * Math.pow(2 * Math.sin(Math.toRadians(0.5)), 2), along, 1e-12);
  }

  /** Directions that turn about the axis down go to the right by f times the angle. */
  @Test
  void theDriftOfThePictureIsThatOfItsCentre() {
    Camera camera = Camera.rectilinear(2000, 1200, 800);
    ImageVelocity seen = new MountDrift(new Spin(0, 1e-5, 0)).atCentre(camera);
    assertEquals(0.02, seen.xPxPerS(), 1e-9);
    assertEquals(0, seen.yPxPerS(), 1e-9);
  }

  @Test
  void aTripodHasNoMount() {
    TripodNight night = new TripodNight(3);
    night.sky.frames = 5;
    SceneSky sky = Registration.of(night.shots());
    assertTrue(MountDrift.of(sky).isEmpty());
    SceneSky lost = SceneSky.unknown(SceneSky.Finding.NO_MATCH, Optional.empty(), 2);
    assertTrue(MountDrift.of(lost).isEmpty());
  }
}
