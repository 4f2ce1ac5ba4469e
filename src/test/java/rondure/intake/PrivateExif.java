package rondure.intake;

import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;

/** EXIF and XMP that name the photographer, the camera's serial number and the place. */
public final class PrivateExif {
  /** Everything private in it, as text. */
  public static final List<String> SECRETS =
      List.of(
          "Wilhelmina Ashgrove",
          "SN-77120045",
          "LENS-5550912",
          "ashgrove-laptop",
          "Fennick Hollow",
          "wilma@example.org");

  private PrivateExif() {}

  /** The JPEG with these metadata in place of its own. */
  public static byte[] in(byte[] jpeg) {
    TestExif gps =
        TestExif.little()
            .ascii(1, "N")
            .rational(2, 4_712_345, 100_000)
            .ascii(3, "E")
            .rational(4, 1_154_321, 100_000)
            .ascii(27, "Fennick Hollow");
    TestExif exif =
        TestExif.little()
            .ascii(0x9003, "2031:08:14 23:10:00")
            .rational(0x829A, 10, 1)
            .rational(0x920A, 12, 1)
            .ascii(0xA430, "Wilhelmina Ashgrove")
            .ascii(0xA431, "SN-77120045")
            .ascii(0xA435, "LENS-5550912");
    byte[] tiff =
        TestExif.little()
            .ascii(0x010E, "At Fennick Hollow with wilma@example.org")
            .ascii(0x0110, "Vesper One")
            .ascii(0x013B, "Wilhelmina Ashgrove")
            .ascii(0x013C, "ashgrove-laptop")
            .ascii(0x8298, "(c) Wilhelmina Ashgrove")
            .directory(TestExif.EXIF, exif)
            .directory(TestExif.GPS, gps)
            .tiff();
    String xmp =
        "http://ns.adobe.com/xap/1.0/\0<x:xmpmeta xmlns:x='adobe:ns:meta/'><rdf:RDF"
            + " xmlns:rdf='http://www.w3.org/1999/02/22-rdf-syntax-ns#'><rdf:Description"
            + " xmlns:aux='http://ns.adobe.com/exif/1.0/aux/' aux:OwnerName='Wilhelmina Ashgrove'"
            + " aux:SerialNumber='SN-77120045'/></rdf:RDF></x:xmpmeta>";
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    out.write(jpeg, 0, 2);
    segment(out, "Exif\0\0".getBytes(StandardCharsets.US_ASCII), tiff);
    segment(out, xmp.getBytes(StandardCharsets.UTF_8), new byte[0]);
    int rest = 2;
    while ((jpeg[rest + 1] & 0xF0) == 0xE0) {
      rest += 2 + ((jpeg[rest + 2] & 0xFF) << 8 | jpeg[rest + 3] & 0xFF);
    }
    out.write(jpeg, rest, jpeg.length - rest);
    return out.toByteArray();
  }

  private static void segment(ByteArrayOutputStream out, byte[] head, byte[] body) {
    int length = 2 + head.length + body.length;
    out.writeBytes(new byte[] {(byte) 0xFF, (byte) 0xE1, (byte) (length >> 8), (byte) length});
    out.writeBytes(head);
    out.writeBytes(body);
  }
}
