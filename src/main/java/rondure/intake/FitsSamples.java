package rondure.intake;

import java.nio.ByteBuffer;
import java.util.OptionalDouble;
import rondure.base.FrameProblem;

/**
 * How the bytes of a FITS picture become physical values: BZERO + BSCALE * stored.
 *
 * @param bitsPerPixel BITPIX: 8, 16, 32, 64, -32 or -64
 * @param scale BSCALE
 * @param zero BZERO
 * @param blank the stored whole number that means: no value
 */
record FitsSamples(int bitsPerPixel, double scale, double zero, OptionalDouble blank) {

  /**
   * @throws FrameProblem when BITPIX is not one of the standard
   */
  static FitsSamples of(FitsHeader header) throws FrameProblem {
    long bits = header.whole("BITPIX", 0);
    if (bits != 8 && bits != 16 && bits != 32 && bits != 64 && bits != -32 && bits != -64) {
      throw new FrameProblem("the FITS has BITPIX " + bits + "; the file is damaged");
    }
    double scale = header.real("BSCALE").orElse(1);
    double zero = header.real("BZERO").orElse(0);
    if (scale == 0) {
      throw new FrameProblem("the FITS has BSCALE 0; the file is damaged");
    }
    if (Math.abs(scale) > CountRange.LARGEST) {
      throw new FrameProblem(
          "the FITS has BSCALE " + scale + ", which is no light; export it anew");
    }
    OptionalDouble blank = bits > 0 ? header.real("BLANK") : OptionalDouble.empty();
    return new FitsSamples((int) bits, scale, zero, blank);
  }

  int bytes() {
    return Math.abs(bitsPerPixel) / 8;
  }

  boolean floating() {
    return bitsPerPixel < 0;
  }

  /** Fills a row with the physical values of big-endian bytes; NaN where there is none. */
  void values(ByteBuffer source, float[] row) {
    double missing = blank.orElse(Double.NaN);
    for (int x = 0; x < row.length; x++) {
      double stored =
          switch (bitsPerPixel) {
            case 8 -> source.get(x) & 0xFF;
            case 16 -> source.getShort(2 * x);
            case 32 -> source.getInt(4 * x);
            case 64 -> source.getLong(8 * x);
            case -32 -> source.getFloat(4 * x);
            default -> source.getDouble(8 * x);
          };
      float value = stored == missing ? Float.NaN : (float) (zero + scale * stored);
      row[x] = Float.isFinite(value) ? value : Float.NaN;
    }
  }

  /**
   * White by SATURATE, by DATAMAX, or by what the stored type can hold.
   *
   * @param largest the largest value of the picture
   */
  Levels levels(FitsHeader header, double largest) {
    double stated = header.real("SATURATE").orElse(header.real("DATAMAX").orElse(0));
    if (stated > 0 && stated >= largest / 2) {
      return new Levels(stated, floating() ? 0 : Math.abs(scale), Linearity.TAGGED);
    }
    if (floating()) {
      return Levels.ofFloats(largest, Linearity.TAGGED);
    }
    double full =
        switch (bitsPerPixel) {
          case 8 -> zero + scale * 255;
          case 16 -> zero + scale * Short.MAX_VALUE;
          default -> largest <= CodeScale.WHITE_COUNTS ? CodeScale.WHITE_COUNTS : largest;
        };
    return new Levels(full > 0 ? full : Math.max(1, largest), Math.abs(scale), Linearity.TAGGED);
  }
}
