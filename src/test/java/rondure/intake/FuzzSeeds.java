package rondure.intake;

import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import javax.imageio.IIOImage;
import javax.imageio.ImageIO;
import javax.imageio.ImageWriteParam;
import javax.imageio.ImageWriter;
import javax.imageio.stream.ImageOutputStream;

/** Small valid files of every kind and layout that the parsers read, to be damaged from there. */
public final class FuzzSeeds {
  private static final int WIDTH = 24;
  private static final int HEIGHT = 18;

  private FuzzSeeds() {}

  /**
   * Writes the seeds of each parser into a folder of its name.
   *
   * @param args the folder
   */
  public static void main(String[] args) throws IOException {
    for (Map.Entry<String, List<byte[]>> kind : all().entrySet()) {
      Path folder = Files.createDirectories(Path.of(args[0], kind.getKey()));
      for (int i = 0; i < kind.getValue().size(); i++) {
        Files.write(folder.resolve("seed" + i), kind.getValue().get(i));
      }
    }
  }

  /** Seeds by the names of {@link FileFuzz#TARGETS}. */
  static Map<String, List<byte[]>> all() throws IOException {
    Map<String, List<byte[]>> all = new TreeMap<>();
    all.put("tiff", tiffs());
    all.put("png", pngs());
    all.put("jpeg", jpegs());
    all.put("fits", fits());
    all.put("raw", raws());
    List<byte[]> facts = new ArrayList<>(List.of(exif().tiff(), exif().jpeg(40, 30)));
    facts.addAll(raws());
    facts.addAll(pngs().subList(0, 2));
    all.put("facts", facts);
    byte[] text = "runs of aaaaaaaaaaaaaa and more".getBytes(StandardCharsets.US_ASCII);
    all.put("streams", List.of(text));
    return all;
  }

  private static List<byte[]> tiffs() {
    List<byte[]> tiffs = new ArrayList<>();
    for (String layout : TiffDecoderTest.layouts()) {
      TestTiff tiff = TiffDecoderTest.parsed(layout);
      tiff.order = tiffs.size() % 2 == 0 ? ByteOrder.LITTLE_ENDIAN : ByteOrder.BIG_ENDIAN;
      tiffs.add(tiff.write((x, y, s) -> TiffDecoderTest.word(tiff, x, y, s)));
    }
    return tiffs;
  }

  private static BufferedImage picture(int type) {
    BufferedImage picture = new BufferedImage(WIDTH, HEIGHT, type);
    for (int i = 0; i < WIDTH * HEIGHT; i++) {
      picture.setRGB(i % WIDTH, i / WIDTH, 0x010101 * (i * 37 % 251));
    }
    return picture;
  }

  private static List<byte[]> pngs() throws IOException {
    List<byte[]> pngs = new ArrayList<>();
    for (int type :
        new int[] {
          BufferedImage.TYPE_BYTE_GRAY,
          BufferedImage.TYPE_USHORT_GRAY,
          BufferedImage.TYPE_INT_RGB,
          BufferedImage.TYPE_INT_ARGB,
          BufferedImage.TYPE_BYTE_BINARY,
          BufferedImage.TYPE_BYTE_INDEXED
        }) {
      ByteArrayOutputStream out = new ByteArrayOutputStream();
      ImageIO.write(picture(type), "png", out);
      pngs.add(out.toByteArray());
    }
    return pngs;
  }

  private static List<byte[]> jpegs() throws IOException {
    List<byte[]> jpegs = new ArrayList<>(List.of(exif().jpeg(40, 30)));
    for (boolean progressive : new boolean[] {false, true}) {
      for (int type : new int[] {BufferedImage.TYPE_BYTE_GRAY, BufferedImage.TYPE_INT_RGB}) {
        ImageWriter writer = ImageIO.getImageWritersByFormatName("jpeg").next();
        ImageWriteParam how = writer.getDefaultWriteParam();
        how.setProgressiveMode(
            progressive ? ImageWriteParam.MODE_DEFAULT : ImageWriteParam.MODE_DISABLED);
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try (ImageOutputStream stream = ImageIO.createImageOutputStream(out)) {
          writer.setOutput(stream);
          writer.write(null, new IIOImage(picture(type), null, null), how);
        }
        writer.dispose();
        jpegs.add(out.toByteArray());
      }
    }
    return jpegs;
  }

  /** All depths, with scale and zero, a cube of colours, a mosaic, and an extension. */
  private static List<byte[]> fits() {
    List<byte[]> all = new ArrayList<>();
    for (int bits : new int[] {8, 16, 32, 64, -32, -64}) {
      all.add(fits(bits, 1, "BZERO   = 32768", "BSCALE  = 2.5", "BLANK   = 7"));
      all.add(fits(bits, 3, "SATURATE= 60000", "ROWORDER= 'TOP-DOWN'"));
      all.add(fits(bits, 1, "BAYERPAT= 'RGGB'", "DATE-OBS= '2024-03-02T21:30:05'"));
    }
    return all;
  }

  private static byte[] fits(int bits, int planes, String... more) {
    List<String> cards = new ArrayList<>();
    cards.add("SIMPLE  =                    T");
    cards.add("BITPIX  = " + bits);
    cards.add("NAXIS   = " + (planes == 1 ? 2 : 3));
    cards.add("NAXIS1  = " + WIDTH);
    cards.add("NAXIS2  = " + HEIGHT);
    cards.add("NAXIS3  = " + planes);
    cards.addAll(List.of(more));
    cards.add("END");
    StringBuilder head = new StringBuilder();
    cards.forEach(card -> head.append(String.format(Locale.ROOT, "%-80s", card)));
    byte[] start =
        String.format(Locale.ROOT, "%-2880s", head).getBytes(StandardCharsets.ISO_8859_1);
    int length = WIDTH * HEIGHT * planes * Math.abs(bits) / 8;
    ByteBuffer file = ByteBuffer.allocate(start.length + (length + 2879) / 2880 * 2880).put(start);
    for (int i = 0; i < length; i++) {
      file.put((byte) (i * 31));
    }
    return file.array();
  }

  private static List<byte[]> raws() {
    byte[] dng = TestTiff.dng(WIDTH, HEIGHT, "RGGB", new int[] {0, 0, 0, 0}, (x, y, s) -> x + y);
    return List.of(dng, exif().tiff());
  }

  private static TestExif exif() {
    TestExif shot =
        TestExif.little()
            .rational(0x829A, 10, 1)
            .rational(0x829D, 28, 10)
            .shorts(0x8827, 1600)
            .ascii(0x9003, "2024:03:02 21:30:05");
    return TestExif.little()
        .ascii(0x010F, "Ashgrove")
        .ascii(0x0110, "Vesper One")
        .directory(TestExif.EXIF, shot);
  }
}
