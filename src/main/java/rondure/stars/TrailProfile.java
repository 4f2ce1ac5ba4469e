package rondure.stars;

import java.util.function.DoubleUnaryOperator;
import rondure.base.Moments;

/**
 * Round cores drawn out along a straight line of uniform light.
 *
 * <p>The core is a Gaussian, or a narrow and a wide one together that follow a Moffat profile
 * within 0.6 % of its peak. σ is that of the Gaussian with the core's half-maximum width; σ² =
 * M_minor and σ² + L²/12 = M_major, so L = √(12 (M_major − M_minor)). With h = L/2 the light of one
 * Gaussian along the line is [Φ((u + h)/σ) − Φ((u − h)/σ)]/2h.
 */
final class TrailProfile implements Profile {
  /** Below this half length over σ the line differs from an elliptical Gaussian by under 1e-4. */
  private static final double SHORT = 0.4;

  private final EllipticalProfile shortTrail;
  private final Part[] parts;

  /**
   * One Gaussian of the core.
   *
   * @param share of the light
   * @param variance over σ²
   */
  private record Part(double share, double variance) {}

  private TrailProfile(EllipticalProfile shortTrail, Part... parts) {
    this.shortTrail = shortTrail;
    this.parts = parts;
  }

  /** Gaussian cores. */
  static TrailProfile gaussian() {
    return new TrailProfile(EllipticalProfile.gaussian(), new Part(1, 1));
  }

  /** Cores with faint wings, Moffat β = 5.5. */
  static TrailProfile faintWings() {
    return new TrailProfile(
        EllipticalProfile.moffat(5.5), new Part(0.43959, 0.75977), new Part(0.56041, 1.86201));
  }

  /** Cores with wings, Moffat β = 3.5. */
  static TrailProfile wings() {
    return new TrailProfile(
        EllipticalProfile.moffat(3.5), new Part(0.40147, 0.72934), new Part(0.59853, 2.28764));
  }

  /** Cores with strong wings, Moffat β = 2.5. */
  static TrailProfile strongWings() {
    return new TrailProfile(
        EllipticalProfile.moffat(2.5), new Part(0.35793, 0.70291), new Part(0.64207, 2.75941));
  }

  @Override
  public void evaluate(FitPixels pixels, double xPx, double yPx, Moments moments, double[] out) {
    double half = halfLength(moments);
    if (isShort(moments)) {
      shortTrail.evaluate(pixels, xPx, yPx, moments, out);
      return;
    }
    double angle = moments.positionAngleRad();
    double cos = Math.cos(angle);
    double sin = Math.sin(angle);
    for (int i = 0, at = 0; i < pixels.count(); i++, at += STRIDE) {
      double dx = pixels.x(i) - xPx;
      double dy = pixels.y(i) - yPx;
      for (int k = 0; k < STRIDE; k++) {
        out[at + k] = 0;
      }
      for (Part part : parts) {
        double sigma = Math.sqrt(part.variance() * moments.minorPx2());
        add(part, cos * dx + sin * dy, cos * dy - sin * dx, half, sigma, out, at);
      }
      turn(cos, sin, out, at);
    }
  }

  /** Adds value and slopes in the frame of the trail: value, ∂u₀, ∂v₀, ∂Muu, ∂Muv, ∂Mvv. */
  private static void add(
      Part part, double along, double across, double half, double sigma, double[] out, int at) {
    double variance = sigma * sigma;
    double front = (along + half) / sigma;
    double back = (along - half) / sigma;
    double frontDensity = NormalTable.densityAt(front);
    double backDensity = NormalTable.densityAt(back);
    double line = (NormalTable.integralTo(front) - NormalTable.integralTo(back)) / (2 * half);
    double lineSlope = (frontDensity - backDensity) / (2 * half * sigma);
    double lineBend = (back * backDensity - front * frontDensity) / (2 * half * variance);
    double lineByHalf = (frontDensity + backDensity) / (2 * half * sigma) - line / half;
    double side = part.share() * NormalTable.densityAt(across / sigma) / sigma;
    double sideSlope = -across / variance * side;
    // a Gaussian of unit flux has ∂/∂σ² = ½ ∂²/∂v²
    double sideByVariance = (across * across / variance - 1) / (2 * variance) * side;
    double byMajor = lineByHalf * 1.5 / half * side;
    out[at] += line * side;
    out[at + 1] -= lineSlope * side;
    out[at + 2] -= line * sideSlope;
    out[at + 3] += byMajor;
    out[at + 4] += (lineSlope * side * across - line * sideSlope * along) * 3 / (half * half);
    out[at + 5] += part.variance() * (line * sideByVariance + lineBend / 2 * side) - byMajor;
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

  /** Whether a line is too short, for the width of its core, to look different from an ellipse. */
  static boolean isShort(Moments moments) {
    return halfLength(moments) < SHORT * Math.sqrt(moments.minorPx2());
  }

  private double lightAt(double along, double across, Moments moments) {
    double half = halfLength(moments);
    double sum = 0;
    for (Part part : parts) {
      double sigma = Math.sqrt(part.variance() * moments.minorPx2());
      double line =
          NormalTable.integralTo((along + half) / sigma)
              - NormalTable.integralTo((along - half) / sigma);
      sum += part.share() * line * NormalTable.densityAt(across / sigma) / sigma;
    }
    return sum;
  }

  @Override
  public Moments lightMoments(Moments fitted, double windowSigmas) {
    double wings = (shortTrail.widening(windowSigmas) - 1) * fitted.minorPx2();
    return fitted.plus(Moments.round(wings));
  }

  @Override
  public double fwhmMajorPx(Moments moments) {
    return isShort(moments)
        ? shortTrail.fwhmMajorPx(moments)
        : halfMaximumWidth(u -> lightAt(u, 0, moments), moments);
  }

  @Override
  public double fwhmMinorPx(Moments moments) {
    return isShort(moments)
        ? shortTrail.fwhmMinorPx(moments)
        : halfMaximumWidth(v -> lightAt(0, v, moments), moments);
  }

  private static double halfMaximumWidth(DoubleUnaryOperator light, Moments moments) {
    double target = light.applyAsDouble(0) / 2;
    double inside = 0;
    double outside = halfLength(moments) + 3 * Math.sqrt(moments.minorPx2());
    for (int i = 0; i < 30; i++) {
      double middle = (inside + outside) / 2;
      if (light.applyAsDouble(middle) > target) {
        inside = middle;
      } else {
        outside = middle;
      }
    }
    return inside + outside;
  }
}
