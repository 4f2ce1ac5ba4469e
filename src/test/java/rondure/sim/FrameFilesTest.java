package rondure.sim;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.drew.imaging.ImageMetadataReader;
import com.drew.metadata.Metadata;
import com.drew.metadata.exif.ExifIFD0Directory;
import com.drew.metadata.exif.ExifSubIFDDirectory;
import ij.ImagePlus;
import ij.io.Opener;
import java.awt.image.Raster;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.TimeUnit;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** Frames are read back by libraries that know nothing of the simulator. */
class FrameFilesTest {
  private static final String[] BAYER = {
    "camera.mosaic", "\"GRBG\"",
    "camera.throughput", "{\"red\":0.5,\"green\":1,\"blue\":0.625}",
    "sky.zenithMagPerArcsec2", "17",
    "temperatureC", "[{\"minutes\":0,\"value\":-3.4}]",
    "aim.held", "\"ROTATED_90_CW\""
  };

  private static byte[] written(NightPlan plan, int number, OutputFormat format)
      throws IOException {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    format.write(NightSimulator.render(plan, number), out);
    return out.toByteArray();
  }

  @ParameterizedTest
  @EnumSource(OutputFormat.class)
  void everyFormatCarriesTheExposureInExif(OutputFormat format) throws Exception {
    byte[] bytes = written(Plans.with(BAYER), 3, format);
    Metadata metadata = ImageMetadataReader.readMetadata(new ByteArrayInputStream(bytes));
    ExifIFD0Directory main = metadata.getFirstDirectoryOfType(ExifIFD0Directory.class);
    ExifSubIFDDirectory exif = metadata.getFirstDirectoryOfType(ExifSubIFDDirectory.class);
    assertEquals("Larkmoor", main.getString(ExifIFD0Directory.TAG_MAKE));
    assertEquals("Larkmoor Vesper One", main.getString(ExifIFD0Directory.TAG_MODEL));
    assertEquals(6, main.getInt(ExifIFD0Directory.TAG_ORIENTATION));
    // The third frame begins 50 s after 21:30:05.250.
    assertEquals("2024:03:02 21:30:55", exif.getString(ExifSubIFDDirectory.TAG_DATETIME_ORIGINAL));
    assertEquals("250", exif.getString(ExifSubIFDDirectory.TAG_SUBSECOND_TIME_ORIGINAL));
    assertEquals("-03:30", exif.getString(ExifSubIFDDirectory.TAG_TIME_ZONE_ORIGINAL));
    assertEquals(20, exif.getDouble(ExifSubIFDDirectory.TAG_EXPOSURE_TIME), 1e-9);
    assertEquals(2.8, exif.getDouble(ExifSubIFDDirectory.TAG_FNUMBER), 1e-9);
    assertEquals(800, exif.getInt(ExifSubIFDDirectory.TAG_ISO_EQUIVALENT));
    assertEquals(24, exif.getDouble(ExifSubIFDDirectory.TAG_FOCAL_LENGTH), 1e-9);
    // 10000 µm/cm over 6 µm, unit 3 = centimetre.
    assertEquals(1666.6667, exif.getDouble(ExifSubIFDDirectory.TAG_FOCAL_PLANE_X_RESOLUTION), 1e-3);
    assertEquals(3, exif.getInt(ExifSubIFDDirectory.TAG_FOCAL_PLANE_RESOLUTION_UNIT));
    // 24 mm · 43.267 / (288.44 px · 6 µm).
    assertEquals(600, exif.getInt(ExifSubIFDDirectory.TAG_35MM_FILM_EQUIV_FOCAL_LENGTH));
    assertEquals("Larkmoor Wide 24 mm f/2.8", exif.getString(ExifSubIFDDirectory.TAG_LENS_MODEL));
    assertEquals(-3.4, exif.getDouble(0x9400), 1e-6);
  }

  @Test
  void exifCanBeLeftOutInPartsOrWhole() throws Exception {
    byte[] parts =
        written(
            Plans.with("files", "{\"withoutSubSeconds\":true,\"withoutOffset\":true}"),
            1,
            OutputFormat.TIFF);
    Metadata some = ImageMetadataReader.readMetadata(new ByteArrayInputStream(parts));
    ExifSubIFDDirectory exif = some.getFirstDirectoryOfType(ExifSubIFDDirectory.class);
    assertTrue(exif.containsTag(ExifSubIFDDirectory.TAG_DATETIME_ORIGINAL));
    assertFalse(exif.containsTag(ExifSubIFDDirectory.TAG_SUBSECOND_TIME_ORIGINAL));
    assertFalse(exif.containsTag(ExifSubIFDDirectory.TAG_TIME_ZONE_ORIGINAL));
    for (OutputFormat format : new OutputFormat[] {OutputFormat.TIFF, OutputFormat.JPEG}) {
      byte[] none = written(Plans.with("files", "{\"withoutExif\":true}"), 1, format);
      Metadata bare = ImageMetadataReader.readMetadata(new ByteArrayInputStream(none));
      assertFalse(bare.containsDirectoryOfType(ExifSubIFDDirectory.class));
    }
  }

  /** ImageJ reads the 16-bit Deflate TIFF with predictor; the steps of 65535/4095 are kept. */
  @Test
  void tiffHoldsTheLinearCounts(@TempDir Path folder) throws IOException {
    NightPlan plan = Plans.with("sky.zenithMagPerArcsec2", "17");
    SimFrame frame = NightSimulator.render(plan, 1);
    Path file = folder.resolve("grey.tif");
    Files.write(file, written(plan, 1, OutputFormat.TIFF));
    ImagePlus image = new Opener().openImage(file.toString());
    assertEquals(16, image.getBitDepth());
    for (int y = 0; y < frame.heightPx(); y++) {
      for (int x = 0; x < frame.widthPx(); x++) {
        assertEquals(Math.max(0, frame.at(x, y) - 64) * 16, image.getProcessor().get(x, y));
      }
    }
  }

  /** A few pixels may differ where another machine's sine differs in its last bit. */
  @Test
  void sampleFrameIsWhatItsRecipeRenders() throws IOException {
    ImagePlus sample = new Opener().openImage("samples/night/night_0003.tif");
    SimFrame frame = NightSimulator.render(Demo.plan(), 3);
    int different = 0;
    for (int y = 0; y < frame.heightPx(); y++) {
      for (int x = 0; x < frame.widthPx(); x++) {
        int code = Math.max(0, frame.at(x, y) - 64) * 16;
        different += sample.getProcessor().get(x, y) == code ? 0 : 1;
      }
    }
    assertTrue(different < 100, "pixels that differ: " + different);
  }

  /** sRGB, IEC 61966-2-1: linear 0.214041 is code 127.5 of 255. */
  @Test
  void eightBitTiffHasTheSrgbCurve() throws IOException {
    assertEquals(0.5, Develop.curve(0.2140411), 1e-6);
    NightPlan plan =
        Plans.with("sky.zenithMagPerArcsec2", "17", "files", "{\"eightBit\":true,\"pushStops\":1}");
    SimFrame frame = NightSimulator.render(plan, 1);
    Raster raster =
        ImageIO.read(new ByteArrayInputStream(written(plan, 1, OutputFormat.TIFF))).getRaster();
    assertEquals(8, raster.getSampleModel().getSampleSize(0));
    for (int x = 0; x < frame.widthPx(); x++) {
      double light = Math.min(1, Math.max(0, frame.at(x, 70) - 64) / 4095.0 * 2);
      assertEquals(255 * Develop.curve(light), raster.getSample(x, 70, 0), 0.51);
    }
  }

  @Test
  void jpegIsReadAndNeutral() throws IOException {
    byte[] bytes = written(Plans.with(BAYER), 1, OutputFormat.JPEG);
    Raster raster = ImageIO.read(new ByteArrayInputStream(bytes)).getRaster();
    assertEquals(3, raster.getNumBands());
    double[] sums = new double[3];
    for (int y = 0; y < raster.getHeight(); y++) {
      for (int x = 0; x < raster.getWidth(); x++) {
        for (int band = 0; band < 3; band++) {
          sums[band] += raster.getSample(x, y, band);
        }
      }
    }
    assertEquals(1, sums[0] / sums[1], 0.03);
    assertEquals(1, sums[2] / sums[1], 0.03);
  }

  /** In-camera sharpening leaves dark rings: values below the sky beside a bright star. */
  @Test
  void sharpeningDigsDarkRings() {
    double sigma2 = 1.0;
    float[] star = new float[31 * 31];
    for (int i = 0; i < star.length; i++) {
      double r2 = Math.pow(i % 31 - 15, 2) + Math.pow(i / 31 - 15, 2);
      star[i] = (float) (0.02 + 0.7 * Math.exp(-r2 / (2 * sigma2)));
    }
    byte[] plain = Develop.eightBit(star, 31, FilePlan.PLAIN);
    byte[] crisp = Develop.eightBit(star, 31, new FilePlan(false, false, false, false, 0, 0, 1.5));
    int ring = 15 * 31 + 19;
    assertTrue((crisp[ring] & 0xFF) < (plain[ring] & 0xFF));
    assertTrue((crisp[15 * 31 + 15] & 0xFF) >= (plain[15 * 31 + 15] & 0xFF));
  }

  @Test
  void dngOfAMonoCameraIsRefused() {
    IllegalArgumentException refusal =
        assertThrows(
            IllegalArgumentException.class, () -> written(Plans.with(), 1, OutputFormat.DNG));
    assertTrue(refusal.getMessage().contains("mosaic"));
  }

  /** LibRaw, where its command-line tools are installed, sees the same mosaic and counts. */
  @Test
  void librawOpensTheDng(@TempDir Path folder) throws Exception {
    NightPlan plan = Plans.with(BAYER);
    Path file = folder.resolve("raw.dng");
    Files.write(file, written(plan, 2, OutputFormat.DNG));
    String said = run(folder, "raw-identify", "-v", file.toString());
    assertTrue(said.contains("Larkmoor"), said);
    assertTrue(said.matches("(?s).*Image size:\\s+240 x 160.*"), said);
    assertTrue(said.matches("(?s).*Filter pattern: GRBGGRBGGRBGGRBG.*"), said);
    run(folder, "unprocessed_raw", file.toString());
    byte[] plain = Files.readAllBytes(folder.resolve("raw.dng.pgm"));
    SimFrame frame = NightSimulator.render(plan, 2);
    ByteBuffer counts = ByteBuffer.wrap(plain).order(ByteOrder.BIG_ENDIAN);
    int start = plain.length - 2 * 240 * 160;
    for (int i = 0; i < 240 * 160; i++) {
      assertEquals(frame.counts()[i], counts.getChar(start + 2 * i), "photosite " + i);
    }
  }

  private static String run(Path folder, String... command) throws Exception {
    Process process;
    try {
      process =
          new ProcessBuilder(command).directory(folder.toFile()).redirectErrorStream(true).start();
    } catch (IOException e) {
      Assumptions.abort(command[0] + " is not on the PATH: DNG not checked with LibRaw");
      throw e;
    }
    String said = new String(process.getInputStream().readAllBytes());
    assertTrue(process.waitFor(20, TimeUnit.SECONDS));
    return said;
  }
}
