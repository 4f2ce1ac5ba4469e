package rondure.intake;

import com.drew.imaging.ImageProcessingException;
import com.drew.imaging.heif.HeifMetadataReader;
import com.drew.imaging.jpeg.JpegMetadataReader;
import com.drew.imaging.png.PngMetadataReader;
import com.drew.imaging.tiff.TiffReader;
import com.drew.metadata.Directory;
import com.drew.metadata.Metadata;
import com.drew.metadata.exif.ExifTiffHandler;
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
    } catch (ImageProcessingException | IOException | FrameProblem | RuntimeException damage) {
      return reading.metadata;
    }
    return reading.metadata;
  }

  private void read(ImageFormat format) throws ImageProcessingException, IOException, FrameProblem {
    switch (format) {
      case JPEG -> adopt(JpegMetadataReader.readMetadata(stream(0, file.length())));
      case PNG -> adopt(PngMetadataReader.readMetadata(stream(0, file.length())));
      case HEIC, AVIF -> adopt(HeifMetadataReader.readMetadata(beginning()));
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
      adopt(
          JpegMetadataReader.readMetadata(
              stream(place.getInt(0) & 0xFFFFFFFFL, place.getInt(4) & 0xFFFFFFFFL)));
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
    new TiffReader()
        .processTiff(
            new PagedReader(file, start, length), new ExifTiffHandler(metadata, null, 0), 0);
  }

  private InputStream stream(long start, long length) throws FrameProblem {
    return new BufferedInputStream(file.slice(start, length));
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
