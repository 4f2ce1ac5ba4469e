package rondure.report.sidecar;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import org.junit.jupiter.api.io.TempDir;
import rondure.night.Grade;

/**
 * Sidecars that are damaged or meant badly: left alone with one sentence, and the others written.
 */
class HostileSidecarTest {
  @TempDir Path home;

  private static byte[] utf8(String text) {
    return text.getBytes(StandardCharsets.UTF_8);
  }

  private static Map<String, byte[]> bad(Path secret) {
    String entity = "<!DOCTYPE x [<!ENTITY e SYSTEM '" + secret.toUri() + "'>]>";
    String laughs =
        "<!DOCTYPE x [<!ENTITY a 'ha'><!ENTITY b '&a;&a;&a;&a;&a;&a;&a;&a;'>"
            + "<!ENTITY c '&b;&b;&b;&b;&b;&b;&b;&b;'>]>";
    String doctype = "it declares a document type, which XMP never does";
    Map<String, byte[]> bad = new TreeMap<>();
    bad.put("it is empty", new byte[0]);
    bad.put("it is no XML that can be read ", utf8("pixels"));
    bad.put("it is no XML that can be read", utf8(Packets.rated("3").replace("/x:x", "/y:")));
    bad.put(doctype, utf8(entity + Packets.of("", "<far:n>&e;</far:n>").substring(48)));
    bad.put(doctype + " ", utf8(laughs + Packets.of("", "<far:n>&c;</far:n>").substring(48)));
    bad.put(
        "it is no XMP, or holds more than XMP",
        utf8("<settings><exposure>1</exposure></settings>"));
    bad.put("it is no XMP", utf8("<x:xmpmeta xmlns:x='adobe:ns:meta/'/>"));
    bad.put(
        "it is no XMP, or holds more than XMP ",
        utf8(Packets.rated("3").replace("</x:xmpmeta>", "<more/></x:xmpmeta>")));
    bad.put(
        "its XML is deeper or longer than any sidecar's",
        utf8(Packets.of("", "<far:d>".repeat(50_000) + "</far:d>".repeat(50_000))));
    bad.put(
        "its XML is deeper or longer than any sidecar's ",
        utf8(Packets.of("", "<far:d/>".repeat(XmlGuard.MOST_PROPERTIES))));
    bad.put(
        "its XML is deeper or longer than any sidecar's  ",
        utf8(Packets.of("", list("<rdf:li/>".repeat(25_000)))));
    bad.put(
        "it is larger than 16 MB", utf8(Packets.of("", " ".repeat(ExistingSidecar.LARGEST_BYTES))));
    bad.put(
        "it is no text in UTF-8 or UTF-16",
        Packets.of("far:a='Stra\u00DFe'", "").getBytes(StandardCharsets.ISO_8859_1));
    bad.put(
        "its XMP cannot be understood",
        utf8(Packets.of("xap:Rating='3'", "<xap:Rating>4</xap:Rating>")));
    bad.put(
        "its keywords are no plain list",
        utf8(Packets.of("", "<dc:subject rdf:parseType='Resource'><far:a>b</far:a></dc:subject>")));
    return bad;
  }

  private static String list(String items) {
    return "<far:list><rdf:Bag>" + items + "</rdf:Bag></far:list>";
  }

  @Test
  void aLargeSidecarIsMerged() throws Exception {
    StringBuilder properties = new StringBuilder();
    for (int i = 0; i < XmlGuard.MOST_PROPERTIES - 10; i++) {
      properties.append("<far:p").append(i).append("/>");
    }
    String strokes = list("<rdf:li>0.1 0.2</rdf:li>".repeat(5_000));
    Path sidecar = Files.writeString(home.resolve("a.xmp"), Packets.of("", strokes + properties));
    SidecarSummary summary = new GradedNight(home).frame(Grade.KEEP, "a.nef").beside();
    assertEquals(List.of(), summary.troubles());
    assertEquals(5.0, RdfReading.of(sidecar).rating().orElseThrow());
  }

  @TestFactory
  Stream<DynamicTest> itIsLeftAloneWithOneSentenceAndTheNightGoesOn() throws IOException {
    Path secret = Files.writeString(home.resolve("secret"), "the secret");
    return bad(secret).entrySet().stream()
        .map(
            one ->
                DynamicTest.dynamicTest(
                    one.getKey(), () -> leftAlone(one.getKey().strip(), one.getValue())));
  }

  private void leftAlone(String reason, byte[] content) throws IOException {
    Path folder = Files.createTempDirectory(home, "night");
    Path sidecar = Files.write(folder.resolve("a.xmp"), content);
    GradedNight night =
        new GradedNight(folder).frame(Grade.KEEP, "a.nef").frame(Grade.KEEP, "b.nef");
    SidecarSummary summary = night.beside();
    assertEquals(List.of("a.xmp was left alone: " + reason + "."), summary.troubles());
    assertEquals(1, summary.made());
    assertArrayEquals(content, Files.readAllBytes(sidecar));
    assertFalse(Files.readString(folder.resolve("b.xmp")).contains("secret"));
    try (Stream<Path> all = Files.list(folder)) {
      assertEquals(4, all.count());
    }
  }

  @Test
  void aLinkIsNotFollowed() throws IOException {
    Path elsewhere = Files.writeString(home.resolve("elsewhere.xmp"), Packets.rated("0"));
    Path folder = Files.createDirectory(home.resolve("night"));
    try {
      Files.createSymbolicLink(folder.resolve("a.xmp"), elsewhere);
      Files.createSymbolicLink(folder.resolve("b.xmp"), home.resolve("nowhere"));
    } catch (UnsupportedOperationException | IOException e) {
      assumeTrue(false, "skipped: no links can be made here");
    }
    GradedNight night =
        new GradedNight(folder).frame(Grade.KEEP, "a.nef").frame(Grade.KEEP, "b.nef");
    assertEquals(
        List.of(
            "a.xmp was left alone: it is a link to another place.",
            "b.xmp was left alone: it is a link to another place."),
        night.beside().troubles());
    assertEquals(Packets.rated("0"), Files.readString(elsewhere));
    assertTrue(Files.isSymbolicLink(folder.resolve("a.xmp")));
  }

  @Test
  void aFolderOfThatNameIsLeftAlone() throws IOException {
    Files.createDirectory(home.resolve("a.xmp"));
    SidecarSummary summary = new GradedNight(home).frame(Grade.KEEP, "a.nef").beside();
    assertEquals(List.of("a.xmp was left alone: it is no file."), summary.troubles());
  }

  /** Replacing a file needs a folder that may be written, no more; the wish is respected anyway. */
  @Test
  void aReadOnlySidecarIsLeftAlone() throws IOException {
    assumeTrue(
        home.getFileSystem().supportedFileAttributeViews().contains("posix"),
        "skipped: this file system has no permissions");
    Path sidecar = Files.writeString(home.resolve("a.xmp"), Packets.rated("0"));
    Files.setPosixFilePermissions(sidecar, PosixFilePermissions.fromString("r--r--r--"));
    SidecarSummary summary = new GradedNight(home).frame(Grade.KEEP, "a.nef").beside();
    assertEquals(List.of("a.xmp was left alone: it is read-only."), summary.troubles());
    assertEquals(Packets.rated("0"), Files.readString(sidecar));
    assertFalse(Files.exists(home.resolve("a.xmp.before-rondure")));
  }

  /** Text that looks like ours in a frame without a grade gives no cause to speak. */
  @Test
  void aBadSidecarOfAFrameWithoutAGradeIsNobodysBusiness() throws IOException {
    Path sidecar = Files.writeString(home.resolve("a.xmp"), "Rondure pixels");
    SidecarSummary summary = new GradedNight(home).frame(null, "a.nef").beside();
    assertEquals(List.of(), summary.troubles());
    assertEquals("Rondure pixels", Files.readString(sidecar));
  }
}
