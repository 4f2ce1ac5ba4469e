package rondure.sim;

/**
 * How frames are written.
 *
 * @param withoutExif leave all EXIF out
 * @param withoutSubSeconds leave the fraction of the second out
 * @param withoutOffset leave the clock's offset from UTC out
 * @param eightBit write TIFF with 8 bits and the sRGB curve instead of 16 linear bits
 * @param jpegQuality 1 to 100; 0 asks for 92
 * @param pushStops brightening of developed files (JPEG, 8-bit TIFF)
 * @param sharpening amount of in-camera unsharp masking of developed files, 0 = none
 */
public record FilePlan(
    boolean withoutExif,
    boolean withoutSubSeconds,
    boolean withoutOffset,
    boolean eightBit,
    int jpegQuality,
    double pushStops,
    double sharpening) {

  /** Everything recorded, 16 linear bits, ordinary JPEG. */
  public static final FilePlan PLAIN = new FilePlan(false, false, false, false, 0, 0, 0);

  public FilePlan {
    Checks.within("jpegQuality", jpegQuality, 0, 100);
    Checks.within("pushStops", pushStops, -8, 12);
    Checks.within("sharpening", sharpening, 0, 5);
    if (jpegQuality == 0) {
      jpegQuality = 92;
    }
  }
}
