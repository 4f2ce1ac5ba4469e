package rondure.intake;

import com.drew.imaging.png.PngChunkType;
import com.drew.imaging.tiff.TiffProcessingException;
import com.drew.imaging.tiff.TiffReader;
import com.drew.lang.ByteArrayReader;
import com.drew.metadata.Metadata;
import com.drew.metadata.png.PngDirectory;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.zip.InflaterInputStream;
import rondure.base.FrameProblem;

/** Size, EXIF and XMP of a PNG, within bounds; other texts are never unpacked. */
final class PngMetadata {
  private static final byte[] XMP = "XML:com.adobe.xmp\0".getBytes(StandardCharsets.US_ASCII);

  private final int mostBytes;
  private final Metadata metadata;

  private PngMetadata(int mostBytes, Metadata metadata) {
    this.mostBytes = mostBytes;
    this.metadata = metadata;
  }

  /** Adds what can be read to {@code metadata}, which holds it also when the file ends too soon. */
  static void read(FileBytes file, Metadata metadata) throws IOException, FrameProblem {
    PngMetadata reading = new PngMetadata(file.limits().metadataBytes(), metadata);
    PngWalk walk = new PngWalk(file);
    while (walk.next()) {
      switch (walk.name()) {
        case "IHDR" -> reading.header(walk.content(8));
        case "eXIf" -> reading.exif(walk.content(reading.mostBytes).array());
        case "iTXt", "zTXt" -> {
          if (Arrays.equals(walk.content(XMP.length).array(), XMP)) {
            reading.xmp(walk.content(reading.mostBytes).array(), walk.name().equals("iTXt"));
          }
        }
        default -> {}
      }
    }
  }

  private void header(ByteBuffer header) {
    PngDirectory directory = new PngDirectory(PngChunkType.IHDR);
    directory.setInt(PngDirectory.TAG_IMAGE_WIDTH, header.getInt());
    directory.setInt(PngDirectory.TAG_IMAGE_HEIGHT, header.getInt());
    metadata.addDirectory(directory);
  }

  private void exif(byte[] tiff) throws IOException {
    try {
      BoundedExif handler = new BoundedExif(metadata, 0, mostBytes);
      new TiffReader().processTiff(new ByteArrayReader(tiff), handler, 0);
    } catch (TiffProcessingException damaged) {
      metadata.addDirectory(new PngDirectory(PngChunkType.eXIf));
    }
  }

  /** iTXt: flag and method of packing, language, translated name; zTXt: the method (11.3.3). */
  private void xmp(byte[] chunk, boolean international) throws IOException {
    int at = XMP.length;
    boolean packed = !international || at < chunk.length && chunk[at] == 1;
    at += international ? 2 : 1;
    for (int i = 0; international && i < 2; i++) {
      while (at < chunk.length && chunk[at] != 0) {
        at++;
      }
      at++;
    }
    if (at < chunk.length) {
      byte[] rest = Arrays.copyOfRange(chunk, at, chunk.length);
      new BoundedXmp(mostBytes).extract(packed ? inflated(rest) : rest, metadata);
    }
  }

  private byte[] inflated(byte[] packed) throws IOException {
    try (InputStream in = new InflaterInputStream(new ByteArrayInputStream(packed))) {
      return in.readNBytes(mostBytes + 1);
    }
  }
}
