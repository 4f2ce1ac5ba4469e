package rondure.evaluation;

import java.util.List;
import rondure.sim.LensPlan;
import rondure.sim.NightEvent;
import rondure.sim.NightPlan;
import rondure.sim.StarPlan;
import rondure.sim.TimePoint;

/** Plans of nights with one thing changed. */
final class Plans {
  private Plans() {}

  static NightPlan with(NightPlan plan, StarPlan stars) {
    return of(plan, plan.lens(), stars, plan.focusMicrons(), plan.events());
  }

  static NightPlan with(NightPlan plan, LensPlan lens) {
    return of(plan, lens, plan.stars(), plan.focusMicrons(), plan.events());
  }

  static NightPlan with(NightPlan plan, List<TimePoint> focusMicrons, List<NightEvent> events) {
    return of(plan, plan.lens(), plan.stars(), focusMicrons, events);
  }

  private static NightPlan of(
      NightPlan p,
      LensPlan lens,
      StarPlan stars,
      List<TimePoint> focusMicrons,
      List<NightEvent> events) {
    return new NightPlan(
        p.title(),
        p.seed(),
        p.startLocalTime(),
        p.utcOffsetMinutes(),
        p.camera(),
        lens,
        p.aim(),
        p.tracking(),
        p.sky(),
        stars,
        p.foreground(),
        focusMicrons,
        p.temperatureC(),
        p.shots(),
        events,
        p.files());
  }
}
