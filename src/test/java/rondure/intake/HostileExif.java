package rondure.intake;

import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;

/** EXIF and XMP of any content in a whole JPEG. */
public final class HostileExif {
  private HostileExif() {}

  /**
   * The JPEG with segments of EXIF and XMP behind its first marker, before any of its own.
   *
   * @param camera maker and model
   * @param lens the lens' name
   * @param xmp the packet
   */
  public static byte[] in(byte[] jpeg, String camera, String lens, String xmp) {
    TestExif shot =
        TestExif.little()
            .ascii(0x9003, "2024:03:02 21:30:05")
            .rational(0x829A, 10, 1)
            .rational(0x920A, 12, 1)
            .ascii(0xA434, lens);
    byte[] exif =
        TestExif.little()
            .ascii(0x010F, camera)
            .ascii(0x0110, camera)
            .directory(TestExif.EXIF, shot)
            .tiff();
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    out.write(jpeg, 0, 2);
    segment(out, "Exif\0\0", exif);
    segment(out, "http://ns.adobe.com/xap/1.0/\0", xmp.getBytes(StandardCharsets.UTF_8));
    out.write(jpeg, 2, jpeg.length - 2);
    return out.toByteArray();
  }

  private static void segment(ByteArrayOutputStream out, String signature, byte[] content) {
    int length = 2 + signature.length() + content.length;
    out.writeBytes(new byte[] {(byte) 0xFF, (byte) 0xE1, (byte) (length >> 8), (byte) length});
    out.writeBytes(signature.getBytes(StandardCharsets.US_ASCII));
    out.writeBytes(content);
  }
}
