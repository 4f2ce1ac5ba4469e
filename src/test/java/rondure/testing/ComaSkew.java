package rondure.testing;

import rondure.sim.LensPlan;
import rondure.sim.NightPlan;
import rondure.sim.ShotGroup;
import rondure.sim.StarTruth;

/**
 * The lopsidedness that a plan's coma gives a star, px: an evenly lit round pupil throws rays to c
 * (3u² + v², 2uv), whose third moment ⟨r² x⟩ about their middle is c³/3 (integrated over the pupil
 * with sympy: 12 ⟨ρ⁶⟩ - 28 ⟨ρ²⟩⟨ρ⁴⟩ + 16 ⟨ρ²⟩³); what else widens the star is even.
 */
record ComaSkew(double xPx, double yPx) {

  static ComaSkew of(NightPlan plan, int number, StarTruth star) {
    LensPlan lens = plan.lens();
    double x = star.xPx() - (plan.camera().widthPx() - 1) / 2.0;
    double y = star.yPx() - (plan.camera().heightPx() - 1) / 2.0;
    double corner = Math.hypot(plan.camera().widthPx(), plan.camera().heightPx()) / 2;
    double stop = lens.fNumber() / group(plan, number).fNumber().orElse(lens.fNumber());
    double coefficient = lens.comaPx() * stop * stop / corner;
    double square = x * x + y * y;
    double perPx = Math.pow(coefficient, 3) * square / 3 / (star.xxPx2() + star.yyPx2());
    return new ComaSkew(perPx * x, perPx * y);
  }

  /** The group of shots that a frame, from 1, is of. */
  static ShotGroup group(NightPlan plan, int number) {
    int last = 0;
    for (ShotGroup group : plan.shots()) {
      last += group.count();
      if (number <= last) {
        return group;
      }
    }
    throw new IllegalArgumentException("the night has no frame " + number);
  }
}
