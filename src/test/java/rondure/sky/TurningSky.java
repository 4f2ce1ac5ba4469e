package rondure.sky;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;

/**
 * Places of stars on a sensor while the sky turns: a small projector of its own (plain matrices and
 * the textbook radii), for tests only. 6000 x 4000 px, centre (2999.5, 1999.5).
 */
final class TurningSky {
  static final int WIDTH = 6000;
  static final int HEIGHT = 4000;
  static final double RATE = 2 * Math.PI / 86164.0905;

  Projection projection = Projection.RECTILINEAR;
  double focalPx = 4000;
  double k1;
  double poleOffAxisDeg = 50;
  double polePositionDeg = -70;
  int frames = 40;
  double intervalSeconds = 60;
  int starsInFrame = 200;
  double noisePx = 0.1;
  double outlierShare;
  double clockStepSeconds = 0.01;

  /** A drooping head: steady pitch on top of the sky's turning, as a share of its rate. */
  double creepShare;

  double jitterRad;
  private final Random random;

  TurningSky(long seed) {
    random = new Random(seed);
  }

  private double radius(double theta) {
    double rho =
        switch (projection) {
          case RECTILINEAR -> Math.tan(theta);
          case EQUIDISTANT -> theta;
          case EQUISOLID -> 2 * Math.sin(theta / 2);
          case STEREOGRAPHIC -> 2 * Math.tan(theta / 2);
        };
    return focalPx * rho * (1 + k1 * rho * rho);
  }

  /** Turns v by an angle about the unit axis k: matrix of axis and angle, written out. */
  static double[] turned(double[] v, double[] k, double angle) {
    double c = Math.cos(angle);
    double s = Math.sin(angle);
    double dot = (k[0] * v[0] + k[1] * v[1] + k[2] * v[2]) * (1 - c);
    return new double[] {
      c * v[0] + s * (k[1] * v[2] - k[2] * v[1]) + dot * k[0],
      c * v[1] + s * (k[2] * v[0] - k[0] * v[2]) + dot * k[1],
      c * v[2] + s * (k[0] * v[1] - k[1] * v[0]) + dot * k[2]
    };
  }

  double[] pole() {
    double off = Math.toRadians(poleOffAxisDeg);
    double position = Math.toRadians(polePositionDeg);
    return new double[] {
      Math.sin(off) * Math.cos(position), Math.sin(off) * Math.sin(position), Math.cos(off)
    };
  }

  List<Sighting> sightings() {
    List<double[]> sky = stars();
    List<Sighting> all = new ArrayList<>();
    double[] pole = pole();
    for (int frame = 0; frame < frames; frame++) {
      double seconds = (frame - (frames - 1) / 2.0) * intervalSeconds;
      double pitch = creepShare * RATE * seconds + jitterRad * random.nextGaussian();
      double yaw = jitterRad * random.nextGaussian();
      for (int star = 0; star < sky.size(); star++) {
        double[] seen = turned(sky.get(star), pole, -RATE * seconds);
        seen = turned(seen, new double[] {1, 0, 0}, pitch);
        seen = turned(seen, new double[] {0, 1, 0}, yaw);
        double[] place = place(seen);
        if (!Double.isNaN(place[0])) {
          add(all, frame, star, place[0], place[1]);
        }
      }
    }
    return all;
  }

  /** Where a direction in camera axes falls; NaN far off the axis of a rectilinear lens. */
  double[] place(double[] seen) {
    double across = Math.hypot(seen[0], seen[1]);
    double theta = Math.atan2(across, seen[2]);
    if (projection == Projection.RECTILINEAR && theta >= 1.4) {
      return new double[] {Double.NaN, Double.NaN};
    }
    double r = radius(theta);
    return new double[] {
      (WIDTH - 1) / 2.0 + r * seen[0] / across, (HEIGHT - 1) / 2.0 + r * seen[1] / across
    };
  }

  private void add(List<Sighting> all, int frame, int star, double atX, double atY) {
    double x = atX + noisePx * random.nextGaussian();
    double y = atY + noisePx * random.nextGaussian();
    if (random.nextDouble() < outlierShare) {
      x += 60 * (random.nextDouble() - 0.5);
      y += 60 * (random.nextDouble() - 0.5);
    }
    if (x >= 0 && x < WIDTH && y >= 0 && y < HEIGHT) {
      all.add(new Sighting(frame, star, x, y, Math.max(noisePx, 0.01)));
    }
  }

  /** Stars over so much of the sphere that about the wanted number falls in the frame. */
  List<double[]> stars() {
    List<double[]> sky = new ArrayList<>();
    int inFrame = 0;
    for (int tries = 0; tries < 400000 && inFrame < starsInFrame; tries++) {
      double z = 2 * random.nextDouble() - 1;
      double turn = 2 * Math.PI * random.nextDouble();
      double across = Math.sqrt(1 - z * z);
      double[] star = {across * Math.cos(turn), across * Math.sin(turn), z};
      sky.add(star);
      double theta = Math.acos(z);
      if (projection != Projection.RECTILINEAR || theta < 1.4) {
        double r = radius(theta);
        boolean inside =
            Math.abs(r * Math.cos(turn)) < WIDTH / 2.0
                && Math.abs(r * Math.sin(turn)) < HEIGHT / 2.0;
        inFrame += inside ? 1 : 0;
      }
    }
    return sky;
  }

  SceneClock clock() {
    List<Optional<Double>> times = new ArrayList<>();
    for (int frame = 0; frame < frames; frame++) {
      double exact = 1000.37 + frame * intervalSeconds;
      times.add(Optional.of(Math.floor(exact / clockStepSeconds) * clockStepSeconds));
    }
    return new SceneClock(times, clockStepSeconds);
  }

  Camera nominal(double wrongBy) {
    return Camera.rectilinear(focalPx * wrongBy, WIDTH, HEIGHT);
  }
}
