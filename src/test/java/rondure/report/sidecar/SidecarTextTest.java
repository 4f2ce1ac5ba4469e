package rondure.report.sidecar;

import static java.nio.charset.StandardCharsets.UTF_16BE;
import static java.nio.charset.StandardCharsets.UTF_16LE;
import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import rondure.night.Grade;

/** Sidecars as the programs of this world spell them, read back without the library that wrote. */
class SidecarTextTest {
  private static final String FAR = "https://far.example/away#";
  private static final String MARK = "\uFEFF";

  @TempDir Path home;

  private static String declared(String encoding) {
    return "<?xml version=\"1.0\" encoding=\"" + encoding + "\"?>\n";
  }

  /** XML 1.0, section 4.3.3: UTF-16 begins with its mark, UTF-8 may; 2.11: line ends are one. */
  static Stream<Arguments> spellings() {
    String rich = Packets.rich();
    return Stream.of(
        Arguments.of("UTF-8", rich, UTF_8),
        Arguments.of("UTF-8 declared", declared("UTF-8") + rich, UTF_8),
        Arguments.of("UTF-8 with its mark", MARK + rich, UTF_8),
        Arguments.of("UTF-8, lines end as DOS has them", rich.replace("\n", "\r\n"), UTF_8),
        Arguments.of("UTF-16, big end first", MARK + rich, UTF_16BE),
        Arguments.of("UTF-16, little end first", MARK + rich, UTF_16LE),
        Arguments.of("UTF-16 declared", MARK + declared("UTF-16") + rich, UTF_16LE),
        Arguments.of(
            "UTF-16, DOS", MARK + declared("utf-16") + rich.replace("\n", "\r\n"), UTF_16BE));
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("spellings")
  void everythingInItStaysAndItEndsAsUtf8(String name, String text, Charset charset)
      throws Exception {
    byte[] before = text.getBytes(charset);
    Path sidecar = Files.write(home.resolve("a.xmp"), before);
    SidecarSummary summary = new GradedNight(home).frame(Grade.KEEP, "a.nef").beside();
    assertEquals(List.of(), summary.troubles());
    assertEquals(1, summary.changed());
    String after = new String(Files.readAllBytes(sidecar), UTF_8);
    assertTrue(after.startsWith("<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n<x:xmpmeta"), after);
    RdfReading read = RdfReading.of(after);
    assertEquals(Optional.of(3.0), read.rating());
    assertTrue(
        read.keywords().containsAll(List.of("hut", "Milchstra\u00DFe", "Rondure keep")), after);
    assertEquals(Optional.of("a & b"), read.text(FAR, "plain"));
    assertEquals(Optional.of("two\nlines"), read.text(FAR, "note"));
    Path backup = home.resolve("a.xmp" + SidecarWriter.BACKUP);
    assertArrayEquals(before, Files.readAllBytes(backup));
    assertEquals(1, new GradedNight(home).frame(Grade.KEEP, "a.nef").beside().unchanged());
  }

  private void leftAlone(byte[] content, String reason) throws IOException {
    Path sidecar = Files.write(home.resolve("a.xmp"), content);
    SidecarSummary summary = new GradedNight(home).frame(Grade.KEEP, "a.nef").beside();
    assertEquals(List.of("a.xmp was left alone: " + reason + "."), summary.troubles());
    assertArrayEquals(content, Files.readAllBytes(sidecar));
  }

  /** Bytes that mean other letters than they seem to: these spell the same word in UTF-8. */
  @ParameterizedTest
  @ValueSource(strings = {"ISO-8859-1", "windows-1252"})
  void anotherEncodingThatIsDeclaredIsNotTakenForUtf8(String encoding) throws IOException {
    String text = declared(encoding) + Packets.of("far:plain='Stra\u00C3\u009Fe'", "");
    leftAlone(text.getBytes(StandardCharsets.ISO_8859_1), "it is no text in UTF-8 or UTF-16");
  }

  @Test
  void utf16WithoutItsMarkIsNotGuessed() throws IOException {
    leftAlone(Packets.rated("3").getBytes(UTF_16LE), "it is no text in UTF-8 or UTF-16");
  }

  /**
   * XMP basic namespace: -1 or 0 to 5; what else people's programs put there is theirs all the
   * same.
   */
  @ParameterizedTest
  @ValueSource(strings = {"-1", "5", "6", "-3", "2.5", "99999999999999999999", "NaN", "3/5"})
  void aRatingOfAnyKindIsSomebodysAndStaysAsItIsSpelled(String rating) throws Exception {
    Path sidecar = Files.writeString(home.resolve("a.xmp"), Packets.rated(rating));
    assertEquals(1, new GradedNight(home).frame(Grade.KEEP, "a.nef").beside().ratingsKept());
    RdfReading read = RdfReading.of(Files.readString(sidecar));
    assertEquals(Optional.of(rating), read.text(RdfReading.XMP, "Rating"));
  }

  /** Line ends that somebody meant, and white space, are kept or the file is let be. */
  @ParameterizedTest
  @ValueSource(strings = {"one&#xD;two", "one&#xA;two", "a&#x9;b", " a ", "&lt;&amp;&quot;&apos;"})
  void oddCharactersInValuesAreKept(String value) throws Exception {
    for (String text :
        List.of(
            Packets.of("far:plain='" + value + "'", ""),
            Packets.of("", "<far:plain>" + value + "</far:plain>"))) {
      Path sidecar = Files.writeString(home.resolve("a.xmp"), text);
      String bare = declared("UTF-8") + text.substring(text.indexOf("<x:xmpmeta"));
      Optional<String> before = RdfReading.of(bare).text(FAR, "plain");
      SidecarSummary summary = new GradedNight(home).frame(Grade.KEEP, "a.nef").beside();
      assertEquals(List.of(), summary.troubles());
      assertEquals(before, RdfReading.of(Files.readString(sidecar)).text(FAR, "plain"), text);
    }
  }

  /** A night judged four times, and a person at work in between, with names of either custom. */
  @ParameterizedTest
  @ValueSource(strings = {"a.xmp", "a.cr2.xmp", "A.XMP", "a.CR2.XMP"})
  void whatAPersonDidOutlastsEveryRun(String name) throws Exception {
    String first = Packets.of("far:plain='x'", "");
    Path sidecar = Files.writeString(home.resolve(name), first);
    new GradedNight(home).frame(Grade.KEEP, "a.cr2").beside();
    assertEquals(Optional.of(5.0), RdfReading.of(Files.readString(sidecar)).rating());
    String ours = Files.readString(sidecar);
    String rated = ours.replace("xmp:Rating=\"5\"", "xmp:Rating=\"-1\"");
    String edited =
        rated
            .replace("far:plain=\"x\"", "far:plain=\"y\" far:more=\"z\"")
            .replace("<rdf:li>Rondure keep", "<rdf:li>moon</rdf:li>\n<rdf:li>Rondure keep");
    assertEquals(3, List.of(ours, rated, edited).stream().distinct().count());
    Files.writeString(sidecar, edited);
    for (Grade grade : List.of(Grade.SET_ASIDE, Grade.LOOK_CLOSER, Grade.KEEP)) {
      SidecarSummary summary = new GradedNight(home).frame(grade, "a.cr2").beside();
      assertEquals(List.of(), summary.troubles());
      RdfReading read = RdfReading.of(Files.readString(sidecar));
      assertEquals(Optional.of(-1.0), read.rating());
      assertEquals(Optional.of("y"), read.text(FAR, "plain"));
      assertEquals(Optional.of("z"), read.text(FAR, "more"));
      assertTrue(read.keywords().contains("moon"), read.keywords().toString());
      long grades =
          read.keywords().stream()
              .filter(List.of("Rondure keep", "Rondure look closer", "Rondure set aside")::contains)
              .count();
      assertEquals(1, grades, read.keywords().toString());
    }
    assertEquals(first, Files.readString(home.resolve(name + SidecarWriter.BACKUP)));
    try (Stream<Path> all = Files.list(home)) {
      assertEquals(3, all.count(), "picture, sidecar and backup");
    }
  }
}
