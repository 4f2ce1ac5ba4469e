package rondure.intake;

import com.drew.imaging.jpeg.JpegProcessingException;
import com.drew.lang.RandomAccessReader;
import com.drew.metadata.Directory;
import com.drew.metadata.Metadata;
import com.drew.metadata.exif.ExifTiffHandler;
import com.drew.metadata.exif.PanasonicRawIFD0Directory;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.util.Set;

/**
 * Reads the directories of EXIF within bounds, and no more of them than {@link ExifFacts} looks at:
 * makers' notes, profiles and print settings are passed over.
 */
final class BoundedExif extends ExifTiffHandler {
  private static final int XMP = 0x02BC;
  private static final int DEEPEST = 16;
  private static final int MOST_DIRECTORIES = 200;
  private static final int MOST_VALUE_BYTES = 1 << 16;

  /** IPTC, Photoshop's resources, ICC profile, maker's note, print matching. */
  private static final Set<Integer> PASSED_OVER = Set.of(0x83BB, 0x8649, 0x8773, 0x927C, 0xC4A5);

  private final int mostBytes;
  private int depth = 1;
  private int directories = 1;
  private long bytesLeft;

  /**
   * @param exifStart where the TIFF begins in what is read
   * @param mostBytes of all values together, and of one XMP packet
   */
  BoundedExif(Metadata metadata, int exifStart, int mostBytes) {
    super(metadata, null, exifStart);
    this.mostBytes = mostBytes;
    this.bytesLeft = mostBytes;
  }

  @Override
  public boolean tryEnterSubIfd(int tag) {
    return room() && entered(super.tryEnterSubIfd(tag));
  }

  @Override
  public boolean hasFollowerIfd() {
    return room() && entered(super.hasFollowerIfd());
  }

  private boolean room() {
    return depth < DEEPEST && directories < MOST_DIRECTORIES;
  }

  private boolean entered(boolean yes) {
    if (yes) {
      depth++;
      directories++;
    }
    return yes;
  }

  @Override
  public void endingIFD() {
    depth--;
    super.endingIFD();
  }

  @Override
  public boolean customProcessTag(
      int offset, Set<Integer> seen, int header, RandomAccessReader reader, int tag, int bytes)
      throws IOException {
    if (tag == XMP) {
      byte[] packet = reader.getNullTerminatedBytes(offset, Math.min(bytes, mostBytes));
      new BoundedXmp(mostBytes).extract(packet, _metadata, _currentDirectory);
      return true;
    }
    if (tag == PanasonicRawIFD0Directory.TagJpgFromRaw
        && _currentDirectory instanceof PanasonicRawIFD0Directory) {
      embedded(reader.getBytes(offset, bytes));
      return true;
    }
    if (PASSED_OVER.contains(tag) || bytes > MOST_VALUE_BYTES || bytes > bytesLeft) {
      return true;
    }
    bytesLeft -= bytes;
    return super.customProcessTag(offset, seen, header, reader, tag, bytes);
  }

  /** The whole JPEG inside some RAW files says more than the RAW itself. */
  private void embedded(byte[] jpeg) throws IOException {
    try {
      Metadata inside = JpegMetadata.read(new ByteArrayInputStream(jpeg), mostBytes);
      for (Directory directory : inside.getDirectories()) {
        _metadata.addDirectory(directory);
      }
    } catch (JpegProcessingException damaged) {
      _currentDirectory.addError("damaged picture: " + damaged.getMessage());
    }
  }
}
