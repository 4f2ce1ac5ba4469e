package rondure.stars;

import rondure.base.Moments;

/**
 * Round Gaussian cores drawn out along a straight line of uniform light.
 *
 * <p>Across: variance σ² = M_minor. Along: σ² + L²/12 = M_major, so L = √(12 (M_major − M_minor)).
 * With h = L/2 the light along the line is [Φ((u + h)/σ) − Φ((u − h)/σ)]/2h.
 */
final class TrailProfile implements Profile {
  /** Below this half length over σ the line differs from an elliptical Gaussian by under 1e-4. */
  private static final double SHORT = 0.4;

  private final EllipticalProfile shortTrail;

  TrailProfile(EllipticalProfile gaussian) {
    this.shortTrail = gaussian;
  }

  @Override
  public void evaluate(FitPixels pixels, double xPx, double yPx, Moments moments, double[] out) {
    double sigma = Math.sqrt(moments.minorPx2());
    double half = halfLength(moments);
    if (half < SHORT * sigma) {
      shortTrail.evaluate(pixels, xPx, yPx, moments, out);
      return;
    }
    double angle = moments.positionAngleRad();
    double cos = Math.cos(angle);
    double sin = Math.sin(angle);
    for (int i = 0, at = 0; i < pixels.count(); i++, at += STRIDE) {
      double dx = pixels.x(i) - xPx;
      double dy = pixels.y(i) - yPx;
      local(cos * dx + sin * dy, cos * dy - sin * dx, half, sigma, out, at);
      turn(cos, sin, out, at);
    }
  }

  /** Value and slopes in the frame of the trail: value, ∂u₀, ∂v₀, ∂Muu, ∂Muv, ∂Mvv. */
  private static void local(
      double along, double across, double half, double sigma, double[] out, int at) {
    double variance = sigma * sigma;
    double front = (along + half) / sigma;
    double back = (along - half) / sigma;
    double frontDensity = NormalTable.densityAt(front);
    double backDensity = NormalTable.densityAt(back);
    double line = (NormalTable.integralTo(front) - NormalTable.integralTo(back)) / (2 * half);
    double lineSlope = (frontDensity - backDensity) / (2 * half * sigma);
    double lineBend = (back * backDensity - front * frontDensity) / (2 * half * variance);
    double lineByHalf = (frontDensity + backDensity) / (2 * half * sigma) - line / half;
    double side = NormalTable.densityAt(across / sigma) / sigma;
    double sideSlope = -across / variance * side;
    // a Gaussian of unit flux has ∂/∂σ² = ½ ∂²/∂v²
    double sideByVariance = (across * across / variance - 1) / (2 * variance) * side;
    double byMajor = lineByHalf * 1.5 / half * side;
    out[at] = line * side;
    out[at + 1] = -lineSlope * side;
    out[at + 2] = -line * sideSlope;
    out[at + 3] = byMajor;
    out[at + 4] = (lineSlope * side * across - line * sideSlope * along) * 3 / (half * half);
    out[at + 5] = line * sideByVariance + lineBend / 2 * side - byMajor;
  }

  /** Slopes from the frame of the trail into that of the raster. */
  private static void turn(double cos, double sin, double[] out, int at) {
    double byU = out[at + 1];
    double byV = out[at + 2];
    out[at + 1] = cos * byU - sin * byV;
    out[at + 2] = sin * byU + cos * byV;
    double byUu = out[at + 3];
    double byUv = out[at + 4];
    double byVv = out[at + 5];
    out[at + 3] = cos * cos * byUu - cos * sin * byUv + sin * sin * byVv;
    out[at + 4] = 2 * cos * sin * (byUu - byVv) + (cos * cos - sin * sin) * byUv;
    out[at + 5] = sin * sin * byUu + cos * sin * byUv + cos * cos * byVv;
  }

  private static double halfLength(Moments moments) {
    return Math.sqrt(3 * Math.max(0, moments.majorPx2() - moments.minorPx2()));
  }

  private static double alongAt(double along, double half, double sigma) {
    double front = NormalTable.integralTo((along + half) / sigma);
    return (front - NormalTable.integralTo((along - half) / sigma)) / (2 * half);
  }

  @Override
  public double fwhmMajorPx(Moments moments) {
    double sigma = Math.sqrt(moments.minorPx2());
    double half = halfLength(moments);
    if (half < SHORT * sigma) {
      return shortTrail.fwhmMajorPx(moments);
    }
    double target = alongAt(0, half, sigma) / 2;
    double inside = 0;
    double outside = half + 2 * sigma;
    for (int i = 0; i < 40; i++) {
      double middle = (inside + outside) / 2;
      if (alongAt(middle, half, sigma) > target) {
        inside = middle;
      } else {
        outside = middle;
      }
    }
    return inside + outside;
  }

  @Override
  public double fwhmMinorPx(Moments moments) {
    return shortTrail.fwhmMinorPx(moments);
  }
}
