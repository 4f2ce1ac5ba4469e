package rondure.intake;

import java.util.Objects;
import rondure.base.JpegPicture;
import rondure.base.PixelPlane;

/**
 * The pixels of one file, ready to be measured, in stored (sensor) orientation.
 *
 * <p>Developed colour files give their green channel; RAW mosaics their green photosites.
 */
public final class DecodedFrame {
  private final PixelPlane plane;
  private final double whiteLevelCounts;
  private final double codeStepCounts;
  private final Linearity linearity;
  private final JpegPicture thumbnail;

  /**
   * @param plane linear counts above black
   * @param whiteLevelCounts counts above black at which a pixel is full
   * @param codeStepCounts distance of neighbouring code values near black in counts (noise floor)
   * @param linearity how the values became linear
   * @param thumbnail picture of at most 640 px on its longer side, display orientation, stretched
   *     so that the night can be seen
   */
  public DecodedFrame(
      PixelPlane plane,
      double whiteLevelCounts,
      double codeStepCounts,
      Linearity linearity,
      JpegPicture thumbnail) {
    if (!(whiteLevelCounts > 0)) {
      throw new IllegalArgumentException("whiteLevelCounts must be > 0, was " + whiteLevelCounts);
    }
    if (!(codeStepCounts >= 0)) {
      throw new IllegalArgumentException("codeStepCounts must be >= 0, was " + codeStepCounts);
    }
    this.plane = Objects.requireNonNull(plane, "plane");
    this.whiteLevelCounts = whiteLevelCounts;
    this.codeStepCounts = codeStepCounts;
    this.linearity = Objects.requireNonNull(linearity, "linearity");
    this.thumbnail = Objects.requireNonNull(thumbnail, "thumbnail");
  }

  public PixelPlane plane() {
    return plane;
  }

  public double whiteLevelCounts() {
    return whiteLevelCounts;
  }

  public double codeStepCounts() {
    return codeStepCounts;
  }

  public Linearity linearity() {
    return linearity;
  }

  public JpegPicture thumbnail() {
    return thumbnail;
  }
}
