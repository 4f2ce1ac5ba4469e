package rondure.blur;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import rondure.sky.FrameSky;
import rondure.sky.HotPixels;
import rondure.sky.ImageVelocity;
import rondure.sky.MountDrift;
import rondure.sky.SceneSky;

/** Puts what a scene told about one of its frames into the verdict's list of evidence. */
record SceneFindings(
    SceneEvidence scene, int index, FrameBudget budget, CoreReading core, FrameLight light) {

  /** Speculation of the one-frame judge that the scene settles. */
  private static final Set<Evidence.Kind> SETTLED =
      EnumSet.of(
          Evidence.Kind.TRAIL_POSSIBLE,
          Evidence.Kind.TRAIL_TOO_SHORT_TO_EXPLAIN,
          Evidence.Kind.TRAIL_UNKNOWN,
          Evidence.Kind.TRAIL_ABSENT,
          Evidence.Kind.TRAIL_MAY_ADD,
          Evidence.Kind.PATTERN_OF_THE_SKY,
          Evidence.Kind.PATTERN_NOT_OF_THE_SKY,
          Evidence.Kind.STRETCHED_LIKE_OTHERS,
          Evidence.Kind.STRETCHED_MORE_THAN_OTHERS,
          Evidence.Kind.SOFT_THROUGHOUT);

  private static final double SEEN_TRAIL_PX = 1;
  private static final double SEEN_DISC_PX = 1;
  private static final double CREEP_PX_PER_MIN = 0.5;
  private static final ImageVelocity STILL = new ImageVelocity(0, 0);
  private static final double JUMP_PX = 2;
  private static final double PATCHY_MAG = 0.15;
  private static final double SURE = 3;

  /** Wider than a photosite and the errors of a fit to it: 1 px box is 0.68 px by its moments. */
  private static final double SPREAD_HOT_PIXEL_PX = 1.2;

  private static final double LEAST_WINGS = 0.05;
  private static final double LEAST_LOST_SHARE = 0.15;

  /** The scene's evidence, then what the frame itself shows. */
  List<Evidence> beside(Verdict alone) {
    List<Evidence> list = new ArrayList<>();
    addShares(list);
    addSky(list);
    addCamera(list);
    addLight(list);
    addWings(list, alone);
    if (core.realProbability() < 0.5) {
      add(list, Evidence.Kind.SOFT_THROUGHOUT, "sharpestFwhmPx", core.fwhmPx());
    }
    addHotPixels(list);
    alone.evidence().stream().filter(e -> !SETTLED.contains(e.kind())).forEach(list::add);
    return list;
  }

  /** In a file that a camera or a program developed they tell what that softened. */
  private void addHotPixels(List<Evidence> list) {
    Optional<HotPixels> hot = scene.hotPixels();
    boolean developed = scene.frames().get(index).developed();
    if (hot.isPresent() && hot.get().fwhmPx() > SPREAD_HOT_PIXEL_PX) {
      list.add(
          new Evidence(
              Evidence.Kind.HOT_PIXELS_SPREAD,
              Map.of(
                  "hotPixelCount",
                  (double) hot.get().count(),
                  "hotPixelFwhmPx",
                  hot.get().fwhmPx())));
    } else if (hot.isPresent() && developed) {
      double count = hot.get().count();
      list.add(new Evidence(Evidence.Kind.HOT_PIXELS_SHARP, Map.of("hotPixelCount", count)));
    }
  }

  private Budget likelier() {
    return budget.likelier(core);
  }

  private void addShares(List<Evidence> list) {
    Terms sky = likelier().sky();
    double excess = sky.excessPx2();
    if (excess > 0.1 * sky.corePx2()) {
      list.add(
          new Evidence(
              Evidence.Kind.SHARES,
              Map.of(
                  "focusPercent", percent(sky.focusPx2(), excess),
                  "trailPercent", percent(sky.trailingPx2(), excess),
                  "tripodPercent", percent(sky.tripodPx2(), excess),
                  "lensPercent", percent(sky.lensPx2(), excess))));
    }
    if (likelier().focusDiscPx() > SEEN_DISC_PX) {
      add(list, Evidence.Kind.ROUND_WIDENING, "discPx", likelier().focusDiscPx());
    }
    budget.likelierLenses(core).rival().ifPresent(rival -> addRival(list, rival));
  }

  private static void addRival(List<Evidence> list, Rivals.Rival rival) {
    Terms sky = rival.budget().sky();
    list.add(
        new Evidence(
            Evidence.Kind.LENS_OR_FOCUS,
            Map.of(
                "otherPercent",
                100 * rival.share(),
                "otherFocusPercent",
                percent(sky.focusPx2(), sky.excessPx2()))));
  }

  private static double percent(double part, double whole) {
    return 100 * Math.max(0, Math.min(1, part / whole));
  }

  private void addSky(List<Evidence> list) {
    double trail = likelier().trailPx();
    if (scene.sky().finding() == SceneSky.Finding.TRACKING) {
      addMount(list);
    } else if (trail > SEEN_TRAIL_PX) {
      long frames = scene.sky().frames().stream().filter(FrameSky::isRegistered).count();
      list.add(
          new Evidence(
              Evidence.Kind.SKY_REGISTERED,
              Map.of("trailPx", trail, "frameCount", (double) frames)));
    }
    UniformSmear smear = budget.smear();
    if (smear.proven()) {
      list.add(
          new Evidence(
              Evidence.Kind.SMEAR_BEYOND_SKY,
              Map.of("smearPx2", smear.spin2Px2(), "angleDeg", Math.toDegrees(smear.angleRad()))));
    } else if (trail > SEEN_TRAIL_PX) {
      add(list, Evidence.Kind.SMEAR_IS_THE_SKYS, "trailPx", trail);
    }
  }

  private void addMount(List<Evidence> list) {
    FrameSky own = scene.sky().frames().get(scene.places().get(index));
    Optional<MountDrift> drift =
        Optional.of(own.creep()).filter(c -> c.rateRadPerS() > 0).map(MountDrift::new);
    ImageVelocity seen =
        scene.sky().camera().flatMap(c -> drift.map(d -> d.atCentre(c))).orElse(STILL);
    if (drift.isPresent() && seen.speedPxPerS() * 60 > CREEP_PX_PER_MIN) {
      double angle = Math.toDegrees(Math.atan2(seen.yPxPerS(), seen.xPxPerS()));
      list.add(
          new Evidence(
              Evidence.Kind.MOUNT_DRIFTS,
              Map.of(
                  "driftPxPerMin", 60 * seen.speedPxPerS(),
                  "angleDeg", (angle + 360) % 180,
                  "axisOffArcmin", 60 * drift.get().axisOffDeg())));
    } else {
      list.add(new Evidence(Evidence.Kind.MOUNT_FOLLOWS, Map.of()));
    }
  }

  private void addCamera(List<Evidence> list) {
    FrameSky own = scene.sky().frames().get(scene.places().get(index));
    double pxPerRad = scene.sky().camera().map(c -> c.focalLengthPx()).orElse(0.0);
    double creep = own.creep().rateRadPerS() * pxPerRad * 60;
    if (creep > CREEP_PX_PER_MIN && turnsKnown()) {
      add(list, Evidence.Kind.CAMERA_CREEPS, "creepPxPerMin", creep);
    }
    if (own.jumpRad() * pxPerRad > JUMP_PX) {
      add(list, Evidence.Kind.CAMERA_JUMPED, "jumpPx", own.jumpRad() * pxPerRad);
    }
  }

  /** Whether the sky's own turning is known: else nobody can say which part is the camera's. */
  private boolean turnsKnown() {
    SceneSky.Finding finding = scene.sky().finding();
    return finding == SceneSky.Finding.SKY_TURNS || finding == SceneSky.Finding.CLOCK_UNKNOWN;
  }

  private void addLight(List<Evidence> list) {
    light
        .loss()
        .filter(loss -> loss.lostShare() > LEAST_LOST_SHARE)
        .filter(loss -> loss.lossMag() > SURE * loss.errorMag())
        .ifPresent(
            loss -> {
              add(list, Evidence.Kind.LIGHT_LOST, "lostPercent", 100 * loss.lostShare());
              if (loss.scatterMag() > PATCHY_MAG) {
                add(list, Evidence.Kind.LIGHT_PATCHY, "scatterMag", loss.scatterMag());
              }
            });
  }

  /** A tail is no halo, nor is there dew where no light is lost. */
  private void addWings(List<Evidence> list, Verdict alone) {
    LightMissing.of(light).evidence().ifPresent(list::add);
    boolean dimmed = light.loss().map(l -> l.lossMag() > SURE * l.errorMag()).orElse(false);
    light
        .wings()
        .filter(wings -> dimmed && !alone.saw(Evidence.Kind.FAINT_TAIL))
        .filter(wings -> wings.excess() > Math.max(LEAST_WINGS, SURE * wings.errorShare()))
        .ifPresent(w -> add(list, Evidence.Kind.WINGS_GROWN, "wingPercent", 100 * w.excess()));
    if (light.silence().equals(Optional.of(FrameLight.Silence.BLACK_SKY))) {
      list.add(new Evidence(Evidence.Kind.LIGHT_UNSEEN, Map.of()));
    }
  }

  private static void add(List<Evidence> list, Evidence.Kind kind, String name, double value) {
    list.add(new Evidence(kind, Map.of(name, value)));
  }
}
