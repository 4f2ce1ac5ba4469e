package rondure.report;

/**
 * Weighs a number of a lens by what it adds to the second moment: found, absent, or neither.
 *
 * @param lens whose core it is held against
 */
record LensWeight(LensModel lens) {
  /** A disc of diameter D adds D²/16. */
  static final double PER_DISC = 1 / 16.0;

  /** Discs that differ by a along and across add a²/64. */
  static final double PER_SPLIT = 1 / 64.0;

  /** What widens the core by less than this is not worth a word. */
  static final double MATTERS = 1.05;

  /** Standard errors beyond which a number is not chance. */
  private static final double SURE = 2;

  /** What may widen the core by more than this is not to be called absent. */
  private static final double OPEN = 1.12;

  /**
   * So much of what softens the corners may be of another kind than it is booked as: measured
   * moments of wide stars are off by as much (docs/accuracy.md).
   */
  private static final double MIXED_SHARE = 0.25;

  /** Whether a number was found, ruled out, or neither. */
  enum Told {
    FOUND,
    SMALL,
    OPEN
  }

  /** A number that adds its square. */
  Told square(double size, double error, double perSquare) {
    double most = size + error;
    return told(size > error, size * size * perSquare, most * most * perSquare);
  }

  /** A number that adds itself. */
  Told plain(double size, double error, double per) {
    return told(size > error, size * per, (size + error) * per);
  }

  private Told told(boolean sure, double px2, double mostPx2) {
    if (sure && lens.widening(px2) >= MATTERS) {
      return Told.FOUND;
    }
    return lens.widening(mostPx2) >= OPEN ? Told.OPEN : Told.SMALL;
  }

  /** Twice the standard error of a number that adds its square, and what may be another's. */
  double squareError(double standardError, double perSquare) {
    return Math.hypot(SURE * standardError, Math.sqrt(mixedPx2() / perSquare));
  }

  /** The same of a number that adds itself. */
  double plainError(double standardError, double per) {
    return Math.hypot(SURE * standardError, mixedPx2() / per);
  }

  private double mixedPx2() {
    return MIXED_SHARE * lens.cornerAddedPx2();
  }
}
