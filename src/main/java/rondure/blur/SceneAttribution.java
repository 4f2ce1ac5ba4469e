package rondure.blur;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.IntStream;

/**
 * The separation by physics: each frame's budget over its scene, what the same stars lost of their
 * light, and the paths that the camera left; where the scene has no budget, what one frame shows.
 */
public final class SceneAttribution implements Attribution {

  /** Two images of every star leave no room but for a mount or a mirror nobody thought of. */
  private static final double PROVEN = 0.95;

  private static final Optional<FrameLight.Silence> ALONE =
      Optional.of(FrameLight.Silence.NOT_MATCHED);

  private final AttributionSettings settings;
  private final Function<Ground, Calibration> calibrations;
  private final OneFrameAttribution oneFrame;
  private final BudgetOdds odds;
  private final LoneOdds loneOdds;

  public SceneAttribution(AttributionSettings settings) {
    this(settings, Calibration::fitted);
  }

  /** With probabilities calibrated in another way. */
  SceneAttribution(AttributionSettings settings, Function<Ground, Calibration> calibrations) {
    this.settings = settings;
    this.calibrations = calibrations;
    this.oneFrame = new OneFrameAttribution(settings);
    this.odds = new BudgetOdds(settings, Leeway.fitted());
    this.loneOdds = new LoneOdds(oneFrame, odds, settings);
  }

  @Override
  public SceneVerdicts judge(SceneEvidence scene) {
    List<CameraPath> paths = CameraPath.of(scene);
    SceneBudget budget = SceneBudget.of(scene, settings, paths);
    List<FrameLight> lights =
        FrameLight.withHalos(Transparency.of(scene, paths), Halo.of(scene, paths));
    List<Optional<KnockedLight>> knocks = KnockedLight.of(scene, lights);
    double[] overSky = RelativeLight.overSky(scene);
    List<Judged> frames =
        IntStream.range(0, scene.frames().size())
            .parallel()
            .mapToObj(
                i -> {
                  Optional<KnockedLight> knock = knocks.get(i);
                  FrameLight light = lights.get(i);
                  FrameLight told = knock.isPresent() ? light.knocked() : light;
                  return judge(scene, budget, new Seen(told, overSky[i], paths.get(i), knock), i);
                })
            .toList();
    return new SceneVerdicts(frames, budget.shared());
  }

  /** What became of a frame's light, where that is silent the stars' over the sky's, its path. */
  private record Seen(
      FrameLight told, double overSky, CameraPath path, Optional<KnockedLight> knock) {

    Map<Cause, Double> unseen(Map<Cause, Double> byShape) {
      if (knock.isPresent()) {
        return KnockedLight.mixed(byShape);
      }
      return told.silence().equals(Optional.of(FrameLight.Silence.EXPOSURE_UNKNOWN))
          ? Haze.unseen(byShape, overSky)
          : Haze.unseen(byShape);
    }

    /** Of a frame that is judged by itself. */
    Map<Cause, Double> unseenAlone(Map<Cause, Double> byShape) {
      boolean read = told.halo().isPresent() && told.silence().equals(ALONE) && knock.isEmpty();
      return read ? Haze.unseen(byShape, told.halo().orElseThrow()) : unseen(byShape);
    }

    List<Evidence> withKnock(List<Evidence> evidence) {
      List<Evidence> all = new ArrayList<>(evidence);
      knock.map(KnockedLight::evidence).ifPresent(all::add);
      return all;
    }
  }

  private Judged judge(SceneEvidence scene, SceneBudget budget, Seen seen, int index) {
    FrameLight light = seen.told();
    FrameEvidence frame = scene.frames().get(index);
    Optional<FrameBudget> own = budget.frames().get(index);
    if (own.isEmpty()) {
      return new Judged(
          alone(frame, oneFrame.judge(frame, seen.path()), seen), Optional.empty(), light.loss());
    }
    Verdict alone = oneFrame.judge(frame.withoutExposure(), seen.path());
    CoreReading core = budget.shared().orElseThrow().core();
    LightMissing missing = LightMissing.of(light);
    Map<Cause, Double> fitted = odds.of(own.get(), core, missing);
    Map<Cause, Double> probabilities = light.loss().isPresent() ? fitted : seen.unseen(fitted);
    if (alone.saw(Evidence.Kind.DOUBLE_IMAGE)) {
      probabilities = Mixing.mix(Mixing.certain(Cause.TRIPOD), PROVEN, probabilities);
    }
    SceneFindings findings = new SceneFindings(scene, index, own.get(), core, light);
    Ground ground =
        Ground.ofBudget(frame, budget.frames().stream().flatMap(Optional::stream).count());
    return new Judged(
        verdict(probabilities, ground, seen.withKnock(findings.beside(alone))),
        Optional.of(own.get().likelier(core).withHalo(missing).withCoreForm(core.visibleShare())),
        light.loss());
  }

  /** What one frame shows by itself, and that its stars lost light where they did. */
  private Verdict alone(FrameEvidence frame, Verdict shown, Seen seen) {
    Map<Cause, Double> shapes = loneOdds.of(frame, shown, seen.path(), seen.told().halo());
    Map<Cause, Double> probabilities =
        seen.told()
            .loss()
            .map(loss -> Haze.applied(shapes, loss))
            .orElseGet(() -> seen.unseenAlone(shapes));
    List<Evidence> evidence = new ArrayList<>(shown.evidence());
    LightMissing.ofHalo(seen.told().halo()).evidence().ifPresent(evidence::add);
    return verdict(probabilities, Ground.ofOneFrame(frame), seen.withKnock(evidence));
  }

  private Verdict verdict(Map<Cause, Double> odds, Ground ground, List<Evidence> evidence) {
    return Verdict.of(calibrations.apply(ground).of(odds), evidence);
  }
}
