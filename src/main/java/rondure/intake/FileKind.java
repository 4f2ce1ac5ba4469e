package rondure.intake;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import rondure.base.FrameProblem;

/** What a file is by its first bytes, whatever its name. */
enum FileKind {
  TIFF,
  PNG,
  JPEG,
  FITS,
  RAW,
  HEIC,
  AVIF,
  UNKNOWN;

  private static final int LOOKED_AT = 32;
  private static final int DNG_VERSION = 50_706;
  private static final int PHOTOMETRIC = 262;
  private static final int CFA = 32_803;
  private static final int LINEAR_RAW = 34_892;

  /**
   * Beginnings of RAW files that are not TIFFs, and of RAW files with a TIFF number of their own.
   */
  private static final List<String> RAW_STARTS =
      List.of(
          "IIRO",
          "IIRS",
          "MMOR",
          "IIU\0",
          "FUJIFILM",
          "FOVb",
          "\0MRM",
          "II\u001a\0\0\0HEAPCCDR",
          "ARRI");

  /**
   * The kind of an opened file.
   *
   * @param hint what its metadata took it for; decides only where the bytes do not
   */
  static FileKind of(FileBytes file, ImageFormat hint) throws IOException, FrameProblem {
    int count = (int) Math.min(LOOKED_AT, file.length());
    byte[] start = file.read(0, count).array();
    String text = new String(start, StandardCharsets.ISO_8859_1);
    if (text.startsWith("II*\0")
        || text.startsWith("MM\0*")
        || text.startsWith("II+\0")
        || text.startsWith("MM\0+")) {
      boolean makersRaw = hint == ImageFormat.RAW && !namedDng(file);
      return makersRaw || holdsSensorData(file) ? RAW : TIFF;
    }
    if (text.startsWith("\u0089PNG\r\n\u001a\n")) {
      return PNG;
    }
    if (text.startsWith("\u00ff\u00d8\u00ff")) {
      return JPEG;
    }
    if (text.startsWith("SIMPLE  =")) {
      return FITS;
    }
    if (text.startsWith("ftyp", 4)) {
      return ofBrand(text);
    }
    boolean raw = RAW_STARTS.stream().anyMatch(text::startsWith);
    return raw || hint == ImageFormat.RAW && named(start).isEmpty() ? RAW : UNKNOWN;
  }

  /**
   * A DNG always holds its DNGVersion (Digital Negative Specification 1.7.1), so that one without
   * is a TIFF that was renamed; what the makers' own formats hold differs.
   */
  private static boolean namedDng(FileBytes file) {
    return FileNames.extension(String.valueOf(file.path().getFileName())).equals("dng");
  }

  /** True for a TIFF that holds sensor values: a DNG or one of the makers' formats. */
  private static boolean holdsSensorData(FileBytes file) throws IOException, FrameProblem {
    if (file.length() > 10 && file.read(8, 2).getShort() == 0x4352) {
      return true;
    }
    for (TiffDirectory directory : TiffDirectory.all(file)) {
      long photometric = directory.number(PHOTOMETRIC, 0);
      if (directory.has(DNG_VERSION) || photometric == CFA || photometric == LINEAR_RAW) {
        return true;
      }
    }
    return false;
  }

  private static FileKind ofBrand(String text) {
    String brand = text.length() >= 12 ? text.substring(8, 12) : "";
    return switch (brand) {
      case "crx " -> RAW;
      case "avif", "avis" -> AVIF;
      case "heic", "heix", "hevc", "hevx", "heim", "heis", "mif1", "msf1" ->
          text.contains("avif") ? AVIF : HEIC;
      default -> UNKNOWN;
    };
  }

  /** What a file of unknown kind seems to be, as a noun for a message. */
  static Optional<String> named(byte[] start) {
    String text = new String(start, StandardCharsets.ISO_8859_1);
    if (text.startsWith("GIF8")) {
      return Optional.of("a GIF picture");
    }
    if (text.startsWith("8BPS")) {
      return Optional.of("a layered PSD file");
    }
    if (text.startsWith("BM") && start.length > 13 && ByteBuffer.wrap(start).getInt(6) == 0) {
      return Optional.of("a BMP picture");
    }
    if (text.startsWith("RIFF") && text.startsWith("WEBP", 8)) {
      return Optional.of("a WebP picture");
    }
    if (text.startsWith("%PDF")) {
      return Optional.of("a PDF document");
    }
    if (text.startsWith("PK\u0003\u0004")) {
      return Optional.of("a ZIP archive");
    }
    if (text.startsWith("ftyp", 4)) {
      return Optional.of("a video");
    }
    boolean printable = text.chars().allMatch(c -> c >= 32 && c < 127 || c >= 9 && c <= 13);
    return printable ? Optional.of("a text file") : Optional.empty();
  }
}
