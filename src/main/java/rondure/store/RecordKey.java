package rondure.store;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Locale;
import rondure.base.Orientation;
import rondure.base.PathNames;
import rondure.crew.MeasureJob;
import rondure.crew.RecordJson;
import rondure.intake.ImageFormat;
import rondure.stars.StarSettings;

/**
 * Everything that a measurement follows from. Two equal keys have one measurement, whatever the
 * file is called and whenever it was written.
 *
 * @param contentDigest SHA-256 of all bytes of the file, hexadecimal
 * @param extension ending of the file's name, lower case: tells a DNG from a renamed TIFF
 * @param format what its metadata took it for
 * @param orientation how it is turned for display: the thumbnail is
 * @param settings of finding and measuring
 * @param program identity of the program that measures
 * @param rawDecoder what decodes RAW files besides; empty for other files
 */
record RecordKey(
    String contentDigest,
    String extension,
    ImageFormat format,
    Orientation orientation,
    StarSettings settings,
    String program,
    String rawDecoder) {

  static RecordKey of(String contentDigest, MeasureJob job, StarSettings settings, String program) {
    return new RecordKey(
        contentDigest,
        extension(job.path()),
        job.facts().format(),
        job.facts().orientation(),
        settings,
        program,
        job.facts().format() == ImageFormat.RAW ? MeasuringProgram.rawDecoder() : "");
  }

  /** The key as 64 hexadecimal digits: SHA-256 of all its parts. */
  String digest() {
    try {
      return Sha256.hex(RecordJson.write(this));
    } catch (IOException e) {
      throw new IllegalStateException("settings are finite numbers", e);
    }
  }

  private static String extension(Path file) {
    String name = PathNames.last(file);
    int dot = name.lastIndexOf('.');
    return dot < 0 ? "" : name.substring(dot + 1).toLowerCase(Locale.ROOT);
  }
}
