package rondure.intake;

import com.drew.imaging.ImageProcessingException;
import com.drew.imaging.heif.HeifMetadataReader;
import com.drew.imaging.tiff.TiffReader;
import com.drew.metadata.Directory;
import com.drew.metadata.Metadata;
import java.io.BufferedInputStream;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import rondure.base.FrameProblem;

/** Opens a file's metadata with the library; what was read before damage is kept. */
final class MetadataReading {
  /** Where a RAF says its full-size JPEG begins and how long it is (big-endian). */
  private static final int RAF_JPEG = 84;

  private static final int HEIF_BYTES_MAX = 1 << 25;
  private static final int JPEG_BYTES_MAX = 1 << 25;

  private final FileBytes file;
  private final Metadata metadata = new Metadata();

  private MetadataReading(FileBytes file) {
    this.file = file;
  }

  /** Everything that could be read; empty for files whose metadata nobody here understands. */
  static Metadata of(FileBytes file, ImageFormat format) {
    MetadataReading reading = new MetadataReading(file);
    try {
      reading.read(format);
    } catch (ImageProcessingException
        | IOException
        | FrameProblem
        | RuntimeException
        | StackOverflowError damage) {
      return reading.metadata;
    }
    return reading.metadata;
  }

  private void read(ImageFormat format) throws ImageProcessingException, IOException, FrameProblem {
    switch (format) {
      case JPEG -> adopt(jpeg(0, file.length()));
      case PNG -> PngMetadata.read(file, metadata);
      case HEIC, AVIF -> heif();
      case TIFF -> tiff(0, file.length());
      case RAW -> raw();
      case FITS -> {}
    }
  }

  private void raw() throws ImageProcessingException, IOException, FrameProblem {
    byte[] bytes = file.read(0, (int) Math.min(16, file.length())).array();
    String start = new String(bytes, StandardCharsets.ISO_8859_1);
    if (start.startsWith("FUJIFILM")) {
      ByteBuffer place = file.read(RAF_JPEG, 8);
      adopt(jpeg(place.getInt(0) & 0xFFFFFFFFL, place.getInt(4) & 0xFFFFFFFFL));
    } else if (start.startsWith("ftyp", 4)) {
      for (CanonBoxes.Span span : CanonBoxes.metadata(file)) {
        tiff(span.start(), span.length());
      }
    } else if (start.startsWith("II") || start.startsWith("MM")) {
      tiff(0, file.length());
    }
  }

  /** Reads the directories of a TIFF or of a RAW built like one; offsets count from start. */
  private void tiff(long start, long length) throws ImageProcessingException, IOException {
    BoundedExif handler = new BoundedExif(metadata, 0, file.limits().metadataBytes());
    new TiffReader().processTiff(new PagedReader(file, start, length), handler, 0);
  }

  /** What a JPEG says before its pixels begin, which is within the first few MB. */
  private Metadata jpeg(long start, long length)
      throws ImageProcessingException, IOException, FrameProblem {
    long looked = Math.min(length, JPEG_BYTES_MAX);
    return JpegMetadata.read(
        new BufferedInputStream(file.slice(start, looked)), file.limits().metadataBytes());
  }

  private void heif() throws ImageProcessingException, IOException, FrameProblem {
    if (HeifBoxes.whole(file)) {
      adopt(HeifMetadataReader.readMetadata(beginning()));
    }
  }

  /** In memory, because the library walks through such files twice. */
  private InputStream beginning() throws IOException, FrameProblem {
    int count = (int) Math.min(HEIF_BYTES_MAX, file.length());
    return new ByteArrayInputStream(file.read(0, count).array());
  }

  private void adopt(Metadata read) {
    for (Directory directory : read.getDirectories()) {
      metadata.addDirectory(directory);
    }
  }
}
