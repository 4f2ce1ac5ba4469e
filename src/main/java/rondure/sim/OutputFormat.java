package rondure.sim;

import java.io.IOException;
import java.io.OutputStream;

/** The kinds of file that frames can be written as. */
public enum OutputFormat {
  /** 16-bit linear, Deflate with predictor; grey from a mono camera, RGB from a Bayer camera. */
  TIFF("tif"),
  /** 8-bit with the sRGB curve. */
  JPEG("jpg"),
  /** Raw counts of a Bayer camera. */
  DNG("dng");

  private final String extension;

  OutputFormat(String extension) {
    this.extension = extension;
  }

  public String extension() {
    return extension;
  }

  /**
   * Writes one frame.
   *
   * @throws IllegalArgumentException for a DNG from a mono camera
   */
  public void write(SimFrame frame, OutputStream out) throws IOException {
    switch (this) {
      case TIFF -> TiffFile.write(frame, out);
      case JPEG -> JpegFile.write(frame, out);
      case DNG -> DngFile.write(frame, out);
    }
  }
}
