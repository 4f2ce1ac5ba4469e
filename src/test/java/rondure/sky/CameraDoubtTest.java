package rondure.sky;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;

class CameraDoubtTest {
  private static final Camera CAMERA = Camera.rectilinear(4000, 6000, 4000);

  private static Vec spin(double offAxisDeg) {
    double angle = Math.toRadians(offAxisDeg);
    return new Vec(0, -Math.sin(angle), Math.cos(angle)).times(7e-5);
  }

  /**
   * f 1 % wrong, 24 mm, pole 45° off the axis: the pole moves by 0.1814°, the rate by 0.0032
   * (scipy, least squares in px over 60 × 40 stars and 300 s).
   */
  @Test
  void aWrongFocalLengthBendsPoleAndRate() {
    CameraDoubt.Bend bend = CameraDoubt.of(0.01, 0).bend(CAMERA, spin(45));
    assertEquals(0.1814, Math.toDegrees(bend.acrossRad()), 0.003);
    assertEquals(0.0032, bend.alongShare(), 0.0001);
  }

  /** On the axis the sky only rolls: no focal length changes that. */
  @Test
  void aPoleOnTheAxisStaysThere() {
    CameraDoubt.Bend bend = CameraDoubt.of(0.01, 0).bend(CAMERA, spin(0));
    assertEquals(0, bend.acrossRad(), 1e-9);
    assertEquals(0, bend.alongShare(), 1e-9);
  }

  /** Errors that go against each other: f larger and k1 smaller keep the mean scale. */
  @Test
  void errorsThatCancelBendLess() {
    CameraDoubt.Bend apart = CameraDoubt.of(0.01, 0.05).bend(CAMERA, spin(60));
    CameraDoubt against = new CameraDoubt(1e-4, 25e-4, -0.9 * 0.01 * 0.05);
    CameraDoubt with = new CameraDoubt(1e-4, 25e-4, 0.9 * 0.01 * 0.05);
    double less = against.bend(CAMERA, spin(60)).alongShare();
    double more = with.bend(CAMERA, spin(60)).alongShare();
    assertEquals(
        2 * Math.pow(apart.alongShare(), 2), less * less + more * more, 1e-3 * more * more);
    assertEquals(-1, Math.signum(less - more), 0);
  }
}
