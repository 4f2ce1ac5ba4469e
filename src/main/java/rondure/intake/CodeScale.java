package rondure.intake;

/**
 * Turns the code values of a developed file into linear counts in which white is {@value
 * #WHITE_COUNTS}, whatever the depth of the file.
 */
final class CodeScale {
  /** Counts of white, chosen so that linear 16-bit files keep their code values. */
  static final double WHITE_COUNTS = 65_535;

  private static final int LARGEST_TABLE = 65_535;

  private final ToneCurve curve;
  private final double largestCode;
  private final boolean inverted;
  private final float[] table;

  /**
   * @param curve the tone curve to undo
   * @param largestCode the code of white; 1 for floating-point files
   * @param wholeNumbers true when codes are integers from 0 to {@code largestCode}
   * @param inverted true when code 0 is white
   */
  CodeScale(ToneCurve curve, double largestCode, boolean wholeNumbers, boolean inverted) {
    if (!(largestCode > 0)) {
      throw new IllegalArgumentException("largestCode must be > 0, was " + largestCode);
    }
    this.curve = curve;
    this.largestCode = largestCode;
    this.inverted = inverted;
    this.table = wholeNumbers && largestCode <= LARGEST_TABLE ? table() : new float[0];
  }

  private float[] table() {
    float[] counts = new float[(int) largestCode + 1];
    for (int code = 0; code < counts.length; code++) {
      counts[code] = counts(code);
    }
    return counts;
  }

  private float counts(double code) {
    double fraction = inverted ? 1 - code / largestCode : code / largestCode;
    if (curve == ToneCurve.LINEAR) {
      return (float) (WHITE_COUNTS * fraction);
    }
    return (float) (WHITE_COUNTS * (fraction <= 1 ? curve.light(fraction) : fraction));
  }

  /** Replaces the first {@code count} codes by counts; what is not finite becomes NaN. */
  void toCounts(float[] codes, int count) {
    if (table.length > 0) {
      for (int i = 0; i < count; i++) {
        codes[i] = table[(int) codes[i]];
      }
      return;
    }
    for (int i = 0; i < count; i++) {
      codes[i] = Float.isFinite(codes[i]) ? counts(codes[i]) : Float.NaN;
    }
  }

  /** Counts between neighbouring codes near black, for files of whole numbers. */
  double stepCounts() {
    return WHITE_COUNTS / largestCode * curve.slopeNearBlack();
  }
}
