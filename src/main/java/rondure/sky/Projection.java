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
    double largestAngleRad() {
      return Math.PI / 2 - RIM_RAD;
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
  };

  /** Nobody's lens sees nearer than this to where a projection ends. */
  private static final double RIM_RAD = 1e-9;

  /** ρ of an angle off the axis, which must not be larger than the largest. */
  abstract double radius(double angleRad);

  /** Angle off the axis of ρ, rad; NaN when there is none. */
  abstract double angleRad(double radius);

  /** dρ/dθ. */
  abstract double slope(double angleRad);

  /** Where the projection ends, rad. */
  double largestAngleRad() {
    return Math.PI - RIM_RAD;
  }
}
