package rondure.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import javax.imageio.ImageIO;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import rondure.sim.OutputFormat;

/** Facts that the files lack can be given, and every result says that they were. */
class GivenFactsTest {
  @TempDir Path home;

  /** PNG files that say nothing of how they were taken. */
  private Path bareNight() throws IOException {
    Path night = Files.createDirectory(home.resolve("night"));
    for (int i = 1; i <= 2; i++) {
      var picture = ImageIO.read(new ByteArrayInputStream(SmallNight.bytes(OutputFormat.JPEG, i)));
      assertTrue(ImageIO.write(picture, "png", night.resolve("bare" + i + ".png").toFile()));
    }
    return night;
  }

  @Test
  void everyFactThatMattersCanBeGivenAndSaysSo() throws IOException {
    Path night = bareNight();
    Path plain = home.resolve("plain");
    assertEquals(0, Run.report(plain, night).code());
    JsonNode unknown = Run.frames(plain).get("bare1.png");
    for (String key : List.of("exposureSeconds", "trailPredictedPx", "fwhmArcsec", "lens")) {
      assertTrue(unknown.get(key).isNull(), key);
    }
    unknown.get("factSources").forEach(source -> assertTrue(source.isNull()));

    Path out = home.resolve("out");
    Object[] arguments = {
      "report",
      "--workers",
      1,
      "--out",
      out,
      night,
      "--exposure",
      10,
      "--aperture",
      2,
      "--iso",
      800,
      "--focal-length",
      12,
      "--pixel-pitch",
      12,
      "--temperature",
      -3.5,
      "--orientation",
      6,
      "--camera",
      "Larkmoor Vesper One",
      "--lens",
      "Wide 12"
    };
    Run run = Run.of(arguments);
    assertEquals(0, run.code(), run.err());
    JsonNode frame = Run.frames(out).get("bare1.png");
    assertEquals("Larkmoor Vesper One", frame.get("camera").asText());
    assertEquals("Wide 12", frame.get("lens").asText());
    assertEquals(-3.5, frame.get("ambientTemperatureC").asDouble());
    // The mean sidereal rate, 15.0410686 arcsec/s (IERS), times 10 s times 12 mm / 12 µm.
    double trailPx = Math.toRadians(15.0410686 / 3600) * 10 * 12_000 / 12;
    assertEquals(trailPx, frame.get("trailPredictedPx").asDouble(), 1e-3);
    for (String key :
        List.of(
            "exposureSeconds",
            "fNumber",
            "iso",
            "focalLengthMm",
            "pixelPitchMicrons",
            "ambientTemperatureC",
            "camera",
            "lens")) {
      assertEquals("option", frame.get("factSources").get(key).asText(), key);
    }
    assertTurnedByAQuarter(unknown, frame);
    JsonNode settings = Run.night(out).get("settings");
    assertEquals("10", settings.get("givenExposureSeconds").asText());
    assertEquals("6", settings.get("givenOrientation").asText());
    assertEquals("Wide 12", settings.get("givenLens").asText());
    assertTrue(pdfText(out).contains("(as you gave it)"), "the report says so too");
  }

  /** EXIF orientation 6 turns the picture by 90 degrees, and directions with it. */
  private static void assertTurnedByAQuarter(JsonNode plain, JsonNode turned) {
    double before = plain.get("elongationAngleDeg").asDouble();
    double after = turned.get("elongationAngleDeg").asDouble();
    assertEquals(90, Math.abs(after - before), 0.01);
  }

  private static String pdfText(Path out) throws IOException {
    try (PDDocument document = Loader.loadPDF(out.resolve("report.pdf").toFile())) {
      return new PDFTextStripper().getText(document);
    }
  }
}
