package rondure.intake;

import com.drew.metadata.Directory;
import com.drew.metadata.Metadata;
import com.drew.metadata.exif.PanasonicRawIFD0Directory;
import com.drew.metadata.heif.HeifDirectory;
import com.drew.metadata.jpeg.JpegDirectory;
import com.drew.metadata.png.PngDirectory;

/**
 * Width and height of a picture by its header; 0 x 0 when unknown.
 *
 * @param widthPx stored width
 * @param heightPx stored height
 */
record PictureSize(int widthPx, int heightPx) {
  static final PictureSize UNKNOWN = new PictureSize(0, 0);

  private static final int TIFF_WIDTH = 0x0100;
  private static final int TIFF_HEIGHT = 0x0101;
  private static final int EXIF_WIDTH = 0xA002;
  private static final int EXIF_HEIGHT = 0xA003;

  /**
   * What is stored, whatever EXIF says about an earlier state of the picture. For a RAW, the
   * largest picture in the file.
   */
  static PictureSize stored(Metadata metadata, ExifTags tags, ImageFormat format) {
    PictureSize largest = UNKNOWN;
    switch (format) {
      case JPEG, PNG, HEIC, AVIF -> largest = ofContainer(metadata);
      case TIFF -> largest = ofTags(tags, TIFF_WIDTH, TIFF_HEIGHT);
      case RAW ->
          largest =
              ofContainer(metadata)
                  .or(ofTags(tags, TIFF_WIDTH, TIFF_HEIGHT))
                  .or(recorded(tags))
                  .or(ofPanasonic(tags));
      case FITS -> {}
    }
    return largest;
  }

  /** What a header says; unknown when no picture of that size is decoded. */
  static PictureSize ofHeader(long widthPx, long heightPx) {
    return RasterSize.acceptable(widthPx, heightPx)
        ? new PictureSize((int) widthPx, (int) heightPx)
        : UNKNOWN;
  }

  /** What EXIF says the picture measured when its EXIF was written. */
  static PictureSize recorded(ExifTags tags) {
    return ofTags(tags, EXIF_WIDTH, EXIF_HEIGHT);
  }

  boolean known() {
    return widthPx > 0;
  }

  double diagonalPx() {
    return Math.hypot(widthPx, heightPx);
  }

  int longerPx() {
    return Math.max(widthPx, heightPx);
  }

  /** Longer over shorter side. */
  double aspect() {
    return longerPx() / (double) Math.min(widthPx, heightPx);
  }

  private PictureSize or(PictureSize other) {
    long own = (long) widthPx * heightPx;
    return (long) other.widthPx * other.heightPx > own ? other : this;
  }

  private static PictureSize ofTags(ExifTags tags, int widthTag, int heightTag) {
    PictureSize largest = UNKNOWN;
    for (Directory directory : tags.directories()) {
      largest = largest.or(of(directory, widthTag, heightTag));
    }
    return largest;
  }

  private static PictureSize ofContainer(Metadata metadata) {
    PictureSize largest = UNKNOWN;
    for (Directory directory : metadata.getDirectories()) {
      if (directory instanceof JpegDirectory) {
        largest =
            largest.or(
                of(directory, JpegDirectory.TAG_IMAGE_WIDTH, JpegDirectory.TAG_IMAGE_HEIGHT));
      } else if (directory instanceof PngDirectory) {
        largest =
            largest.or(of(directory, PngDirectory.TAG_IMAGE_WIDTH, PngDirectory.TAG_IMAGE_HEIGHT));
      } else if (directory instanceof HeifDirectory) {
        largest =
            largest.or(
                of(directory, HeifDirectory.TAG_IMAGE_WIDTH, HeifDirectory.TAG_IMAGE_HEIGHT));
      }
    }
    return largest;
  }

  private static PictureSize ofPanasonic(ExifTags tags) {
    PictureSize largest = UNKNOWN;
    for (Directory directory : tags.directories()) {
      if (directory instanceof PanasonicRawIFD0Directory) {
        largest =
            largest.or(
                of(
                    directory,
                    PanasonicRawIFD0Directory.TagSensorWidth,
                    PanasonicRawIFD0Directory.TagSensorHeight));
      }
    }
    return largest;
  }

  private static PictureSize of(Directory directory, int widthTag, int heightTag) {
    double width = ExifTags.number(directory, widthTag).orElse(0.0);
    double height = ExifTags.number(directory, heightTag).orElse(0.0);
    return ofHeader((long) width, (long) height);
  }
}
