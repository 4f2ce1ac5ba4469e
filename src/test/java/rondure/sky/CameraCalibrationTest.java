package rondure.sky;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.File;
import java.io.IOException;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Places from a projector of the tests' own, {@link TurningSky}, or from the sample night. */
class CameraCalibrationTest {

  private static TurningSky sky(double focalMm) {
    TurningSky sky = new TurningSky(21);
    sky.focalPx = focalMm * 1000 / 6;
    sky.frames = 20;
    sky.intervalSeconds = 120;
    sky.starsInFrame = 120;
    sky.outlierShare = 0.1;
    sky.clockStepSeconds = 1;
    return sky;
  }

  private static void found(TurningSky sky, CameraFinding finding, double most) {
    assertEquals(CameraFinding.Outcome.CALIBRATED, finding.outcome());
    assertEquals(sky.projection, finding.camera().projection());
    double off = finding.camera().focalLengthPx() / sky.focalPx - 1;
    assertEquals(0, off, most);
    assertEquals(0, off / finding.focalErrorShare(), 4);
    assertEquals(0, (finding.camera().k1() - sky.k1) / finding.k1Error(), 4);
  }

  /** 20 frames in 40 minutes, 120 stars, 0.1 px, a tenth outliers, files say 3 % too much. */
  @ParameterizedTest
  @CsvSource({
    "14, -0.03, 0.0005",
    "24, 0.03, 0.001",
    "35, -0.015, 0.001",
    "50, 0, 0.002",
    "85, 0.03, 0.003",
    "135, -0.03, 0.005"
  })
  void focalLengthAndDistortionComeBackWithAndWithoutClock(double focalMm, double k1, double most) {
    TurningSky sky = sky(focalMm);
    sky.k1 = k1;
    List<Sighting> sightings = sky.sightings();
    found(sky, CameraCalibration.of(sky.nominal(1.03), sightings, sky.clock()), most);
    found(sky, CameraCalibration.of(sky.nominal(1.03), sightings, SceneClock.NONE), most);
  }

  @ParameterizedTest
  @CsvSource({"EQUIDISTANT, 10", "EQUISOLID, 12", "STEREOGRAPHIC, 10", "EQUIDISTANT, 16"})
  void aFisheyeIsToldFromARectilinearLens(Projection projection, double focalMm) {
    TurningSky sky = sky(focalMm);
    sky.projection = projection;
    CameraFinding finding = CameraCalibration.of(sky.nominal(0.97), sky.sightings(), sky.clock());
    found(sky, finding, 0.0005);
    assertEquals(projection, finding.scores().get(0).projection());
    assertEquals(4, finding.scores().size());
  }

  /** A droop of 5 % of the sky's rate would move f by 5 to 10 % if the rate were believed. */
  @ParameterizedTest
  @CsvSource({"24, 0.003", "50, 0.005"})
  void aCreepingTripodIsNotTakenForAFocalLength(double focalMm, double most) {
    TurningSky sky = sky(focalMm);
    sky.creepShare = 0.05;
    found(sky, CameraCalibration.of(sky.nominal(0.98), sky.sightings(), sky.clock()), most);
  }

  /** A small field over a short time leaves the scale open; only the rate, with a clock, tells. */
  @Test
  void aLongLensAndAShortTimeKeepTheNominalFocalLength() {
    TurningSky sky = sky(135);
    sky.frames = 4;
    sky.intervalSeconds = 15;
    Camera nominal = sky.nominal(1.02);
    CameraFinding finding = CameraCalibration.of(nominal, sky.sightings(), SceneClock.NONE);
    assertEquals(CameraFinding.Outcome.TOO_UNCERTAIN, finding.outcome());
    assertEquals(nominal, finding.camera());
    assertFalse(finding.isCalibrated());
    sky = sky(135);
    sky.frames = 12;
    sky.intervalSeconds = 25;
    sky.clockStepSeconds = 0.01;
    found(sky, CameraCalibration.of(nominal, sky.sightings(), sky.clock()), 0.02);
  }

  /** Stars that stay put (a tracking mount) tell nothing of the scale. */
  @Test
  void aTrackingMountKeepsTheNominalFocalLength() {
    TurningSky sky = sky(24);
    sky.intervalSeconds = 1e-3;
    CameraFinding finding =
        CameraCalibration.of(sky.nominal(1.03), sky.sightings(), SceneClock.NONE);
    assertEquals(CameraFinding.Outcome.TOO_UNCERTAIN, finding.outcome());
  }

  @Test
  void tooFewStarsOrFramesKeepTheNominalCamera() {
    TurningSky sky = sky(24);
    sky.starsInFrame = 5;
    List<Sighting> few = sky.sightings();
    assertEquals(
        CameraFinding.Outcome.TOO_FEW,
        CameraCalibration.of(sky.nominal(1), few, sky.clock()).outcome());
    assertEquals(
        CameraFinding.Outcome.TOO_FEW,
        CameraCalibration.of(sky.nominal(1), List.of(), SceneClock.NONE).outcome());
  }

  /** Tracks that are not stars: places at random fit no camera. */
  @Test
  void randomPlacesFitNoCamera() {
    Random random = new Random(3);
    List<Sighting> sightings = new ArrayList<>();
    for (int frame = 0; frame < 10; frame++) {
      for (int track = 0; track < 40; track++) {
        sightings.add(
            new Sighting(
                frame, track, 5999 * random.nextDouble(), 3999 * random.nextDouble(), 0.1));
      }
    }
    Camera nominal = Camera.rectilinear(4000, 6000, 4000);
    CameraFinding finding = CameraCalibration.of(nominal, sightings, SceneClock.NONE);
    assertFalse(finding.isCalibrated());
    assertEquals(nominal, finding.camera());
  }

  /** The order of the sightings, and understated errors, change nothing that matters. */
  @Test
  void understatedErrorsAreScaledByTheMisfits() {
    TurningSky sky = sky(24);
    List<Sighting> plain = sky.sightings();
    List<Sighting> bold = new ArrayList<>();
    for (Sighting s : plain) {
      bold.add(new Sighting(s.frame(), s.track(), s.xPx(), s.yPx(), s.errorPx() / 3));
    }
    CameraFinding one = CameraCalibration.of(sky.nominal(1.03), plain, sky.clock());
    CameraFinding other = CameraCalibration.of(sky.nominal(1.03), bold, sky.clock());
    assertEquals(1, other.focalErrorShare() / one.focalErrorShare(), 0.02);
    assertEquals(one.camera().focalLengthPx(), other.camera().focalLengthPx(), 0.1);
  }

  /** 1,000 frames of 200 stars; three minutes between frames of a choice. */
  @Test
  void aLongNightIsSampled() {
    TurningSky sky = sky(24);
    sky.frames = 1000;
    sky.intervalSeconds = 20;
    List<Sighting> sightings = sky.sightings();
    found(sky, CameraCalibration.of(sky.nominal(1.03), sightings, sky.clock()), 0.0005);
    SightingTable table = new SightingChoice(sightings, sky.nominal(1)).of(32, 200);
    assertTrue(table.frames() <= 32 && table.tracks() <= 200);
  }

  /**
   * The sample night's truth: f = 1000 px, k1 = -0.015, a knock and a hand press among the frames.
   * The simulator's own projector made the places; coma moves the light of stars by up to 0.3 px.
   */
  @Test
  void theSampleNightHasItsLens() throws IOException {
    JsonNode truth = new ObjectMapper().readTree(new File("samples/night/truth.json"));
    List<Sighting> sightings = new ArrayList<>();
    List<Optional<Double>> times = new ArrayList<>();
    int frame = 0;
    for (JsonNode one : truth.get("frames")) {
      times.add(
          Optional.of(
              Math.floor(
                  one.get("startSeconds").asDouble() + one.get("openSeconds").asDouble() / 2)));
      for (JsonNode star : one.get("stars")) {
        sightings.add(
            new Sighting(
                frame,
                star.get("number").asInt(),
                star.get("xPx").asDouble(),
                star.get("yPx").asDouble(),
                0.1));
      }
      frame++;
    }
    Collections.shuffle(sightings, new Random(1));
    Camera nominal = Camera.rectilinear(1030, 1200, 800);
    CameraFinding finding = CameraCalibration.of(nominal, sightings, new SceneClock(times, 1));
    assertEquals(Projection.RECTILINEAR, finding.camera().projection());
    assertEquals(1000, finding.camera().focalLengthPx(), 3);
    assertEquals(-0.015, finding.camera().k1(), 0.003);
  }

  /**
   * A circular image: 2 f is all that an equisolid lens ever shows, and the corners lie beyond.
   * Such a camera could not say where each pixel looks, so the nominal one stays.
   */
  @Test
  void aCircularFisheyeIsNotTaken() {
    TurningSky sky = sky(8);
    sky.projection = Projection.EQUISOLID;
    CameraFinding finding = CameraCalibration.of(sky.nominal(1), sky.sightings(), sky.clock());
    assertEquals(CameraFinding.Outcome.NO_FIT, finding.outcome());
    assertEquals(Projection.EQUISOLID, finding.scores().get(0).projection());
  }
}
