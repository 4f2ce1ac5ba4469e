package rondure.sky;

import java.util.List;
import java.util.Optional;

/** The steps of registration over one scene with a camera to begin with. */
final class RegisteredScene {
  private static final double FOUND_SCALE_ERROR = 0.08;
  private static final double NOMINAL_SCALE_ERROR = 0.03;
  private static final double K1_ERROR = 0.05;

  private final List<SkyShot> shots;
  private final SceneClock clock;
  private final boolean scaleKnown;
  private final boolean scaleTold;
  private Camera camera;
  private boolean calibrated;
  private List<CameraFinding.Score> scores = List.of();
  private CameraDoubt calibratedDoubt;
  private List<FrameStars> frames;
  private List<FrameLink> links;

  /**
   * @param scaleKnown whether the camera's focal length means anything
   */
  RegisteredScene(List<SkyShot> shots, SceneClock clock, Camera camera, boolean scaleKnown) {
    this.shots = shots;
    this.clock = clock;
    this.camera = camera;
    this.scaleKnown = scaleKnown;
    this.scaleTold = shots.stream().anyMatch(s -> s.focalLengthPx().isPresent());
  }

  SceneSky sky() {
    match();
    if (links.stream().allMatch(FrameLink::isFirst)) {
      Optional<Camera> told = scaleTold ? Optional.of(camera) : Optional.empty();
      return SceneSky.unknown(SceneSky.Finding.NO_MATCH, told, shots.size());
    }
    if (scaleKnown) {
      CameraFinding finding =
          CameraCalibration.of(prior(), Sightings.of(frames, links, shots.size()), clock);
      scores = finding.scores();
      if (finding.isCalibrated()) {
        calibrated = true;
        calibratedDoubt = finding.doubt();
        camera = finding.camera();
        frames = frames();
        links = StarChain.again(camera, frames, links);
      }
    }
    SkyStory.Matched matched = new SkyStory.Matched(camera, frames, links);
    return new SkyStory(shots, clock, matched, trust()).told().with(scores);
  }

  private CameraPrior prior() {
    return scaleTold ? CameraPrior.ofFacts(camera) : CameraPrior.found(camera, FOUND_SCALE_ERROR);
  }

  private Sight.Trust trust() {
    double share = scaleTold ? NOMINAL_SCALE_ERROR : FOUND_SCALE_ERROR;
    CameraDoubt doubt = calibrated ? calibratedDoubt : CameraDoubt.of(share, K1_ERROR);
    return new Sight.Trust(scaleKnown, calibrated, doubt);
  }

  private void match() {
    frames = frames();
    links = StarChain.of(camera, frames, clock);
  }

  private List<FrameStars> frames() {
    return shots.parallelStream().map(shot -> new FrameStars(shot.field(), camera)).toList();
  }
}
