package rondure.sky;

import java.util.List;
import java.util.Optional;

/** The steps of registration over one scene with a camera of known focal length. */
final class RegisteredScene {
  private static final double NOMINAL_SCALE_ERROR = 0.03;
  private static final double CALIBRATED_SCALE_ERROR = 0.006;

  private final List<SkyShot> shots;
  private final SceneClock clock;
  private Camera camera;
  private boolean calibrated;
  private List<FrameStars> frames;
  private List<StarChain.Link> links;

  RegisteredScene(List<SkyShot> shots, Camera nominal) {
    this.shots = shots;
    this.camera = nominal;
    double step = shots.stream().mapToDouble(SkyShot::clockStepSeconds).max().orElse(1);
    this.clock = new SceneClock(shots.stream().map(SkyShot::midSeconds).toList(), step);
  }

  SceneSky sky() {
    match();
    if (links.stream().allMatch(StarChain.Link::isFirst)) {
      return SceneSky.unknown(SceneSky.Finding.NO_MATCH, Optional.of(camera), shots.size());
    }
    CameraFinding finding =
        CameraCalibration.of(camera, Sightings.of(frames, links, shots.size()), clock);
    if (finding.isCalibrated()) {
      calibrated = true;
      camera = finding.camera();
      match();
    }
    return new SkyStory(shots, clock, camera, calibrated, scaleError(), frames, links).told();
  }

  private double scaleError() {
    return calibrated ? CALIBRATED_SCALE_ERROR : NOMINAL_SCALE_ERROR;
  }

  private void match() {
    frames = shots.stream().map(shot -> new FrameStars(shot.field(), camera)).toList();
    links = StarChain.of(camera, frames, clock);
  }
}
