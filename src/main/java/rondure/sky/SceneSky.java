package rondure.sky;

import java.util.List;
import java.util.Objects;
import java.util.Optional;

/**
 * What the stars of a scene tell about the sky's turning and the camera's.
 *
 * @param finding what could be solved
 * @param camera the projection, calibrated from the scene or nominal; with SCALE_UNKNOWN a stand-in
 *     through which attitudes and spins give the right motion over the sensor, though not the right
 *     angles; empty when nothing matched and no focal length is known
 * @param calibrated whether focal length and distortion were found from the scene
 * @param pole the north celestial pole in reference axes; empty when not known
 * @param poleErrorDeg standard error of the pole's direction
 * @param frames one for each frame, in the order given
 * @param tracks which measured stars of different frames are one star
 * @param projections how well each projection fits the stars' paths, best first; none where they
 *     were not compared
 */
public record SceneSky(
    Finding finding,
    Optional<Camera> camera,
    boolean calibrated,
    Optional<Direction> pole,
    double poleErrorDeg,
    List<FrameSky> frames,
    StarTracks tracks,
    List<CameraFinding.Score> projections) {

  /** What could be solved. */
  public enum Finding {
    /** Fixed tripod: the sky turns over the frames, and the pole is known. */
    SKY_TURNS,
    /** A mount follows the sky. */
    TRACKING,
    /**
     * Frames match, but their times do not tell how fast the sky turns. The pole, where given,
     * takes the frames to be in the order of time; in the other order it is the opposite one.
     */
    CLOCK_UNKNOWN,
    /**
     * Frames match, but the focal length is neither known nor could it be found. With times the
     * frames' spins are as measured; without, only their axes mean anything, and their errors are
     * as large as they are.
     */
    SCALE_UNKNOWN,
    /** Fewer than two frames. */
    ONE_FRAME,
    /** No two frames could be matched: re-aimed, covered, or too few stars. */
    NO_MATCH,
    /** Not worked out, because of a fault of this program. */
    NOT_SOLVED
  }

  public SceneSky {
    Objects.requireNonNull(finding, "finding");
    Objects.requireNonNull(camera, "camera");
    Objects.requireNonNull(pole, "pole");
    Objects.requireNonNull(tracks, "tracks");
    frames = List.copyOf(frames);
    projections = List.copyOf(projections);
  }

  /** A scene whose projections were not compared. */
  public SceneSky(
      Finding finding,
      Optional<Camera> camera,
      boolean calibrated,
      Optional<Direction> pole,
      double poleErrorDeg,
      List<FrameSky> frames,
      StarTracks tracks) {
    this(finding, camera, calibrated, pole, poleErrorDeg, frames, tracks, List.of());
  }

  /** The same with how well each projection fits. */
  SceneSky with(List<CameraFinding.Score> scores) {
    return new SceneSky(finding, camera, calibrated, pole, poleErrorDeg, frames, tracks, scores);
  }

  /** A scene of which only its frames are known. */
  public static SceneSky unknown(Finding finding, Optional<Camera> camera, int frames) {
    return new SceneSky(
        finding,
        camera,
        false,
        Optional.empty(),
        180,
        java.util.Collections.nCopies(frames, FrameSky.UNKNOWN),
        StarTracks.NONE);
  }
}
