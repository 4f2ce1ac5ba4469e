package rondure.intake;

import com.drew.imaging.jpeg.JpegSegmentType;
import com.drew.metadata.Directory;
import com.drew.metadata.Metadata;
import com.drew.metadata.xmp.XmpReader;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import org.xml.sax.InputSource;
import org.xml.sax.SAXException;
import rondure.base.XmlBounds;

/** Reads XMP packets that are within bounds; others are left out like damaged ones. */
final class BoundedXmp extends XmpReader {
  /** Of packets that are no XML as they stand, but may be mended: control or Latin letters. */
  private static final int LARGEST_MENDED = 1 << 16;

  /** Signature, then 32 bytes of digest, then the length of the whole (XMP part 3, 1.1.3.1). */
  private static final byte[] EXTENSION =
      "http://ns.adobe.com/xmp/extension/\0".getBytes(StandardCharsets.US_ASCII);

  private static final int LENGTH_AT = EXTENSION.length + 32;

  private final int mostBytes;

  BoundedXmp(int mostBytes) {
    this.mostBytes = mostBytes;
  }

  /** The length that an extension states is memory to be taken: only a sensible one passes. */
  @Override
  public void readJpegSegments(
      Iterable<byte[]> segments, Metadata metadata, JpegSegmentType segmentType) {
    List<byte[]> sensible = new ArrayList<>();
    for (byte[] segment : segments) {
      if (!isExtension(segment) || stated(segment) <= mostBytes) {
        sensible.add(segment);
      }
    }
    super.readJpegSegments(sensible, metadata, segmentType);
  }

  private static boolean isExtension(byte[] segment) {
    return segment.length >= LENGTH_AT + 8
        && Arrays.equals(segment, 0, EXTENSION.length, EXTENSION, 0, EXTENSION.length);
  }

  private static long stated(byte[] segment) {
    return ByteBuffer.wrap(segment).getInt(LENGTH_AT) & 0xFFFFFFFFL;
  }

  @Override
  public void extract(byte[] xmp, int offset, int length, Metadata metadata, Directory parent) {
    byte[] packet = Arrays.copyOfRange(xmp, offset, offset + length);
    if (packet.length <= mostBytes && harmless(packet)) {
      super.extract(packet, 0, packet.length, metadata, parent);
    }
  }

  private static boolean harmless(byte[] packet) {
    try {
      XmlBounds.check(new InputSource(new ByteArrayInputStream(packet)));
      return true;
    } catch (XmlBounds.Exceeded exceeded) {
      return false;
    } catch (SAXException | IOException broken) {
      return packet.length <= LARGEST_MENDED && !declares(packet);
    }
  }

  /** True when it has a declaration of any kind, in whatever encoding. */
  private static boolean declares(byte[] packet) {
    String letters = new String(packet, StandardCharsets.ISO_8859_1).replace("\0", "");
    String upper = letters.toUpperCase(Locale.ROOT);
    return upper.contains("<!DOCTYPE") || upper.contains("<!ENTITY");
  }
}
