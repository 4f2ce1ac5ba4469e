package rondure.intake;

import static org.junit.jupiter.api.Assertions.assertDoesNotThrow;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import rondure.base.FrameProblem;
import rondure.base.Orientation;

/** Each bound is met by a small file that asks for far more, and named in its sentence. */
class BoundsTest {
  private static final String RDF =
      "<x:xmpmeta xmlns:x='adobe:ns:meta/'><rdf:RDF"
          + " xmlns:rdf='http://www.w3.org/1999/02/22-rdf-syntax-ns#'><rdf:Description"
          + " rdf:about='' xmlns:a='http://a/' xmlns:tiff='http://ns.adobe.com/tiff/1.0/'"
          + " tiff:Model='Vesper'>";
  private static final String END = "</rdf:Description></rdf:RDF></x:xmpmeta>";

  @TempDir Path home;

  private static String refusal(byte[] file) {
    return Decoding.refusal(file);
  }

  private static byte[] fits(String... cards) {
    StringBuilder head =
        new StringBuilder(String.format("%-80s", "SIMPLE  =                    T"));
    for (String card : cards) {
      head.append(String.format(Locale.ROOT, "%-80s", card));
    }
    head.append(String.format("%-80s", "END"));
    byte[] start = String.format("%-2880s", head).getBytes(StandardCharsets.ISO_8859_1);
    byte[] file = Arrays.copyOf(start, 8 * 2880);
    for (int i = start.length; i < file.length; i++) {
      file[i] = (byte) (i % 8 == 0 ? 0x80 : i * 31);
    }
    return file;
  }

  @Test
  void aFrameOfMoreMegapixelsThanTheLimitIsNamedWithTheLimit() {
    byte[] wide = fits("BITPIX  = 8", "NAXIS   = 2", "NAXIS1  = 20000", "NAXIS2  = 15000");
    assertTrue(
        refusal(wide).contains("20000 x 15000 px; read are 1 to 65535 px a side and at most"));
    assertTrue(refusal(wide).contains("at most 250 megapixels"), refusal(wide));
    assertTrue(ReadingLimits.defaults().megapixels() >= 200, "200 megapixels are admitted");
  }

  @Test
  void aFileOfFiftyGigabytesIsRefusedUnread() throws IOException {
    Path sparse = home.resolve("sparse.tif");
    try (RandomAccessFile file = new RandomAccessFile(sparse.toFile(), "rw")) {
      file.write(new TestTiff().write((x, y, s) -> x));
      file.setLength(50L << 30);
    }
    String said = assertThrows(FrameProblem.class, () -> FactsReader.read(sparse)).getMessage();
    assertEquals("the file has 51200 MB; read are files of at most 4096 MB", said);
  }

  /** A scan that adds nothing takes ten bytes and walks over all pixels. */
  @Test
  void aJpegOfThousandsOfScansIsRefused() throws IOException {
    byte[] jpeg = new byte[3_000_000];
    jpeg[10] = (byte) 0xFF;
    jpeg[11] = (byte) 0xC2;
    for (int i = 100; i < jpeg.length - 10; i += 10) {
      jpeg[i] = (byte) 0xFF;
      jpeg[i + 1] = (byte) 0xDA;
    }
    assertEquals(299_989, JpegScans.count(jpeg, 10), 2);
    JpegHeader header =
        new JpegHeader(
            new RasterSize(1000, 1000), java.util.Optional.empty(), 10, java.util.List.of());
    String said =
        assertThrows(
                FrameProblem.class, () -> JpegScans.check(jpeg, header, ReadingLimits.defaults()))
            .getMessage();
    assertTrue(said.contains("scans of 1000 x 1000 px, far more than pictures have"), said);
  }

  @Test
  void aTiffInMillionsOfPiecesIsRefused() {
    TestTiff tiff = new TestTiff();
    tiff.extraTags.add(new int[] {322, 4, 1});
    tiff.extraTags.add(new int[] {323, 4, 1});
    tiff.width = 1300;
    tiff.height = 1;
    TiffLayout layout =
        new TiffLayout(
            new RasterSize(3000, 3000),
            1,
            1,
            1,
            false,
            8,
            TiffLayout.SampleKind.UNSIGNED,
            1,
            1,
            1,
            true);
    assertTrue((long) layout.chunksAcross() * layout.chunksDown() > 1_000_000);
    String said = pieces(layout, new long[0]);
    assertTrue(said.contains("cut into 9000000 pieces; read are at most 1000000"), said);
  }

  @Test
  void piecesThatShareTheirBytesOrOverhangTheirPictureAreRefused() {
    TiffLayout shared =
        new TiffLayout(
            new RasterSize(3000, 3000),
            3000,
            1,
            1,
            false,
            8,
            TiffLayout.SampleKind.UNSIGNED,
            1,
            8,
            1,
            false);
    long[] lengths = new long[3000];
    Arrays.fill(lengths, 1000);
    assertTrue(pieces(shared, lengths).contains("hold far more than its 3000 x 3000 px"));
    TiffLayout overhang =
        new TiffLayout(
            new RasterSize(10, 10_000),
            60_000,
            1,
            1,
            false,
            8,
            TiffLayout.SampleKind.UNSIGNED,
            1,
            8,
            1,
            true);
    assertTrue(pieces(overhang, new long[0]).contains("hold far more than its 10 x 10000 px"));
  }

  private String pieces(TiffLayout layout, long[] lengths) {
    return assertThrows(
            FrameProblem.class,
            () -> {
              Path path = Files.write(home.resolve("short.tif"), new byte[1000]);
              try (FileBytes file = FileBytes.open(path, ReadingLimits.defaults())) {
                TiffPieces.check(layout, lengths, file);
              }
            })
        .getMessage();
  }

  @Test
  void aBigTiffIsRefusedWithAdvice() {
    byte[] big = Arrays.copyOf(new byte[] {'I', 'I', 43, 0, 8, 0, 0, 0, 16}, 64);
    assertTrue(refusal(big).contains("this is a BigTIFF, which is not read; export an ordinary"));
  }

  /** All counts below zero once made the sky darker than nothing. */
  @Test
  void valuesThatAreNoLightAreRefused() {
    String[] size = {"NAXIS   = 2", "NAXIS1  = 40", "NAXIS2  = 30"};
    String huge = refusal(fits("BITPIX  = 64", size[0], size[1], size[2]));
    assertTrue(huge.contains("which is no light"), huge);
    String below = refusal(fits("BITPIX  = 16", size[0], size[1], size[2], "BZERO   = -40000"));
    assertTrue(below.contains("far below zero, which is no light"), below);
    String scaled = refusal(fits("BITPIX  = 16", size[0], size[1], size[2], "BSCALE  = 1E30"));
    assertTrue(scaled.contains("BSCALE 1.0E30, which is no light"), scaled);
  }

  @Test
  void deepWideOrTypedXmpIsLeftOutAndSoundXmpIsRead() throws FrameProblem {
    assertEquals(1, models(RDF + END));
    assertEquals(1, models(RDF + "<a:b rdf:parseType='Resource'/>" + END));
    String deep = "<a:b rdf:parseType='Resource'>";
    assertEquals(0, models(RDF + deep.repeat(1500) + "</a:b>".repeat(1500) + END));
    assertEquals(0, models("<!DOCTYPE x [<!ENTITY a 'b'>]>" + RDF + "&a;" + END));
    assertEquals(0, models(RDF + "<a:b/>".repeat(9_900) + "<a:c>" + END), "broken");
  }

  private static int models(String xmp) throws FrameProblem {
    byte[] packet = ("http://ns.adobe.com/xap/1.0/\0" + xmp).getBytes(StandardCharsets.UTF_8);
    byte[] jpeg = TestExif.little().shorts(0x0112, 1).jpeg(40, 30, java.util.List.of(packet));
    return TestExif.facts(jpeg).cameraModel().isPresent() ? 1 : 0;
  }

  /** Directories that each point to the next as three things; a stack once overflowed there. */
  @Test
  void nestedDirectoriesAreReadToABoundedDepth() {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    out.writeBytes(new byte[] {'I', 'I', 42, 0, 8, 0, 0, 0});
    for (int i = 0; i < 3000; i++) {
      int next = 8 + (i + 1) * 42;
      out.writeBytes(new byte[] {3, 0});
      for (int tag : new int[] {0x014A, 0x8769, 0xA005}) {
        out.writeBytes(little(tag | 4 << 16));
        out.writeBytes(little(1));
        out.writeBytes(little(next));
      }
      out.writeBytes(little(next));
    }
    assertDoesNotThrow(() -> TestExif.facts(out.toByteArray(), ".tif"));
  }

  private static byte[] little(int value) {
    return new byte[] {
      (byte) value, (byte) (value >> 8), (byte) (value >> 16), (byte) (value >> 24)
    };
  }

  @Test
  void aFolderOrDeviceIsNoPicture() {
    Path device = Path.of("/dev/zero");
    if (Files.exists(device)) {
      String said = assertThrows(FrameProblem.class, () -> FactsReader.read(device)).getMessage();
      assertEquals("this is no ordinary file; copy the picture into a file", said);
    }
    String folder =
        assertThrows(
                FrameProblem.class,
                () -> FrameDecoder.decode(home, ImageFormat.TIFF, Orientation.NORMAL))
            .getMessage();
    assertFalse(folder.isEmpty());
  }
}
