package rondure.night;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import rondure.base.Moments;
import rondure.base.NaturalOrder;
import rondure.base.Orientation;
import rondure.blur.Cause;
import rondure.intake.Linearity;
import rondure.stars.Refusal;
import rondure.stars.SkyState;

class NightBuilderTest {
  /** Three frames of 3000 px tell what the camera makes; one of 1500 px was resized or cropped. */
  @Test
  void aSmallerCopyIsNotSaidToServeFullSize() {
    List<MeasuredExposure> frames = new ArrayList<>();
    for (int i = 0; i < 4; i++) {
      Exposures one = Exposures.at("frame-" + i + ".tif", Exposures.EVENING.plusMinutes(i));
      one.widths = new double[] {2};
      one.width = i == 3 ? 1500 : Exposures.WIDTH;
      one.height = i == 3 ? 1000 : Exposures.HEIGHT;
      frames.add(one.make());
    }
    NightBook book = Exposures.book(frames);
    List<Usefulness> uses = book.frames().stream().map(f -> f.usefulness().orElseThrow()).toList();
    assertEquals(OutputUse.FULL_SIZE, uses.get(2).largestUse());
    assertEquals(OutputUse.WEB, uses.get(3).largestUse());
    assertEquals(1500, uses.get(3).pointUpToWidthPx());
  }

  /** Where no frame has a time none is placed last. */
  @Test
  void framesWithoutAnyTimeAreSaidToBeInTheOrderOfTheirNames() {
    List<MeasuredExposure> frames =
        List.of(Exposures.at("a 1.tif", null).make(), Exposures.at("a 2.tif", null).make());
    String notes = String.join(" ", Exposures.book(frames).notes());
    assertTrue(notes.contains("no capture time; the order is that of the file names."), notes);
  }

  private static Exposures minute(int minute) {
    return Exposures.at("a/frame-" + minute + ".tif", Exposures.EVENING.plusMinutes(minute));
  }

  private static NightFrame only(Exposures exposures) {
    return Exposures.book(List.of(exposures.make())).frames().get(0);
  }

  private static List<String> files(NightBook book) {
    return book.frames().stream().map(NightFrame::file).toList();
  }

  @Test
  void aGapOfMoreThanSixHoursStartsAnotherNight() {
    List<MeasuredExposure> all = new ArrayList<>();
    for (int minute : new int[] {0, 10, 10 + 359, 10 + 359 + 361}) {
      all.add(minute(minute).make());
    }
    NightBook book = Exposures.book(all);
    assertEquals(2, book.nights().size());
    assertEquals(2, book.scenes().size());
    assertEquals(3, book.nights().get(0).frameCount());
    assertEquals(1, book.nights().get(1).frameCount());
    assertEquals(Optional.of(2), book.frames().get(3).nightIndex());
    assertEquals(Exposures.EVENING, book.nights().get(0).start().orElseThrow().local());
  }

  @Test
  void anotherFocalLengthIsAnotherSceneOfTheSameNight() {
    Exposures zoomed = minute(2);
    zoomed.focal = Optional.of(35.0);
    NightBook book = Exposures.book(List.of(minute(0).make(), zoomed.make(), minute(4).make()));
    assertEquals(1, book.nights().size());
    assertEquals(2, book.scenes().size());
    assertEquals(List.of(0, 2), book.scenes().get(0).frames());
    assertEquals(List.of(1), book.scenes().get(1).frames());
    assertEquals(List.of(1, 2), book.nights().get(0).scenes());
  }

  @Test
  void twoCamerasInterleavedByTimeKeepTheirOwnScenes() {
    List<MeasuredExposure> all = new ArrayList<>();
    for (int i = 0; i < 6; i++) {
      Exposures frame = Exposures.at("f" + i + ".tif", Exposures.EVENING.plusMinutes(i));
      frame.camera = Optional.of(i % 2 == 0 ? "Northwind A1" : "Southwind B2");
      all.add(frame.make());
    }
    Collections.shuffle(all, new Random(4));
    NightBook book = Exposures.book(all);
    assertEquals(List.of("f0.tif", "f1.tif", "f2.tif", "f3.tif", "f4.tif", "f5.tif"), files(book));
    assertEquals(List.of(0, 2, 4), book.scenes().get(0).frames());
    assertEquals(List.of(1, 3, 5), book.scenes().get(1).frames());
    assertTrue(book.notes().stream().anyMatch(note -> note.startsWith("2 cameras took part")));
  }

  @Test
  void framesWithoutATimeFollowInNaturalOrder() {
    List<MeasuredExposure> all = new ArrayList<>();
    for (String name : new String[] {"f10.tif", "f2.tif", "f1.tif"}) {
      all.add(Exposures.at(name, null).make());
    }
    all.add(minute(3).make());
    NightBook book = Exposures.book(all);
    assertEquals(List.of("a/frame-3.tif", "f1.tif", "f2.tif", "f10.tif"), files(book));
    assertEquals(1, book.nights().size());
    assertTrue(book.notes().stream().anyMatch(note -> note.startsWith("3 frames have no capture")));
  }

  @Test
  void theOrderOfTheInputDoesNotMatter() {
    List<MeasuredExposure> all = new ArrayList<>();
    for (int i = 0; i < 8; i++) {
      all.add(minute(i % 4).make());
    }
    NightBook one = Exposures.book(all);
    Collections.reverse(all);
    assertEquals(one.notes(), Exposures.book(all).notes());
    assertEquals(files(one), files(Exposures.book(all)));
  }

  @Test
  void camerasWithoutANameAreNumbered() {
    Exposures nameless = minute(0);
    nameless.camera = Optional.empty();
    assertEquals("camera 1", only(nameless).cameraName());
  }

  /**
   * A smear pointing from +x by 30° clockwise, as stored, then displayed as EXIF 2.32 defines
   * Orientation: e.g. 6 is turned by 90° clockwise, so 30° becomes 120°; 2 is mirrored left to
   * right, so 30° becomes 150°.
   */
  @ParameterizedTest
  @CsvSource({"1, 30", "2, 150", "3, 30", "4, 150", "5, 60", "6, 120", "7, 60", "8, 120"})
  void elongationAnglesAreAsDisplayed(int exif, double angleDeg) {
    Exposures frame = minute(0);
    frame.orientation = Orientation.ofExif(exif);
    frame.shape = Moments.ofAxes(3, 1, Math.toRadians(30));
    FrameShape shape = only(frame).shape().orElseThrow();
    assertEquals(angleDeg, shape.elongationAngleDeg(), 1e-6);
    assertEquals(30, Math.toDegrees(shape.moments().positionAngleRad()), 1e-6);
    assertEquals(1, shape.directionCoherence(), 1e-9);
    assertEquals(1 / Math.sqrt(3), shape.roundness(), 1e-9);
    double said =
        only(frame).verdict().orElseThrow().evidence().stream()
            .flatMap(seen -> Optional.ofNullable(seen.values().get("angleDeg")).stream())
            .findFirst()
            .orElseThrow();
    assertEquals(angleDeg, said, 1e-6, "evidence speaks of the picture as displayed");
  }

  /** FWHM = 2.3548 σ of a Gaussian; 206265″ × 8 µm / 20 mm = 82.5″ a pixel. */
  @Test
  void widthsAreGivenInPixelsAndOnTheSky() {
    FrameShape shape = only(minute(0)).shape().orElseThrow();
    assertEquals(2.3548, shape.fwhmPx(), 1e-3);
    assertEquals(2.3548 * 82.506, shape.fwhmArcsec().orElseThrow(), 0.1);
    assertEquals(1, shape.rmsWidthPx(), 1e-9);
    assertEquals(40, shape.starCount());
    assertEquals(1.823, only(minute(0)).trailPredictedPx().orElseThrow(), 0.001);
  }

  @Test
  void sharpRoundFramesAreKeptAndOthersWantACloserLook() {
    List<MeasuredExposure> all = new ArrayList<>();
    for (int i = 0; i < 10; i++) {
      all.add(minute(i).make());
    }
    Exposures wide = minute(10);
    wide.shape = Moments.round(1.26 * 1.26);
    Exposures nearly = minute(11);
    nearly.shape = Moments.round(1.24 * 1.24);
    Exposures oval = minute(12);
    oval.shape = Moments.ofAxes(1, 0.79 * 0.79, 0.5);
    for (Exposures frame : List.of(wide, nearly, oval)) {
      all.add(frame.make());
    }
    NightBook book = Exposures.book(all);
    assertEquals(2.3548, book.scenes().get(0).sharpestFwhmPx().orElseThrow(), 0.01);
    assertEquals(Optional.of(Grade.KEEP), book.frames().get(0).grade());
    assertEquals(Optional.of(Grade.LOOK_CLOSER), book.frames().get(10).grade());
    assertEquals(Optional.of(Grade.KEEP), book.frames().get(11).grade());
    assertEquals(Optional.of(Grade.LOOK_CLOSER), book.frames().get(12).grade());
    assertEquals(11, book.nights().get(0).keepCount());
  }

  @Test
  void fewStarsAreSaidInASentence() {
    Exposures few = minute(0);
    few.starCount = 3;
    few.refused.put(Refusal.SATURATED, 12);
    few.refused.put(Refusal.CROWDED, 2);
    NightFrame frame = only(few);
    assertEquals(FrameStatus.TOO_FEW_STARS, frame.status());
    assertEquals(
        "Only 3 stars could be measured, 8 are needed: 12 points of light overexposed.",
        frame.reason().orElseThrow());
    assertEquals(Optional.empty(), frame.verdict());
    assertEquals(Optional.empty(), frame.grade());
    assertEquals(Optional.of(1), frame.sceneNumber());
  }

  @Test
  void blackAndBrightFramesWithoutStarsSayWhichTheyAre() {
    Exposures black = minute(0);
    black.starCount = 0;
    black.linearity = Linearity.DEVELOPED;
    black.sky = new SkyState(0, 0, 0, 1, 1);
    assertTrue(only(black).reason().orElseThrow().contains("the picture is black"));
    Exposures white = minute(0);
    white.starCount = 0;
    white.sky = new SkyState(65535, 0, 1, 1, 1);
    assertTrue(only(white).reason().orElseThrow().contains("the sky is bright, 100 %"));
    Exposures bright = minute(0);
    bright.starCount = 0;
    bright.sky = new SkyState(8000, 900, 0.5, 1, 0);
    assertEquals(FrameStatus.TOO_FEW_STARS, only(bright).status());
    assertTrue(only(bright).reason().orElseThrow().contains("the sky is bright, 50 %"));
  }

  @Test
  void hotPixelsInThePlacesOfStarsAreNotMeasured() {
    List<MeasuredExposure> all = new ArrayList<>();
    for (int i = 0; i < 3; i++) {
      Exposures frame = minute(3 * i);
      frame.seed = 99;
      frame.starCount = 30;
      frame.shape = Moments.round(0.1);
      all.add(frame.make());
    }
    NightBook book = Exposures.book(all);
    for (NightFrame frame : book.frames()) {
      assertEquals(FrameStatus.TOO_FEW_STARS, frame.status());
      assertTrue(frame.reason().orElseThrow().contains("nothing in this frame follows the sky"));
      assertTrue(frame.measurement().orElseThrow().field().stars().isEmpty());
    }
    assertEquals(30, book.staticDetections().get(1));
  }

  /** Widths of lamps and windows of a house at dusk, and of specks of light on a dark desk, px. */
  @ParameterizedTest
  @ValueSource(
      strings = {"14 11 8.8 5.5 6.5 7.4 14 11 5.5", "12.9 6.6 14 38.5 14.2 12.9 6.6 14 38.5 14.2"})
  void lampsOfManyWidthsAreNotStars(String widthsPx) {
    Exposures house = minute(0);
    house.widths = Arrays.stream(widthsPx.split(" ")).mapToDouble(Double::parseDouble).toArray();
    house.starCount = house.widths.length;
    NightFrame frame = only(house);
    assertEquals(FrameStatus.TOO_FEW_STARS, frame.status());
    assertTrue(frame.reason().orElseThrow().contains("differ too much in width"));
  }

  @Test
  void daylightFramesAreNotTheNight() {
    Exposures day = minute(0);
    day.exposure = Optional.of(1 / 250.0);
    day.iso = Optional.of(100.0);
    day.fNumber = Optional.of(8.0);
    day.sky = new SkyState(3000, 900, 0.2, 1, 0);
    NightFrame frame = only(day);
    assertEquals(FrameStatus.NOT_NIGHT, frame.status());
    assertEquals("Exposed for daylight or dusk (1/250 s), not for stars.", frame.reason().get());
    assertEquals(Optional.empty(), frame.sceneNumber());
    assertEquals(0, Exposures.book(List.of(day.make())).nights().size());
  }

  /** Av + Tv = 2 log2 5.6 + log2 125 = 11.9366 (APEX). */
  @Test
  void exposureValuesFollowApex() {
    Exposures shot = minute(0);
    shot.fNumber = Optional.of(5.6);
    shot.exposure = Optional.of(1 / 125.0);
    shot.iso = Optional.of(100.0);
    assertEquals(11.93664, FirstLook.exposureValue(shot.facts()).orElseThrow(), 1e-5);
    shot.fNumber = Optional.of(2.8);
    shot.exposure = Optional.of(20.0);
    assertEquals(-1.35107, FirstLook.exposureValue(shot.facts()).orElseThrow(), 1e-5);
  }

  @Test
  void lensCapsAndFlatsAreNotTheNight() {
    Exposures cap = minute(0);
    cap.starCount = 0;
    cap.sky = new SkyState(0.5, 3, 0.00003, 1, 0);
    assertEquals(FrameStatus.NOT_NIGHT, only(cap).status());
    assertTrue(only(cap).reason().get().contains("lens cap"));
    Exposures flat = minute(0);
    flat.starCount = 0;
    flat.exposure = Optional.of(0.5);
    flat.sky = new SkyState(8000, 80, 0.5, 1, 0);
    assertEquals(FrameStatus.NOT_NIGHT, only(flat).status());
    assertTrue(only(flat).reason().get().contains("flat frame"));
  }

  @Test
  void minutesOnATripodAreTrailsOnPurpose() {
    Exposures minutes = minute(0);
    minutes.exposure = Optional.of(600.0);
    minutes.starCount = 8;
    minutes.shape = Moments.line(90, 0.3).plus(Moments.round(1));
    assertEquals(FrameStatus.TRAILS_INTENDED, only(minutes).status());
    assertTrue(only(minutes).reason().get().contains("600 s, trails of 109 px"));
  }

  @Test
  void minutesOnATrackingMountAreMeasured() {
    Exposures tracked = minute(0);
    tracked.exposure = Optional.of(600.0);
    assertEquals(FrameStatus.MEASURED, only(tracked).status());
  }

  @Test
  void aBadlyAlignedMountIsMeasuredThoughItsStarsAreLong() {
    Exposures tracked = minute(0);
    tracked.exposure = Optional.of(600.0);
    tracked.shape = Moments.line(6, 0.3).plus(Moments.round(0.8));
    assertEquals(FrameStatus.MEASURED, only(tracked).status());
  }

  @Test
  void piecesOfBrokenTrailsAreNoMount() {
    Exposures minutes = minute(0);
    minutes.exposure = Optional.of(600.0);
    minutes.shape = Moments.line(14, 0.3).plus(Moments.round(0.5));
    minutes.widths = new double[] {1.2, 1.8, 2.4, 3.2, 4.4};
    assertEquals(FrameStatus.TRAILS_INTENDED, only(minutes).status());
  }

  @Test
  void panoramasAndStacksAreComposites() {
    Exposures wide = minute(0);
    wide.width = 9000;
    assertEquals(FrameStatus.COMPOSITE, only(wide).status());
    Exposures stack = minute(0);
    stack.composite = true;
    assertEquals(FrameStatus.COMPOSITE, only(stack).status());
    Exposures stitched = minute(9);
    stitched.width = 5000;
    stitched.height = 4000;
    List<MeasuredExposure> all = new ArrayList<>();
    for (int i = 0; i < 4; i++) {
      all.add(minute(i).make());
    }
    all.add(stitched.make());
    NightFrame frame = Exposures.book(all).frames().get(4);
    assertEquals(FrameStatus.COMPOSITE, frame.status());
    assertTrue(frame.reason().get().contains("larger than the other frames of Northwind A1"));
  }

  @Test
  void unreadableFramesAreListedWithTheirReason() {
    MeasuredExposure broken = minute(1).fail("The file is empty; copy it again from the card.");
    NightBook book = Exposures.book(List.of(minute(0).make(), broken));
    NightFrame frame = book.frames().get(1);
    assertEquals(FrameStatus.UNREADABLE, frame.status());
    assertEquals("The file is empty; copy it again from the card.", frame.reason().orElseThrow());
    assertEquals(Optional.empty(), frame.measurement());
    assertEquals(1, book.nights().get(0).frameCount());
  }

  @Test
  void missingFactsAreRemarkedAndDoNotStopTheMeasuring() {
    Exposures bare = minute(0);
    bare.exposure = Optional.empty();
    bare.focal = Optional.empty();
    bare.fNumber = Optional.empty();
    bare.iso = Optional.empty();
    bare.camera = Optional.empty();
    NightBook book = Exposures.book(List.of(bare.make()));
    NightFrame frame = book.frames().get(0);
    assertEquals(FrameStatus.MEASURED, frame.status());
    assertEquals(Optional.empty(), frame.trailPredictedPx());
    assertEquals(Optional.empty(), frame.shape().orElseThrow().fwhmArcsec());
    assertTrue(book.notes().stream().anyMatch(note -> note.contains("no exposure time")));
  }

  @Test
  void aSoftSceneAndAWrongClockAreRemarked() {
    List<MeasuredExposure> all = new ArrayList<>();
    for (int i = 0; i < 3; i++) {
      Exposures frame = Exposures.at("n" + i, Exposures.EVENING.withHour(12).plusMinutes(i));
      frame.shape = Moments.round(4);
      all.add(frame.make());
    }
    NightBook book = Exposures.book(all);
    assertTrue(book.notes().stream().anyMatch(note -> note.contains("soft throughout")));
    assertTrue(book.notes().stream().anyMatch(note -> note.contains("clock seems wrong")));
    assertEquals(Optional.of(Cause.FOCUS), book.frames().get(0).verdict().orElseThrow().cause());
  }

  @Test
  void namesAreOrderedAsPeopleOrderThem() {
    List<String> names = new ArrayList<>(List.of("b/1", "a10", "a9", "A9b", "a09", "a"));
    names.sort(NaturalOrder.OF_NAMES);
    assertEquals(List.of("a", "a09", "a9", "A9b", "a10", "b/1"), names);
  }
}
