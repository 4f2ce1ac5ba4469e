package rondure.blur;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import rondure.sky.Camera;
import rondure.sky.FrameSky;
import rondure.sky.SceneSky;
import rondure.sky.Spin;
import rondure.stars.StarField;

/** From a scene's evidence to its budgets: gathers the frames whose sky is known, solves, books. */
final class BudgetMaker {
  private static final int LEAST_STARS = 5;

  /** The finest stars of real cameras: 0.2 to 0.5 px² where undersampled. */
  private static final double LEAST_CORE_PX2 = 0.2;

  /** Blocks of the field that a lens model may miss each in its own way. */
  private static final double INDEPENDENT_PLACES = 24;

  private final SceneEvidence scene;
  private final AttributionSettings settings;
  private final List<CameraPath> paths;

  /** Places in the evidence of the frames with a budget. */
  private final List<Integer> known = new ArrayList<>();

  private final List<FrameStars> stars = new ArrayList<>();
  private final List<SkyGrid> skies = new ArrayList<>();
  private final List<Double> nominalSeconds = new ArrayList<>();
  private final List<Boolean> whole = new ArrayList<>();

  private final List<Double> skyProbabilities = new ArrayList<>();

  private boolean timesTold;

  BudgetMaker(SceneEvidence scene, AttributionSettings settings, List<CameraPath> paths) {
    this.paths = paths;
    this.scene = scene;
    this.settings = settings;
    scene.sky().camera().ifPresent(this::gather);
  }

  private void gather(Camera camera) {
    Optional<Double> finest =
        scene.frames().stream()
            .flatMap(frame -> frame.diffractionFwhmPx().stream())
            .min(Double::compare);
    List<Optional<OpenTimes.Reading>> times = times(camera);
    double undrooped =
        scene.sky().finding() == SceneSky.Finding.SKY_TURNS ? DroopDoubt.skyProbability(scene) : 1;
    for (int i = 0; i < scene.frames().size(); i++) {
      FrameEvidence frame = scene.frames().get(i);
      FrameSky sky = scene.sky().frames().get(scene.places().get(i));
      double stop = frame.diffractionFwhmPx().flatMap(own -> finest.map(f -> f / own)).orElse(1.0);
      Optional<FieldPlaces.Motion> motion =
          times.get(i).flatMap(time -> motion(sky, time.seconds(), stop));
      if (motion.isPresent() && frame.field().stars().size() >= LEAST_STARS) {
        add(i, frame, camera, motion.get());
        if (skyProbabilities.size() < known.size()) {
          skyProbabilities.add(times.get(i).orElseThrow().skyProbability() * undrooped);
        }
      }
    }
  }

  /** How long each shutter was open: as told, or as the stretch along the motion shows. */
  private List<Optional<OpenTimes.Reading>> times(Camera camera) {
    boolean scaleUnknown = scene.sky().finding() == SceneSky.Finding.SCALE_UNKNOWN;
    timesTold =
        !scaleUnknown
            && scene.frames().stream().allMatch(frame -> frame.exposureSeconds().isPresent());
    List<Optional<OpenTimes.Reading>> times = new ArrayList<>();
    for (FrameEvidence frame : scene.frames()) {
      times.add(
          scaleUnknown ? Optional.empty() : frame.exposureSeconds().map(OpenTimes.Reading::told));
    }
    if (!timesTold) {
      for (OpenTimes.Found found : OpenTimes.of(scene, stretches(camera))) {
        int i = found.place();
        times.set(i, times.get(i).or(() -> Optional.of(found.reading())));
      }
    }
    return times;
  }

  private List<OpenTimes.Seen> stretches(Camera camera) {
    List<OpenTimes.Seen> seen = new ArrayList<>();
    double[] light = RelativeLight.of(scene);
    for (int i = 0; i < scene.frames().size(); i++) {
      StarField field = scene.frames().get(i).field();
      FrameSky sky = scene.sky().frames().get(scene.places().get(i));
      Optional<FieldPlaces.Motion> motion = motion(sky, 1, 1);
      if (motion.isPresent()) {
        View view = new View(camera, field.widthPx(), field.heightPx());
        FrameStars gathered = FrameStars.of(field.stars(), view, motion.get());
        if (gathered.count >= LEAST_STARS) {
          seen.add(new OpenTimes.Seen(i, AlongMotion.of(gathered), RelativeLight.longer(light[i])));
        }
      }
    }
    return seen;
  }

  private void add(int i, FrameEvidence frame, Camera camera, FieldPlaces.Motion motion) {
    View view = new View(camera, frame.field().widthPx(), frame.field().heightPx());
    int place = scene.places().get(i);
    FrameStars gathered =
        FrameStars.of(
            frame.field().stars(), view, motion, k -> scene.sky().tracks().trackOf(place, k));
    if (gathered.count >= LEAST_STARS) {
      known.add(i);
      stars.add(gathered);
      skies.add(SkyGrid.of(frame.field(), view, motion));
      nominalSeconds.add(motion.exposureSeconds());
      whole.add(paths.get(i).twice().isEmpty());
    }
  }

  /** On a mount that follows the sky, all that stars still move is the mount's. */
  private Optional<FieldPlaces.Motion> motion(FrameSky sky, double seconds, double stop) {
    if (scene.sky().finding() == SceneSky.Finding.TRACKING) {
      Spin left = sky.starSpin().orElse(sky.creep());
      return sky.isRegistered()
          ? Optional.of(new FieldPlaces.Motion(Spin.NONE, left, seconds, stop))
          : Optional.empty();
    }
    return sky.skySpin()
        .map(own -> new FieldPlaces.Motion(own, own.plus(sky.creep()), seconds, stop));
  }

  SceneBudget make() {
    if (known.isEmpty()) {
      return SceneBudget.none(scene.frames().size());
    }
    double least = leastCorePx2();
    SceneSolution first = firstLook(least);
    List<ExposureReading> exposures =
        timesTold
            ? ExposureTimes.read(nominalSeconds, first)
            : nominalSeconds.stream().distinct().map(ExposureReading::asNominal).toList();
    double misfit = SharedMisfit.of(first);
    List<FrameModel> models = models(exposures);
    SceneSolver solver = new SceneSolver(models, CoreAssumption.found(least), misfit);
    Explanations explained = solver.explained();
    SceneSolution found = explained.likeliest();
    List<FrameEvidence> sharpest = solver.sharpest().stream().map(this::evidence).toList();
    CoreTrust trust = new CoreTrust(settings, sharpest, misfit, CoreForm.of(found, evidence()));
    Optional<Explanations> defocused =
        trust
            .ifDefocused(found, least)
            .map(assumed -> new SceneSolver(models, assumed, misfit).explained());
    CoreReading core = trust.reading(found, defocused.map(Explanations::likeliest));
    return new SceneBooks(scene, paths, known, nominalSeconds, exposures, skyProbabilities)
        .write(explained, defocused, core);
  }

  /** With nominal exposures, and every star of a block counted as saying the same. */
  private SceneSolution firstLook(double leastPx2) {
    double count = stars.stream().mapToDouble(s -> s.count).average().orElse(1);
    double alike = Math.max(1, count / INDEPENDENT_PLACES);
    return new SceneSolver(models(List.of()), CoreAssumption.found(leastPx2), alike).solve();
  }

  private FrameEvidence evidence(int k) {
    return scene.frames().get(known.get(k));
  }

  /** Of the frames with a budget. */
  private List<FrameEvidence> evidence() {
    return known.stream().map(scene.frames()::get).toList();
  }

  private double leastCorePx2() {
    return scene.frames().stream()
        .flatMap(frame -> frame.diffractionFwhmPx().stream())
        .mapToDouble(BestCase::leastPx2)
        .map(px2 -> Math.max(LEAST_CORE_PX2, px2))
        .min()
        .orElse(LEAST_CORE_PX2);
  }

  private List<FrameModel> models(List<ExposureReading> exposures) {
    Map<Double, Double> lengthening = new TreeMap<>();
    for (ExposureReading e : exposures) {
      double ratio = e.usedSeconds() / e.nominalSeconds();
      lengthening.put(e.nominalSeconds(), ratio * ratio);
    }
    List<FrameModel> models = new ArrayList<>();
    for (int k = 0; k < stars.size(); k++) {
      double factor = lengthening.getOrDefault(nominalSeconds.get(k), 1.0);
      models.add(new FrameModel(stars.get(k), skies.get(k), factor, whole.get(k)));
    }
    return models;
  }
}
