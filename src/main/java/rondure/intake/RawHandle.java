package rondure.intake;

import com.sun.jna.Memory;
import com.sun.jna.Native;
import com.sun.jna.Pointer;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import rondure.base.FrameProblem;

/** One RAW file opened and unpacked by LibRaw; closing it frees the native memory. */
final class RawHandle implements AutoCloseable {
  /** Colour index that LibRaw gives when every pixel has all its colours. */
  static final int ALL_COLOURS = 6;

  /** Values per pixel of the native image. */
  static final int COMPONENTS = 4;

  private static final int UNSUPPORTED = -2;
  private static final int PARAMETERS_SEARCHED = 512;
  private static final Pattern COLOURS = Pattern.compile("(RGBG|RGBE|GMCY|CMYG|GBTG|RGBW|RGBY)\0");

  private final LibRaw library;
  private final Pointer handle;
  private final LibRaw.DataErrorHandler onDamage;
  private Memory contents;
  private final ReadingLimits limits;
  private int damages;
  private boolean closed;

  private RawHandle(LibRaw library, ReadingLimits limits) throws FrameProblem {
    this.library = library;
    this.limits = limits;
    this.handle = library.libraw_init(LibRaw.SILENT);
    if (handle == null) {
      throw new FrameProblem("LibRaw could not start: out of memory");
    }
    this.onDamage = (data, file, offset) -> damages++;
    library.libraw_set_dataerror_handler(handle, onDamage, Pointer.NULL);
  }

  /**
   * Opens and unpacks a file into the native image, undemosaiced.
   *
   * @throws FrameProblem when LibRaw is absent, does not know the format or finds it damaged
   */
  static RawHandle open(FileBytes file) throws IOException, FrameProblem {
    RawHandle raw = new RawHandle(RawSupport.library(), file.limits());
    try {
      raw.openFile(file);
      raw.check(raw.library.libraw_unpack(raw.handle));
      raw.check(raw.library.libraw_raw2image(raw.handle));
      if (raw.damages > 0) {
        throw new FrameProblem(
            "the RAW data are damaged or cut short; copy the file again from the card");
      }
      return raw;
    } catch (FrameProblem | IOException | RuntimeException failure) {
      raw.close();
      throw failure;
    }
  }

  private void openFile(FileBytes file) throws IOException, FrameProblem {
    String path = file.path().toString();
    Charset native8bit = Charset.forName(System.getProperty("sun.jnu.encoding", "UTF-8"));
    if (native8bit.newEncoder().canEncode(path)) {
      check(library.libraw_open_file(handle, path));
    } else {
      contents = new Memory(Math.max(1, file.length()));
      long piece = 1 << 24;
      for (long at = 0; at < file.length(); at += piece) {
        ByteBuffer bytes = file.read(at, (int) Math.min(piece, file.length() - at));
        contents.write(at, bytes.array(), 0, bytes.capacity());
      }
      check(library.libraw_open_buffer(handle, contents, file.length()));
    }
    RasterSize.of(
        limits, library.libraw_get_raw_width(handle), library.libraw_get_raw_height(handle));
  }

  private void check(int error) throws FrameProblem {
    if (error == UNSUPPORTED) {
      throw new FrameProblem(
          "LibRaw "
              + library.libraw_version()
              + " does not know this RAW format, or the file is cut short; copy it again, install a"
              + " newer LibRaw, or export a linear 16-bit TIFF");
    }
    if (error != 0) {
      String reason = error > 0 ? "system error " + error : library.libraw_strerror(error);
      throw new FrameProblem(
          "LibRaw could not read the RAW ("
              + reason
              + "); copy it again from the card or export a linear 16-bit TIFF");
    }
  }

  /** Size of the native image: the visible part of the sensor. */
  RasterSize size() throws FrameProblem {
    return RasterSize.of(
        limits, library.libraw_get_iwidth(handle), library.libraw_get_iheight(handle));
  }

  /** True when the native image is far larger than the sensor: a grid turned by 45 degrees. */
  boolean turnedGrid() throws FrameProblem {
    long sensor =
        (long) library.libraw_get_raw_width(handle) * library.libraw_get_raw_height(handle);
    return size().areaPx() > sensor * 5 / 4;
  }

  /** Which of the four components holds the value of the site, or {@link #ALL_COLOURS}. */
  int component(int x, int y) {
    return library.libraw_COLOR(handle, y, x);
  }

  /** The code value of white, black not subtracted. */
  int maximum() {
    return library.libraw_get_color_maximum(handle);
  }

  /** The colour letters of the four components. */
  String colourLetters() throws FrameProblem {
    byte[] parameters = library.libraw_get_iparams(handle).getByteArray(0, PARAMETERS_SEARCHED);
    Matcher match = COLOURS.matcher(new String(parameters, StandardCharsets.ISO_8859_1));
    if (!match.find()) {
      throw new FrameProblem(
          "LibRaw "
              + library.libraw_version()
              + " does not name this sensor's colours; export a linear 16-bit TIFF");
    }
    return match.group(1);
  }

  /** Reads row y of the native image: four unsigned components per pixel. */
  void readRow(int y, short[] components) {
    image().read((long) y * components.length * Short.BYTES, components, 0, components.length);
  }

  /**
   * The black levels that LibRaw knows, by component. No exported function tells them, so white is
   * written into a corner of the image, black subtracted by LibRaw, and the corner read again.
   * Spoils the native image: to be called last.
   *
   * @return levels of the pixel (x, y) at [(y * {@link Mosaic#SIDE} + x) * 4 + component]
   */
  int[] takeBlackLevels(RasterSize size) {
    int columns = Math.min(Mosaic.SIDE, size.widthPx());
    int rows = Math.min(Mosaic.SIDE, size.heightPx());
    short[] white = new short[columns * COMPONENTS];
    java.util.Arrays.fill(white, (short) 0xFFFF);
    for (int y = 0; y < rows; y++) {
      image().write(rowOffset(size, y), white, 0, white.length);
    }
    subtractBlack(size, rows);
    int[] levels = new int[Mosaic.SIDE * Mosaic.SIDE * COMPONENTS];
    for (int y = 0; y < Mosaic.SIDE; y++) {
      short[] left = image().getShortArray(rowOffset(size, inside(y, rows)), white.length);
      for (int x = 0; x < Mosaic.SIDE; x++) {
        for (int component = 0; component < COMPONENTS; component++) {
          int rest = left[inside(x, columns) * COMPONENTS + component] & 0xFFFF;
          levels[(y * Mosaic.SIDE + x) * COMPONENTS + component] = 0xFFFF - rest;
        }
      }
    }
    return levels;
  }

  /** A place of the same phase inside an image smaller than the table. */
  private static int inside(int place, int count) {
    return place < count ? place : place % Math.max(1, count & ~1);
  }

  /**
   * Lets LibRaw subtract black. It would walk over the whole image where the first rows do, so its
   * note of the image's height is lowered for the time, when it is where it has always been: the
   * sizes follow the image pointer as unsigned shorts, which the size getters prove.
   */
  private void subtractBlack(RasterSize size, int rows) {
    long heightAt = Native.POINTER_SIZE + 6L * Short.BYTES;
    long widthAt = heightAt + Short.BYTES;
    boolean inPlace =
        shortAt(Native.POINTER_SIZE) == library.libraw_get_raw_height(handle)
            && shortAt(Native.POINTER_SIZE + Short.BYTES) == library.libraw_get_raw_width(handle)
            && shortAt(heightAt) == size.heightPx()
            && shortAt(widthAt) == size.widthPx();
    if (inPlace) {
      handle.setShort(heightAt, (short) rows);
      inPlace = library.libraw_get_iheight(handle) == rows;
    }
    library.libraw_subtract_black(handle);
    if (inPlace) {
      handle.setShort(heightAt, (short) size.heightPx());
    }
  }

  private int shortAt(long offset) {
    return handle.getShort(offset) & 0xFFFF;
  }

  private static long rowOffset(RasterSize size, int y) {
    return (long) y * size.widthPx() * COMPONENTS * Short.BYTES;
  }

  private Pointer image() {
    return handle.getPointer(0);
  }

  /** Frees the native memory; closing again does nothing. */
  @Override
  public void close() {
    if (closed) {
      return;
    }
    closed = true;
    library.libraw_close(handle);
    if (contents != null) {
      contents.close();
    }
    java.lang.ref.Reference.reachabilityFence(onDamage);
  }
}
