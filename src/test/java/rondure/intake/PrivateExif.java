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
          "wilma@example.org",
          "5e4d3c2b1a0f9e8d",
          "SHUTTER-48813",
          "owner-note-wilma",
          "Wilma's own laptop",
          "comment by Wilma",
          "by-line Wilma A.");

  /** As cameras put owner and number into a note of their own (0x927C is opaque to readers). */
  private static final byte[] MAKER_NOTE =
      "Larkmoor\0owner-note-wilma\0SN-77120045\0SHUTTER-48813\0"
          .getBytes(StandardCharsets.US_ASCII);

  private static final byte[] COMMENT =
      "ASCII\0\0\0comment by Wilma".getBytes(StandardCharsets.US_ASCII);

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
            .ascii(0xA435, "LENS-5550912")
            .ascii(0xA420, "5e4d3c2b1a0f9e8d")
            .raw(0x927C, 7, MAKER_NOTE.length, MAKER_NOTE)
            .raw(0x9286, 7, COMMENT.length, COMMENT);
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
            + " aux:SerialNumber='SN-77120045' aux:LensSerialNumber='LENS-5550912'"
            + " xmlns:dc='http://purl.org/dc/elements/1.1/'"
            + " xmlns:mm='http://ns.adobe.com/xap/1.0/mm/' mm:DocumentID='5e4d3c2b1a0f9e8d'"
            + " xmlns:exif='http://ns.adobe.com/exif/1.0/' exif:GPSLatitude='47,12.345N'>"
            + "<dc:creator><rdf:Seq><rdf:li>Wilma's own laptop</rdf:li></rdf:Seq></dc:creator>"
            + "</rdf:Description></rdf:RDF></x:xmpmeta>";
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    out.write(jpeg, 0, 2);
    segment(out, 0xE1, "Exif\0\0".getBytes(StandardCharsets.US_ASCII), tiff);
    segment(out, 0xE1, xmp.getBytes(StandardCharsets.UTF_8), new byte[0]);
    segment(out, 0xED, "Photoshop 3.0\0".getBytes(StandardCharsets.US_ASCII), byLine());
    segment(out, 0xFE, COMMENT, new byte[0]);
    int rest = 2;
    while ((jpeg[rest + 1] & 0xF0) == 0xE0 || (jpeg[rest + 1] & 0xFF) == 0xFE) {
      rest += 2 + ((jpeg[rest + 2] & 0xFF) << 8 | jpeg[rest + 3] & 0xFF);
    }
    out.write(jpeg, rest, jpeg.length - rest);
    return out.toByteArray();
  }

  /** IPTC: image resource 0x0404 with the dataset 2:80. */
  private static byte[] byLine() {
    byte[] name = "by-line Wilma A.".getBytes(StandardCharsets.US_ASCII);
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    out.writeBytes(new byte[] {'8', 'B', 'I', 'M', 4, 4, 0, 0, 0, 0, 0, (byte) (name.length + 5)});
    out.writeBytes(new byte[] {0x1C, 2, 80, 0, (byte) name.length});
    out.writeBytes(name);
    out.write(0);
    return out.toByteArray();
  }

  private static void segment(ByteArrayOutputStream out, int marker, byte[] head, byte[] body) {
    int length = 2 + head.length + body.length;
    out.writeBytes(new byte[] {(byte) 0xFF, (byte) marker, (byte) (length >> 8), (byte) length});
    out.writeBytes(head);
    out.writeBytes(body);
  }
}
