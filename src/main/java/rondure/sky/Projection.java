package rondure.sky;

/**
 * How a lens maps the angle θ off its axis to the distance r = ρ f from the image centre, before
 * radial distortion (Kingslake, Optical System Design; from memory).
 */
public enum Projection {
  /** ρ = tan θ: straight lines stay straight; half the sky at most. */
  RECTILINEAR {
    @Override
    double radius(double angleRad) {
      return Math.tan(angleRad);
    }

    @Override
    double angleRad(double radius) {
      return Math.atan(radius);
    }

    @Override
    double slope(double angleRad) {
      double tan = Math.tan(angleRad);
      return 1 + tan * tan;
    }

    @Override
    double radius(double sine, double cosine) {
      return sine / cosine;
    }

    @Override
    double slope(double sine, double cosine) {
      return 1 / (cosine * cosine);
    }

    @Override
    double largestAngleRad() {
      return Math.PI / 2 - RIM_RAD;
    }

    @Override
    boolean shows(double cosine) {
      return cosine > RIM_RAD;
    }
  },
  /** ρ = θ. */
  EQUIDISTANT {
    @Override
    double radius(double angleRad) {
      return angleRad;
    }

    @Override
    double angleRad(double radius) {
      return radius;
    }

    @Override
    double slope(double angleRad) {
      return 1;
    }

    @Override
    double radius(double sine, double cosine) {
      return Math.atan2(sine, cosine);
    }

    @Override
    double slope(double sine, double cosine) {
      return 1;
    }
  },
  /** ρ = 2 sin(θ/2). */
  EQUISOLID {
    @Override
    double radius(double angleRad) {
      return 2 * Math.sin(angleRad / 2);
    }

    @Override
    double angleRad(double radius) {
      return radius < 2 ? 2 * Math.asin(radius / 2) : Double.NaN;
    }

    @Override
    double slope(double angleRad) {
      return Math.cos(angleRad / 2);
    }

    @Override
    double radius(double sine, double cosine) {
      return sine / slope(sine, cosine);
    }

    @Override
    double slope(double sine, double cosine) {
      return Math.sqrt((1 + cosine) / 2);
    }
  },
  /** ρ = 2 tan(θ/2). */
  STEREOGRAPHIC {
    @Override
    double radius(double angleRad) {
      return 2 * Math.tan(angleRad / 2);
    }

    @Override
    double angleRad(double radius) {
      return 2 * Math.atan(radius / 2);
    }

    @Override
    double slope(double angleRad) {
      double tan = Math.tan(angleRad / 2);
      return 1 + tan * tan;
    }

    @Override
    double radius(double sine, double cosine) {
      return 2 * sine / (1 + cosine);
    }

    @Override
    double slope(double sine, double cosine) {
      return 2 / (1 + cosine);
    }
  };

  /** Nobody's lens sees nearer than this to where a projection ends. */
  private static final double RIM_RAD = 1e-9;

  /** ρ of an angle off the axis, which must not be larger than the largest. */
  abstract double radius(double angleRad);

  /** Angle off the axis of ρ, rad; NaN when there is none. */
  abstract double angleRad(double radius);

  /** dρ/dθ. */
  abstract double slope(double angleRad);

  /** ρ of a direction that it shows, by sine and cosine of its angle off the axis. */
  abstract double radius(double sine, double cosine);

  /** dρ/dθ there. */
  abstract double slope(double sine, double cosine);

  /** Whether directions of this cosine lie within it. */
  boolean shows(double cosine) {
    return cosine > -1;
  }

  /** Where the projection ends, rad. */
  double largestAngleRad() {
    return Math.PI - RIM_RAD;
  }
}
