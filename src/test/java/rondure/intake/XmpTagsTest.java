package rondure.intake;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.time.LocalDateTime;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import rondure.base.FrameProblem;

/** Pictures whose exposure stands in XMP only (ISO 16684-2; EXIF tag 700 holds the packet). */
class XmpTagsTest {

  private static TestExif with(String properties) {
    String packet =
        "<x:xmpmeta xmlns:x='adobe:ns:meta/'>"
            + "<rdf:RDF xmlns:rdf='http://www.w3.org/1999/02/22-rdf-syntax-ns#'>"
            + "<rdf:Description rdf:about='' xmlns:exif='http://ns.adobe.com/exif/1.0/'"
            + " xmlns:tiff='http://ns.adobe.com/tiff/1.0/'"
            + " xmlns:aux='http://ns.adobe.com/exif/1.0/aux/' "
            + properties
            + "><exif:ISOSpeedRatings><rdf:Seq><rdf:li>3200</rdf:li></rdf:Seq>"
            + "</exif:ISOSpeedRatings></rdf:Description></rdf:RDF></x:xmpmeta>";
    byte[] bytes = packet.getBytes(StandardCharsets.UTF_8);
    return TestExif.little().raw(700, 1, bytes.length, bytes);
  }

  @Test
  void factsThatOnlyXmpHoldsAreRead() throws FrameProblem {
    TestExif exif =
        with(
            "exif:DateTimeOriginal='2026-01-02T03:04:05.25+02:00' exif:ExposureTime='20/1'"
                + " exif:FNumber='28/10' exif:FocalLength='24/1' exif:FocalLengthIn35mmFilm='36'"
                + " tiff:Make='Kestrel' tiff:Model='N1' aux:Lens='Kestrel 24 mm'"
                + " tiff:Orientation='6' aux:SerialNumber='123'");
    ShotFacts facts = TestExif.facts(exif.jpeg(1500, 1000));
    assertEquals(new Fact<>(20.0, Fact.Source.FILE), facts.exposureSeconds().orElseThrow());
    assertEquals(2.8, facts.fNumber().orElseThrow().value(), 1e-12);
    assertEquals(3200, facts.iso().orElseThrow().value());
    assertEquals(24, facts.focalLengthMm().orElseThrow().value());
    assertEquals(Optional.of("Kestrel N1"), facts.camera());
    assertEquals(Optional.of("Kestrel 24 mm"), facts.lens());
    // 43.2666 mm · 24 / 36 over the diagonal of 1802.8 px (CIPA DCG-001)
    assertEquals(16.0, facts.pixelPitchMicrons().orElseThrow().value(), 0.01);
    CaptureTime time = facts.captureTime().orElseThrow();
    assertEquals(LocalDateTime.parse("2026-01-02T03:04:05.250"), time.local());
    assertEquals(7200, time.offsetSeconds().orElseThrow());
    assertTrue(time.subSecondsKnown());
    assertEquals(rondure.base.Orientation.NORMAL, facts.orientation());
  }

  @Test
  void exifGoesBeforeXmpAndNonsenseCountsAsMissing() throws FrameProblem {
    TestExif told = TestExif.little().rational(0x829A, 30, 1);
    TestExif exif =
        with("exif:ExposureTime='20/1' exif:FNumber='x/y' exif:FocalLength='24/0'")
            .directory(TestExif.EXIF, told);
    ShotFacts facts = TestExif.facts(exif.jpeg(1500, 1000));
    assertEquals(30, facts.exposureSeconds().orElseThrow().value());
    assertTrue(facts.fNumber().isEmpty() && facts.focalLengthMm().isEmpty());
  }
}
