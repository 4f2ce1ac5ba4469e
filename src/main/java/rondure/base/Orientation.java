package rondure.base;

/**
 * How a stored raster is turned to be shown: the EXIF Orientation tag (0x0112), values 1 to 8.
 *
 * <p>Everything is measured in stored (sensor) coordinates; only the report and the angles given to
 * people are in display coordinates. A position is mapped as (x, y) in a stored raster of width w
 * and height h, pixel centres at integers.
 */
public enum Orientation {
  NORMAL(1, false),
  MIRRORED(2, false),
  ROTATED_180(3, false),
  FLIPPED(4, false),
  TRANSPOSED(5, true),
  ROTATED_90_CW(6, true),
  TRANSVERSED(7, true),
  ROTATED_270_CW(8, true);

  private final int exifValue;
  private final boolean swapsSides;

  Orientation(int exifValue, boolean swapsSides) {
    this.exifValue = exifValue;
    this.swapsSides = swapsSides;
  }

  /** The orientation for an EXIF value; NORMAL for values outside 1 to 8. */
  public static Orientation ofExif(int exifValue) {
    return exifValue >= 1 && exifValue <= 8 ? values()[exifValue - 1] : NORMAL;
  }

  public int exifValue() {
    return exifValue;
  }

  /** True when the display is as wide as the stored raster is high. */
  public boolean swapsSides() {
    return swapsSides;
  }

  public int displayWidthPx(int widthPx, int heightPx) {
    return swapsSides ? heightPx : widthPx;
  }

  public int displayHeightPx(int widthPx, int heightPx) {
    return swapsSides ? widthPx : heightPx;
  }

  /** Display x of the stored position (x, y). */
  public double displayX(double x, double y, int widthPx, int heightPx) {
    return switch (this) {
      case NORMAL, FLIPPED -> x;
      case MIRRORED, ROTATED_180 -> widthPx - 1 - x;
      case TRANSPOSED, ROTATED_270_CW -> y;
      case ROTATED_90_CW, TRANSVERSED -> heightPx - 1 - y;
    };
  }

  /** Display y of the stored position (x, y). */
  public double displayY(double x, double y, int widthPx, int heightPx) {
    return switch (this) {
      case NORMAL, MIRRORED -> y;
      case ROTATED_180, FLIPPED -> heightPx - 1 - y;
      case TRANSPOSED, ROTATED_90_CW -> x;
      case TRANSVERSED, ROTATED_270_CW -> widthPx - 1 - x;
    };
  }

  /** A tensor in stored coordinates as seen in display coordinates. */
  public Moments display(Moments stored) {
    double xx = swapsSides ? stored.yyPx2() : stored.xxPx2();
    double yy = swapsSides ? stored.xxPx2() : stored.yyPx2();
    boolean keepsSign =
        this == NORMAL || this == ROTATED_180 || this == TRANSPOSED || this == TRANSVERSED;
    return new Moments(xx, keepsSign ? stored.xyPx2() : -stored.xyPx2(), yy);
  }
}
