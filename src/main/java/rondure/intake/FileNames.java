package rondure.intake;

import java.util.Arrays;
import java.util.HashSet;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;

/** What file names say: the format by extension, the stem, the kinds that are left alone. */
final class FileNames {
  private static final Set<String> RAW =
      set(
          "3fr ari arw bay cap cr2 cr3 crw dcr dcs dng erf fff gpr iiq k25 kdc mdc mef mos mrw nef"
              + " nrw orf pef ptx pxn raf raw rw2 rwl sr2 srf srw x3f");
  private static final Set<String> TIFF = set("tif tiff");
  private static final Set<String> PNG = set("png");
  private static final Set<String> JPEG = set("jpg jpeg jpe jfif");
  private static final Set<String> FITS = set("fit fits fts");
  private static final Set<String> HEIC = set("heic heif hif");
  private static final Set<String> AVIF = set("avif");
  private static final Set<String> VIDEO =
      set("mov mp4 avi mts m2ts mkv m4v mpg mpeg 3gp wmv webm insv crm");
  private static final Set<String> SIDECAR = set("thm lrv wav aae dop pp3 xml");

  private static final String SIDECAR_BACKUP = ".before-rondure";

  private static final String COPY_WORDS =
      "web|edit|edited|small|large|full|copy|export|exported|resized|preview|print";

  private FileNames() {}

  static Optional<ImageFormat> format(String name) {
    String ending = extension(name);
    if (RAW.contains(ending)) {
      return Optional.of(ImageFormat.RAW);
    } else if (TIFF.contains(ending)) {
      return Optional.of(ImageFormat.TIFF);
    } else if (PNG.contains(ending)) {
      return Optional.of(ImageFormat.PNG);
    } else if (JPEG.contains(ending)) {
      return Optional.of(ImageFormat.JPEG);
    } else if (FITS.contains(ending)) {
      return Optional.of(ImageFormat.FITS);
    } else if (HEIC.contains(ending)) {
      return Optional.of(ImageFormat.HEIC);
    }
    return AVIF.contains(ending) ? Optional.of(ImageFormat.AVIF) : Optional.empty();
  }

  /** The kind of a file that is no picture: video, sidecar or other. */
  static String ignoredKind(String name) {
    String ending = extension(name);
    if (VIDEO.contains(ending)) {
      return "video";
    }
    return SIDECAR.contains(ending) ? "sidecar" : "other";
  }

  /**
   * True for an XMP sidecar or the backup of one. They belong to their pictures and are not
   * counted: a run that writes some must not change what the next one tells of the folder.
   */
  static boolean isXmpSidecar(String name) {
    String lower = name.toLowerCase(Locale.ROOT);
    return lower.endsWith(".xmp") || lower.endsWith(".xmp" + SIDECAR_BACKUP);
  }

  /** The name without its extension, lower case. */
  static String stem(String relativeName) {
    String name = relativeName.substring(relativeName.lastIndexOf('/') + 1);
    int dot = name.lastIndexOf('.');
    return (dot > 0 ? name.substring(0, dot) : name).toLowerCase(Locale.ROOT);
  }

  /** A lower-case stem without the words that copies get behind them: _web, -edit, copy. */
  static String withoutWords(String stem) {
    String rest = stem.replaceFirst("([-_ ]+(" + COPY_WORDS + "))+$", "");
    return rest.isEmpty() ? stem : rest;
  }

  /** A stem without a number of one or two digits behind it: -1, _12, (2). */
  static String withoutNumber(String stem) {
    String rest = stem.replaceFirst("([-_ ]\\d{1,2}|\\s?\\(\\d{1,3}\\))$", "");
    return rest.isEmpty() ? stem : rest;
  }

  static String folder(String relativeName) {
    int slash = relativeName.lastIndexOf('/');
    return slash < 0 ? "" : relativeName.substring(0, slash);
  }

  /** The letters after the last dot, lower case; empty when there is none. */
  static String extension(String name) {
    int dot = name.lastIndexOf('.');
    return dot < 0 ? "" : name.substring(dot + 1).toLowerCase(Locale.ROOT);
  }

  private static Set<String> set(String words) {
    return new HashSet<>(Arrays.asList(words.split(" ")));
  }
}
