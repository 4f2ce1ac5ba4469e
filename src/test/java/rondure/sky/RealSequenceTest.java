package rondure.sky;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import rondure.base.FrameProblem;
import rondure.base.RobustStats;
import rondure.intake.DecodedFrame;
import rondure.intake.Fact;
import rondure.intake.FactsReader;
import rondure.intake.FrameDecoder;
import rondure.intake.Linearity;
import rondure.intake.ShotFacts;
import rondure.stars.PixelContext;
import rondure.stars.StarField;
import rondure.stars.StarMeter;
import rondure.stars.StarSettings;

/** Registration of real photographs, when a folder of them is given. */
class RealSequenceTest {
  private static final int LEAST_STARS = 10;

  @Test
  void anUnevenlyMovingCameraOfUnknownScaleClaimsNoPole() throws IOException, FrameProblem {
    String given = System.getProperty("rondure.realFrames", "");
    assumeTrue(!given.isBlank(), "give -Drondure.realFrames=DIR to register real photographs");
    Path folder = Path.of(given).resolve("sequence");
    assumeTrue(Files.isDirectory(folder), "no sequence in the folder of real photographs");
    List<SkyShot> shots = shots(folder);

    SceneSky sky = Registration.of(shots);

    for (int i = 0; i < shots.size(); i++) {
      if (shots.get(i).field().stars().size() >= LEAST_STARS) {
        assertTrue(sky.frames().get(i).isRegistered(), "frame " + i);
      }
    }
    // A similarity fit of a reference library's detections: 0.030 to 0.038 px/s over most of the
    // sequence, 0.01 to 0.056 px/s from frame to frame; its README says about 0.04 to 0.05 px/s.
    assertEquals(0.04, driftPxPerS(sky, shots), 0.01);
    assertEquals(0.035, travelPxPerS(sky, shots, 8, 19), 0.004);
    // Field and sidereal rate contradict each other by a factor of two.
    assertEquals(SceneSky.Finding.SCALE_UNKNOWN, sky.finding());
    assertFalse(sky.calibrated());
    assertTrue(sky.pole().isEmpty());
  }

  /** Median over the frames with enough stars. */
  private static double driftPxPerS(SceneSky sky, List<SkyShot> shots) {
    Camera camera = sky.camera().orElseThrow();
    List<Double> speeds = new ArrayList<>();
    for (int i = 0; i < shots.size(); i++) {
      if (shots.get(i).field().stars().size() >= LEAST_STARS) {
        Spin spin = sky.frames().get(i).starSpin().orElseThrow();
        speeds.add(camera.flow(spin, camera.centreXPx(), camera.centreYPx()).speedPxPerS());
      }
    }
    return RobustStats.median(speeds.stream().mapToDouble(Double::doubleValue).toArray());
  }

  /** How far what stood at the centre went between two frames, over their time. */
  private static double travelPxPerS(SceneSky sky, List<SkyShot> shots, int from, int to) {
    Camera camera = sky.camera().orElseThrow();
    Rotation back = sky.frames().get(from).attitude().orElseThrow().inverse();
    Rotation turn = back.then(sky.frames().get(to).attitude().orElseThrow());
    ImagePoint end = camera.project(turn.apply(new Direction(0, 0, 1))).orElseThrow();
    double seconds =
        shots.get(to).midSeconds().orElseThrow() - shots.get(from).midSeconds().orElseThrow();
    return Math.hypot(end.xPx() - camera.centreXPx(), end.yPx() - camera.centreYPx()) / seconds;
  }

  static List<SkyShot> shots(Path folder) throws IOException, FrameProblem {
    List<SceneFrame> frames = new ArrayList<>();
    List<ShotFacts> facts = new ArrayList<>();
    for (Path file : files(folder)) {
      ShotFacts told = FactsReader.read(file);
      StarField field = measured(file, told);
      facts.add(told);
      frames.add(new SceneFrame(field, midSeconds(told), Optional.empty()));
    }
    StaticReport statics = StaticDetections.examine(frames);
    List<SkyShot> shots = new ArrayList<>();
    for (int i = 0; i < frames.size(); i++) {
      StarField field = statics.fields().get(i);
      shots.add(
          new SkyShot(
              field,
              frames.get(i).midExposureSeconds(),
              1,
              facts.get(i).exposureSeconds().map(Fact::value),
              PlateScale.focalLengthPx(facts.get(i), field.widthPx(), field.heightPx()),
              facts.get(i).orientation()));
    }
    return shots;
  }

  private static List<Path> files(Path folder) throws IOException {
    try (Stream<Path> found = Files.list(folder)) {
      return found.filter(f -> f.toString().endsWith(".jpg")).sorted().toList();
    }
  }

  private static StarField measured(Path file, ShotFacts facts) throws FrameProblem {
    DecodedFrame frame = FrameDecoder.decode(file, facts.format(), facts.orientation());
    PixelContext context =
        new PixelContext(
            frame.whiteLevelCounts(),
            frame.codeStepCounts(),
            frame.linearity() == Linearity.DEVELOPED);
    return StarMeter.measure(frame.plane(), context, StarSettings.defaults());
  }

  private static Optional<Double> midSeconds(ShotFacts facts) {
    double half = facts.exposureSeconds().map(Fact::value).orElse(0.0) / 2;
    return facts.captureTime().map(t -> t.local().toEpochSecond(java.time.ZoneOffset.UTC) + half);
  }
}
