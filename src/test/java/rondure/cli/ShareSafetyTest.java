package rondure.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.zip.GZIPInputStream;
import java.util.zip.InflaterInputStream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.cos.COSStream;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import rondure.intake.PrivateExif;
import rondure.intake.PrivateFormats;
import rondure.sim.OutputFormat;

/** Results can be given away: nothing in them names the person, the camera's body or the place. */
class ShareSafetyTest {
  /** Frames that are read without any package besides. */
  private static final List<String> MEASURED =
      List.of("frame1.jpg", "frame2.jpg", "frame3.tif", "frame5.png", "frame6.fits");

  @TempDir Path home;

  @Test
  void resultsHoldNoOwnerSerialNumberPositionOrPath() throws IOException {
    Path night = privateNight();
    Path out = home.resolve("out");
    Run run = Run.of("report", "--star-table", "--sidecars", "--workers", 1, "--out", out, night);
    assertEquals(1, run.code(), run.err());
    for (String file : MEASURED) {
      assertEquals("measured", Run.frames(out).get(file).get("status").asText(), file);
    }
    Map<String, String> texts = texts(out);
    assertTrue(texts.get("night.json").contains("Vesper One"), "the camera's model is told");
    assertTrue(texts.keySet().stream().anyMatch(name -> name.endsWith(".xmp")), "no sidecars");

    List<String> secrets = new ArrayList<>(PrivateExif.SECRETS);
    secrets.addAll(List.of("users-home-of-wilma", home.toString(), System.getProperty("user.dir")));
    secrets.addAll(List.of("47.1234", "11.5432", "47 07 24.4", "47,12.345N"));
    secrets.add(System.getProperty("java.io.tmpdir") + "/");
    texts.forEach(
        (name, text) -> {
          for (String secret : secrets) {
            boolean held = text.toLowerCase(Locale.ROOT).contains(secret.toLowerCase(Locale.ROOT));
            assertFalse(held, name + " holds " + secret);
          }
        });
  }

  /** Every format with everything private that it can hold, and files that cannot be read. */
  private Path privateNight() throws IOException {
    Path night = Files.createDirectories(home.resolve("users-home-of-wilma").resolve("night"));
    byte[] jpeg = SmallNight.bytes(OutputFormat.JPEG, 1);
    Files.write(night.resolve("frame1.jpg"), PrivateExif.in(jpeg));
    Files.write(
        night.resolve("frame2.jpg"), PrivateExif.in(SmallNight.bytes(OutputFormat.JPEG, 2)));
    Files.write(
        night.resolve("frame3.tif"), PrivateFormats.tiff(SmallNight.bytes(OutputFormat.TIFF, 3)));
    Files.write(
        night.resolve("frame4.dng"), PrivateFormats.tiff(SmallNight.bytes(OutputFormat.DNG, 4)));
    Files.write(night.resolve("frame5.png"), PrivateFormats.png(jpeg));
    Files.write(night.resolve("frame6.fits"), PrivateFormats.fits(jpeg));
    Files.write(night.resolve("empty.tif"), new byte[0]);
    byte[] cut = Arrays.copyOf(PrivateExif.in(jpeg), 2000);
    Files.write(night.resolve("cut.jpg"), cut);
    Files.createSymbolicLink(night.resolve("lost.tif"), home.resolve("nowhere.tif"));
    return night;
  }

  /** Pictures in the report carry no metadata of their own. */
  @Test
  void theTestWouldSeeASecretInAPicture() throws IOException {
    byte[] plain = SmallNight.bytes(OutputFormat.TIFF, 1);
    byte[] small = SmallNight.bytes(OutputFormat.JPEG, 1);
    for (byte[] file :
        List.of(
            PrivateFormats.tiff(plain), PrivateFormats.png(small), PrivateFormats.fits(small))) {
      String text = new String(file, StandardCharsets.ISO_8859_1);
      assertTrue(text.contains("Wilhelmina Ashgrove") && text.contains("SN-77120045"));
    }
    byte[] jpeg = PrivateExif.in(SmallNight.bytes(OutputFormat.JPEG, 1));
    String text = new String(jpeg, StandardCharsets.ISO_8859_1);
    for (String secret : PrivateExif.SECRETS) {
      assertTrue(text.contains(secret), secret);
    }
  }

  /** Every output as text: packed ones unpacked, the PDF with all its streams and its words. */
  private static Map<String, String> texts(Path out) throws IOException {
    Map<String, String> texts = new TreeMap<>();
    for (String name : Run.names(out.resolve("measured"))) {
      texts.put(name, ofRecord(Files.readAllBytes(out.resolve("measured").resolve(name))));
    }
    assertTrue(texts.values().stream().anyMatch(text -> text.contains("thumbnail")), "no records");
    for (String name : Run.names(out.resolve("sidecars"))) {
      texts.put(name, Files.readString(out.resolve("sidecars").resolve(name)));
    }
    List<String> files =
        Run.names(out).stream().filter(n -> Files.isRegularFile(out.resolve(n))).toList();
    for (String name : files) {
      byte[] bytes = Files.readAllBytes(out.resolve(name));
      if (name.endsWith(".gz")) {
        try (InputStream in = new GZIPInputStream(new ByteArrayInputStream(bytes))) {
          bytes = in.readAllBytes();
        }
      }
      String text = new String(bytes, StandardCharsets.UTF_8);
      texts.put(name, name.endsWith(".pdf") ? ofPdf(bytes) : text);
    }
    assertTrue(texts.size() >= 7, texts.keySet().toString());
    return texts;
  }

  /** A kept measurement: a head of 76 bytes, then deflated JSON. */
  private static String ofRecord(byte[] bytes) throws IOException {
    ByteArrayInputStream packed = new ByteArrayInputStream(bytes, 76, bytes.length - 76);
    try (InputStream in = new InflaterInputStream(packed)) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    }
  }

  private static String ofPdf(byte[] bytes) throws IOException {
    ByteArrayOutputStream all = new ByteArrayOutputStream();
    all.writeBytes(bytes);
    try (PDDocument document = Loader.loadPDF(bytes)) {
      all.writeBytes(new PDFTextStripper().getText(document).getBytes(StandardCharsets.UTF_8));
      all.writeBytes(document.getDocumentInformation().toString().getBytes(StandardCharsets.UTF_8));
      for (var key : document.getDocument().getXrefTable().keySet()) {
        if (document.getDocument().getObjectFromPool(key).getObject() instanceof COSStream stream) {
          boolean fonts = stream.containsKey(COSName.getPDFName("Length1"));
          boolean picture = COSName.IMAGE.equals(stream.getItem(COSName.SUBTYPE));
          if (!fonts) {
            try (InputStream in =
                picture ? stream.createRawInputStream() : stream.createInputStream()) {
              in.transferTo(all);
            }
          }
        }
      }
    }
    return all.toString(StandardCharsets.ISO_8859_1);
  }
}
