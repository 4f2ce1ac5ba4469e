package rondure.sky;

import static org.junit.jupiter.api.Assertions.assertEquals;
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
  void aFixedCameraOfWholeSecondsFollowsTheSky() throws IOException, FrameProblem {
    String given = System.getProperty("rondure.realFrames", "");
    assumeTrue(!given.isBlank(), "give -Drondure.realFrames=DIR to register real photographs");
    Path folder = Path.of(given).resolve("sequence");
    assumeTrue(Files.isDirectory(folder), "no sequence in the folder of real photographs");
    List<SkyShot> shots = shots(folder);

    SceneSky sky = Registration.of(shots);

    assertEquals(SceneSky.Finding.SKY_TURNS, sky.finding());
    for (int i = 0; i < shots.size(); i++) {
      if (shots.get(i).field().stars().size() >= LEAST_STARS) {
        assertTrue(sky.frames().get(i).isRegistered(), "frame " + i);
      }
    }
    // Seen by eye and with a reference library: the stars drift by about 0.04 to 0.05 px/s.
    assertEquals(0.045, driftPxPerS(sky, shots), 0.008);
  }

  private static double driftPxPerS(SceneSky sky, List<SkyShot> shots) {
    Camera camera = sky.camera().orElseThrow();
    List<Double> speeds = new ArrayList<>();
    for (int i = 0; i < shots.size(); i++) {
      Optional<Spin> spin = sky.frames().get(i).starSpin();
      spin.ifPresent(
          s -> speeds.add(camera.flow(s, camera.centreXPx(), camera.centreYPx()).speedPxPerS()));
    }
    return RobustStats.median(speeds.stream().mapToDouble(Double::doubleValue).toArray());
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
    DecodedFrame frame = FrameDecoder.decode(file, facts);
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
