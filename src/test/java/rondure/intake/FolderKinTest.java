package rondure.intake;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import rondure.base.FrameProblem;

/** Files without EXIF among others of their folder. Tag numbers: Exif 3.0 (CIPA DC-008). */
class FolderKinTest {

  private static Shot told(String name, String model, int focalMm) throws FrameProblem {
    TestExif exif =
        TestExif.little()
            .ascii(0x9003, "2026:01:02 03:04:05")
            .rational(0x829A, 20, 1)
            .rational(0x920A, focalMm, 1)
            .rational(0xA20E, 2500, 1)
            .shorts(0xA210, 3);
    TestExif main = TestExif.little().ascii(0x0110, model).directory(TestExif.EXIF, exif);
    return shot(name, main.jpeg(1500, 1000));
  }

  private static Shot silent(String name, int width, int height) throws FrameProblem {
    return shot(name, TestExif.little().jpeg(width, height));
  }

  private static Shot shot(String name, byte[] file) throws FrameProblem {
    FoundFile found = new FoundFile(Path.of(name), name, ImageFormat.JPEG);
    return new Shot(found, TestExif.facts(file));
  }

  private static List<Shot> card() throws FrameProblem {
    return new ArrayList<>(
        List.of(
            told("card/a1.jpg", "Model X", 24),
            told("card/a2.jpg", "Model X", 24),
            told("card/a3.jpg", "Model X", 24)));
  }

  @Test
  void aSilentFileAmongOneCamerasFramesIsThatCameras() throws FrameProblem {
    List<Shot> shots = card();
    shots.add(silent("card/a4.jpg", 1500, 1000));
    List<Shot> named = FolderKin.withCameraOfTheFolder(shots);
    ShotFacts facts = named.get(3).facts();
    assertEquals(Optional.of("Model X"), facts.camera());
    assertEquals(new Fact<>(24.0, Fact.Source.FOLDER), facts.focalLengthMm().orElseThrow());
    assertEquals(Fact.Source.FOLDER, facts.pixelPitchMicrons().orElseThrow().source());
    assertTrue(facts.exposureSeconds().isEmpty() && facts.captureTime().isEmpty());
    assertEquals(shots.subList(0, 3), named.subList(0, 3));
    assertEquals(
        List.of(
            "1 file names no camera; by folder and size taken for Model X, with the lens and pixels"
                + " of its other frames there."),
        FolderKin.notes(shots, named));
  }

  /** A DNG names its camera (tag 50708) even when its EXIF is gone. */
  @Test
  void aFileThatNamesNothingButTheSameCameraSharesTheRest() throws FrameProblem {
    List<Shot> shots = card();
    shots.add(shot("card/a4.jpg", TestExif.little().ascii(0x0110, "Model X").jpeg(1500, 1000)));
    shots.add(shot("card/a5.jpg", TestExif.little().ascii(0x0110, "Model Y").jpeg(1500, 1000)));
    shots.add(silent("card/a6.jpg", 1500, 1000));
    List<Shot> named = FolderKin.withCameraOfTheFolder(shots);
    assertEquals(24, named.get(3).facts().focalLengthMm().orElseThrow().value());
    assertEquals(shots.get(4), named.get(4));
    assertEquals(Optional.of("Model X"), named.get(5).facts().camera());
    assertEquals(24, named.get(5).facts().focalLengthMm().orElseThrow().value());
  }

  @Test
  void whatTheOthersDoNotShareStaysUnknown() throws FrameProblem {
    List<Shot> shots = card();
    shots.set(2, told("card/a3.jpg", "Model X", 35));
    shots.add(silent("card/a4.jpg", 1000, 1500));
    ShotFacts facts = FolderKin.withCameraOfTheFolder(shots).get(3).facts();
    assertEquals(Optional.of("Model X"), facts.camera());
    assertTrue(facts.focalLengthMm().isEmpty());
  }

  @Test
  void otherSizesOtherFoldersTwoCamerasAndFewFramesProveNothing() throws FrameProblem {
    List<Shot> shots = card();
    shots.add(silent("card/a4.jpg", 1400, 1000));
    shots.add(silent("web/a5.jpg", 1500, 1000));
    assertEquals(shots, FolderKin.withCameraOfTheFolder(shots));
    List<Shot> two = card();
    two.add(told("card/b1.jpg", "Model Y", 24));
    two.add(silent("card/a4.jpg", 1500, 1000));
    assertEquals(two, FolderKin.withCameraOfTheFolder(two));
    List<Shot> few = card();
    few.remove(0);
    few.add(silent("card/a4.jpg", 1500, 1000));
    assertEquals(few, FolderKin.withCameraOfTheFolder(few));
  }
}
