package rondure.intake;

import com.drew.imaging.jpeg.JpegMetadataReader;
import com.drew.imaging.jpeg.JpegProcessingException;
import com.drew.imaging.jpeg.JpegSegmentMetadataReader;
import com.drew.imaging.tiff.TiffProcessingException;
import com.drew.imaging.tiff.TiffReader;
import com.drew.lang.RandomAccessReader;
import com.drew.metadata.Directory;
import com.drew.metadata.Metadata;
import com.drew.metadata.exif.ExifReader;
import com.drew.metadata.jpeg.JpegReader;
import java.io.IOException;
import java.io.InputStream;
import java.util.List;

/** Size, EXIF and XMP of a JPEG, within bounds; no other kind of metadata is looked at. */
final class JpegMetadata {
  private JpegMetadata() {}

  /**
   * What the segments before the pixels say.
   *
   * @param mostBytes of one XMP packet and of all values of one EXIF segment
   */
  static Metadata read(InputStream jpeg, int mostBytes)
      throws JpegProcessingException, IOException {
    List<JpegSegmentMetadataReader> readers =
        List.of(new JpegReader(), new Exif(mostBytes), new BoundedXmp(mostBytes));
    return JpegMetadataReader.readMetadata(jpeg, readers);
  }

  private static final class Exif extends ExifReader {
    private final int mostBytes;

    Exif(int mostBytes) {
      this.mostBytes = mostBytes;
    }

    @Override
    public void extract(RandomAccessReader reader, Metadata metadata, int start, Directory parent) {
      BoundedExif handler = new BoundedExif(metadata, start, mostBytes);
      try {
        new TiffReader().processTiff(reader, handler, start);
      } catch (TiffProcessingException | IOException damaged) {
        handler.error("damaged EXIF: " + damaged.getMessage());
      }
    }
  }
}
