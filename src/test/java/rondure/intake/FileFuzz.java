package rondure.intake;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import rondure.base.FrameProblem;
import rondure.base.Orientation;

/**
 * What a fuzzer calls: one parser of files with any bytes. A parser answers or refuses with a
 * {@link FrameProblem} or an {@link IOException}; everything else that it throws is a fault. The
 * system property {@code rondure.fuzz} names the parser; {@code src/test/fuzz/fuzz.sh} runs it.
 */
public final class FileFuzz {
  /** Small, so that bounds are met and a fuzzer makes many tries a second. */
  static final ReadingLimits LIMITS = new ReadingLimits(1, 16, 20_000, 20, 1);

  private static final int UNPACKED_MAX = 1 << 20;

  /** A parser of a file. */
  interface Target {
    void read(FileBytes file) throws IOException, FrameProblem;
  }

  static final Map<String, Target> TARGETS =
      Map.of(
          "tiff", file -> TiffDecoder.decode(file, Orientation.NORMAL),
          "png", FileFuzz::png,
          "jpeg", FileFuzz::jpeg,
          "fits", FileFuzz::fits,
          "raw", FileFuzz::raw,
          "facts", FileFuzz::facts,
          "streams", FileFuzz::streams);

  private static final Path PLACE = place();

  private FileFuzz() {}

  /** Called by the fuzzer. */
  public static void fuzzerTestOneInput(byte[] data) throws IOException {
    run(System.getProperty("rondure.fuzz", "tiff"), data);
  }

  static void run(String name, byte[] data) throws IOException {
    Files.write(PLACE, data);
    try (FileBytes file = FileBytes.open(PLACE, LIMITS)) {
      TARGETS.get(name).read(file);
    } catch (FrameProblem | IOException refused) {
      if (refused.getMessage() == null && !(refused instanceof java.io.EOFException)) {
        throw new IllegalStateException("a refusal without a reason", refused);
      }
    } catch (RuntimeException fault) {
      if (!isJavas(fault)) {
        throw fault;
      }
    }
  }

  /** Faults of the Java library's own readers are caught where they are called. */
  private static boolean isJavas(RuntimeException fault) {
    for (StackTraceElement frame : fault.getStackTrace()) {
      if (frame.getClassName().startsWith("rondure.")) {
        return false;
      }
      if (frame.getClassName().startsWith("com.sun.imageio")) {
        return true;
      }
    }
    return false;
  }

  private static void png(FileBytes file) throws IOException, FrameProblem {
    PngChunks.read(file);
    PngDecoder.decode(file, Orientation.NORMAL);
  }

  private static void jpeg(FileBytes file) throws IOException, FrameProblem {
    JpegDecoder.decode(file, Orientation.NORMAL);
  }

  private static void fits(FileBytes file) throws IOException, FrameProblem {
    FitsFacts.read(file);
    FitsDecoder.decode(file, Orientation.NORMAL);
  }

  private static void raw(FileBytes file) throws IOException, FrameProblem {
    FileKind.of(file, ImageFormat.RAW);
    CanonBoxes.metadata(file);
    CanonHeap.facts(file);
    RawLayout.check(file);
  }

  /** The library under it may throw anything, which {@link MetadataReading} holds. */
  private static void facts(FileBytes file) {
    for (ImageFormat format : ImageFormat.values()) {
      new ExifFacts(MetadataReading.of(file, format), format).facts();
    }
  }

  private static void streams(FileBytes file) throws IOException, FrameProblem {
    byte[] bytes = file.read(0, (int) file.length()).array();
    new LzwStream(new ByteArrayInputStream(bytes)).readNBytes(UNPACKED_MAX);
    new PackBitsStream(new ByteArrayInputStream(bytes)).readNBytes(UNPACKED_MAX);
    IccProfile.curve(bytes);
  }

  private static Path place() {
    try {
      Path shared = Path.of("/dev/shm");
      Path place =
          Files.isWritable(shared)
              ? Files.createTempFile(shared, "fuzz", ".bin")
              : Files.createTempFile("fuzz", ".bin");
      place.toFile().deleteOnExit();
      return place;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
