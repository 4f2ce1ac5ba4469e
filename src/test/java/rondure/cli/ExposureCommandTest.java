package rondure.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The advice without pictures. */
class ExposureCommandTest {
  private static Run run(String... more) {
    Stream<String> first = Stream.of("exposure", "--focal-length", "24");
    return Run.of(Stream.concat(first, Arrays.stream(more)).toArray());
  }

  private static String line(Run run, String start) {
    assertEquals(0, run.code(), run.err());
    return run.out().lines().filter(line -> line.startsWith(start)).findFirst().orElseThrow();
  }

  private static List<String> words(String line) {
    return List.of(line.strip().split("\\s{2,}|(?<=px)\\s+"));
  }

  /**
   * 24 mm, 4.3 µm: 15 s on the equator draw ω T f/p = 6.105 px (ω = 15.0410686″/s, mean sidereal
   * day), at 45° cos 45° of it, at the pole nothing.
   */
  @Test
  void theTableHoldsTheTrailOfEachAim() {
    Run run = run("--pixel-pitch", "4.3", "--aim", "pole");
    assertEquals(
        List.of("15 s", "0.0 px", "0.00", "6.1 px", "3.05", "4.3 px", "2.16", "1.1 px", "0.53"),
        words(line(run, "15 s")));
    assertEquals(List.of("one width", "any", "4.9 s", "6.9 s", "28 s"), words(line(run, "one ")));
  }

  /** 500/24 = 20.8 s; NPF, full rule, k = 1, for 2.8, 4.3 µm, 24 mm: 4.523 s, 1.841 px. */
  @Test
  void theRulesStandBesideItWithTheTrailTheyAllow() {
    Run run = run("--pixel-pitch", "4.3", "--aperture", "2.8");
    assertTrue(line(run, "For comparison").contains("21 s: 8.5 px on the equator"), run.out());
    assertTrue(line(run, "The NPF rule").contains("4.5 s: 1.8 px on the equator"), run.out());
    assertTrue(line(run("--pixel-pitch", "4"), "The NPF rule").contains("--aperture"));
  }

  /**
   * 24 mm on 24 mm of sensor is 36 mm on a full frame; 500/36 = 13.9 s. The ends of the frame are X
   * = 12/24 off the axis: 1 + X² = 1.25 times on the equator; at -30° 1.34 times where the camera
   * is turned by 43°: √((1.0825 cos 43°)² + (0.866 sin 43° + 0.25)²) / 0.866.
   */
  @Test
  void theSensorsSizeGivesPitchAndEquivalentFocalLength() {
    Run run = run("--sensor-width", "24", "--pixels-across", "6000", "--aim", "-30");
    assertTrue(
        run.out().startsWith("24 mm, pixels of 4 µm, aimed at declination -30°."), run.out());
    assertTrue(line(run, "For comparison").contains("500 rule gives 14 s"), run.out());
    assertTrue(line(run, "Towards").contains("up to 1.34 times"), run.out());
    Run equator = run("--sensor-width", "24", "--pixels-across", "6000");
    assertTrue(line(equator, "Towards").contains("up to 1.25 times"), equator.out());
  }

  /** In the middle nothing trails at the pole; X = 18/24 off the axis 0.75 of the equator's. */
  @Test
  void atThePoleTheEdgesAreHeldAgainstTheEquator() {
    Run run = run("--sensor-width", "36", "--pixels-across", "6000", "--aim", "pole");
    assertTrue(line(run, "At the ends").contains("up to 0.75 times those of the equator"), "");
  }

  /** 500 mm, 3.76 µm, 30°: 2 px take 2 / (ω f/p cos 30°) = 0.238 s, which is not quite 1/4. */
  @Test
  void whatWasWorkedOutIsNotRoundedToTheDial() {
    Run run = Run.of("exposure", "--focal-length", "500", "--pixel-pitch", "3.76", "--aim", "30");
    assertEquals(
        List.of("one width", "0.24 s", "0.21 s", "0.29 s", "1.2 s"), words(line(run, "one ")));
  }

  /** North or south of the equator is all the same, and an aim that is a column is not doubled. */
  @Test
  void anAimThatIsAColumnAlreadyIsNotRepeated() {
    String head = line(run("--pixel-pitch", "4", "--aim", "-45"), "    ");
    assertEquals(List.of("this aim", "equator", "80°, near a pole"), words(head));
  }

  @ParameterizedTest
  @CsvSource({
    "--pixel-pitch 4 --aim moon,'an aim is \"equator\", \"pole\" or a declination from -90 to 90"
        + " degrees, found \"moon\"'",
    "--pixel-pitch 4 --aim 95,'an aim is \"equator\", \"pole\" or a declination from -90 to 90"
        + " degrees, found \"95\"'",
    "--pixel-pitch 4 --aim NaN,'an aim is \"equator\", \"pole\" or a declination from -90 to 90"
        + " degrees, found \"NaN\"'",
    "--pixel-pitch 4.3um,'\"4.3um\" is not a number; write it like 24 or 2.8, without a unit'",
    "--pixel-pitch 4 --pixels-across 6k,'\"6k\" is not a whole number'",
    "--pixel-pitch 0,'--pixel-pitch must be 0.2 to 200 µm, was 0'",
    "--pixel-pitch 4 --aperture NaN,'--aperture must be 0.3 to 1000, was NaN'",
    "--pixel-pitch 4 --star-width 0,'--star-width must be 0.5 to 100 px, was 0'",
    "--pixel-pitch 4 --pixels-across 6000,'give --pixel-pitch or --pixels-across, not both'",
    "--sensor-width 36,'give the distance of pixels with --pixel-pitch, or --sensor-width and"
        + " --pixels-across'",
    "--sensor-width 36 --pixels-across 9,'--pixels-across must be 100 to 200000, was 9'",
    "--pixel-pitch 4 --focal-length -3,'--focal-length must be 0.5 to 30000 mm, was -3'"
  })
  void whatMakesNoSenseIsSaidInOneSentence(String options, String sentence) {
    boolean own = options.contains("--focal-length");
    String[] words = options.split(" ");
    Run run =
        own
            ? Run.of(Stream.concat(Stream.of("exposure"), Arrays.stream(words)).toArray())
            : run(words);
    assertEquals(2, run.code());
    assertEquals("", run.out());
    assertEquals(2, run.errLines().size(), run.err());
    assertTrue(run.errLines().get(0).endsWith(sentence), run.err());
    assertEquals("\"rondure exposure --help\" shows how it is used.", run.errLines().get(1));
  }
}
