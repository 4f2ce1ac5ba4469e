package rondure.sky;

/** What one sighting says of a small step: its misfit and how the prediction would move. */
final class SightingLine {

  /** Slopes of x and of y by ln f, k1, three of the attitude, two turns of the star. */
  final double[][] slopes;

  /** Seen minus predicted, px. */
  final double[] misfit;

  /**
   * @param star a direction that the camera sees from this attitude
   */
  SightingLine(Camera camera, Rotation attitude, Direction star, double xPx, double yPx) {
    Direction seen = attitude.apply(star);
    ImagePoint at = camera.project(seen).orElseThrow();
    FlowJacobian flow = camera.jacobian(seen);
    double x = at.xPx() - camera.centreXPx();
    double y = at.yPx() - camera.centreYPx();
    double rho = camera.projection().radius(Math.acos(Math.max(-1, Math.min(1, seen.z()))));
    double byK1 = rho * rho / (1 + camera.k1() * rho * rho);
    Spin[] turns = starTurns(star);
    ImageVelocity one = flow.times(turned(attitude, turns[0]));
    ImageVelocity two = flow.times(turned(attitude, turns[1]));
    slopes =
        new double[][] {
          {x, x * byK1, flow.xByX(), flow.xByY(), flow.xByZ(), one.xPxPerS(), two.xPxPerS()},
          {y, y * byK1, flow.yByX(), flow.yByY(), flow.yByZ(), one.yPxPerS(), two.yPxPerS()}
        };
    misfit = new double[] {xPx - at.xPx(), yPx - at.yPx()};
  }

  /** Two unit turns, across a star's direction and each other, that move it. */
  static Spin[] starTurns(Direction s) {
    Direction one =
        Math.abs(s.z()) > 0.5 ? Direction.of(s.z(), 0, -s.x()) : Direction.of(-s.y(), s.x(), 0);
    return new Spin[] {
      new Spin(one.x(), one.y(), one.z()),
      new Spin(
          s.y() * one.z() - s.z() * one.y(),
          s.z() * one.x() - s.x() * one.z(),
          s.x() * one.y() - s.y() * one.x())
    };
  }

  private static Spin turned(Rotation attitude, Spin unit) {
    Direction d = attitude.apply(Direction.of(unit.xRadPerS(), unit.yRadPerS(), unit.zRadPerS()));
    return new Spin(d.x(), d.y(), d.z());
  }
}
