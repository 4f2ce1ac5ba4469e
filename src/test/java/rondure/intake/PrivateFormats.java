package rondure.intake;

import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.zip.CRC32;
import javax.imageio.ImageIO;

/** Files of other formats that name the photographer, the camera's number and the place. */
public final class PrivateFormats {
  private static final int ENTRY_BYTES = 12;
  private static final int FITS_BLOCK = 2880;
  private static final int CARD = 80;

  private PrivateFormats() {}

  /**
   * A TIFF or DNG (little-endian) with more tags in its first directory, which moves to the end of
   * the file (TIFF 6.0, section 2; DNG: 0xC62F CameraSerialNumber, 0xC68B OriginalRawFileName).
   */
  public static byte[] tiff(byte[] file) {
    ByteBuffer in = ByteBuffer.wrap(file).order(ByteOrder.LITTLE_ENDIAN);
    int at = in.getInt(4);
    List<byte[]> entries = new ArrayList<>();
    int count = in.getShort(at) & 0xFFFF;
    for (int i = 0; i < count; i++) {
      int from = at + 2 + ENTRY_BYTES * i;
      entries.add(Arrays.copyOfRange(file, from, from + ENTRY_BYTES));
    }
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    out.writeBytes(file);
    add(entries, out, 0x013B, "Wilhelmina Ashgrove");
    add(entries, out, 0x013C, "ashgrove-laptop");
    add(entries, out, 0x8298, "(c) Wilhelmina Ashgrove");
    add(entries, out, 0xC62F, "SN-77120045");
    add(entries, out, 0xC68B, "/home/wilma@example.org/Fennick Hollow.raw");
    add(entries, out, 0xA435, "LENS-5550912");
    entries.sort(Comparator.comparingInt(PrivateFormats::tag));
    int directory = out.size() + out.size() % 2;
    ByteBuffer end = ByteBuffer.allocate(directory + 2 + ENTRY_BYTES * entries.size() + 4);
    end.order(ByteOrder.LITTLE_ENDIAN).put(out.toByteArray()).position(directory);
    end.putShort((short) entries.size());
    entries.forEach(end::put);
    end.putInt(4, directory);
    return end.array();
  }

  private static int tag(byte[] entry) {
    return (entry[0] & 0xFF) | (entry[1] & 0xFF) << 8;
  }

  private static void add(List<byte[]> entries, ByteArrayOutputStream out, int tag, String text) {
    entries.removeIf(entry -> tag(entry) == tag);
    byte[] bytes = (text + "\0").getBytes(StandardCharsets.US_ASCII);
    ByteBuffer entry = ByteBuffer.allocate(ENTRY_BYTES).order(ByteOrder.LITTLE_ENDIAN);
    entry.putShort((short) tag).putShort((short) 2).putInt(bytes.length).putInt(out.size());
    entries.add(entry.array());
    out.writeBytes(bytes);
  }

  /** The picture as PNG with text chunks (PNG, third edition, 11.3.3) before its pixels. */
  public static byte[] png(byte[] jpeg) throws IOException {
    ByteArrayOutputStream plain = new ByteArrayOutputStream();
    ImageIO.write(grey(jpeg), "png", plain);
    byte[] png = plain.toByteArray();
    int head = 8 + 25;
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    out.write(png, 0, head);
    out.writeBytes(text("Author\0Wilhelmina Ashgrove"));
    out.writeBytes(text("Software\0ashgrove-laptop"));
    out.writeBytes(text("Comment\0At Fennick Hollow with wilma@example.org, SN-77120045"));
    out.write(png, head, png.length - head);
    return out.toByteArray();
  }

  private static byte[] text(String keywordAndText) {
    byte[] data = ("tEXt" + keywordAndText).getBytes(StandardCharsets.ISO_8859_1);
    CRC32 sum = new CRC32();
    sum.update(data);
    ByteBuffer chunk = ByteBuffer.allocate(data.length + 8);
    return chunk.putInt(data.length - 4).put(data).putInt((int) sum.getValue()).array();
  }

  /** The picture as FITS (16 bit, FITS standard 4.0, section 4) with an observatory's cards. */
  public static byte[] fits(byte[] jpeg) throws IOException {
    BufferedImage image = grey(jpeg);
    StringBuilder head = new StringBuilder();
    card(head, "SIMPLE", "T");
    card(head, "BITPIX", "16");
    card(head, "NAXIS", "2");
    card(head, "NAXIS1", Integer.toString(image.getWidth()));
    card(head, "NAXIS2", Integer.toString(image.getHeight()));
    card(head, "OBSERVER", "'Wilhelmina Ashgrove'");
    card(head, "AUTHOR", "'wilma@example.org'");
    card(head, "OBSERVAT", "'Fennick Hollow'");
    card(head, "SITELAT", "'47 07 24.4'");
    card(head, "SITELONG", "'11 32 35.7'");
    card(head, "CAMSN", "'SN-77120045'");
    head.append(String.format("%-80s", "HISTORY made on ashgrove-laptop with LENS-5550912"));
    head.append(String.format("%-80s", "END"));
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    out.writeBytes(padded(head.toString().getBytes(StandardCharsets.US_ASCII), ' '));
    ByteBuffer pixels = ByteBuffer.allocate(2 * image.getWidth() * image.getHeight());
    for (int y = 0; y < image.getHeight(); y++) {
      for (int x = 0; x < image.getWidth(); x++) {
        pixels.putShort((short) (100 * image.getRaster().getSample(x, y, 0)));
      }
    }
    out.writeBytes(padded(pixels.array(), '\0'));
    return out.toByteArray();
  }

  private static void card(StringBuilder head, String key, String value) {
    head.append(String.format("%-" + CARD + "s", String.format("%-8s= %20s", key, value)));
  }

  private static byte[] padded(byte[] bytes, char fill) {
    int whole = (bytes.length + FITS_BLOCK - 1) / FITS_BLOCK * FITS_BLOCK;
    byte[] block = Arrays.copyOf(bytes, whole);
    Arrays.fill(block, bytes.length, whole, (byte) fill);
    return block;
  }

  private static BufferedImage grey(byte[] jpeg) throws IOException {
    BufferedImage colours = ImageIO.read(new ByteArrayInputStream(jpeg));
    BufferedImage grey =
        new BufferedImage(colours.getWidth(), colours.getHeight(), BufferedImage.TYPE_BYTE_GRAY);
    grey.getGraphics().drawImage(colours, 0, 0, null);
    return grey;
  }
}
