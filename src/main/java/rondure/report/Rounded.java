package rondure.report;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.Optional;

/** Numbers as the data files write them: six significant digits, plain notation, never NaN. */
final class Rounded {
  private static final MathContext SIX_DIGITS = new MathContext(6, RoundingMode.HALF_EVEN);

  private Rounded() {}

  /** The value with six significant digits, or empty when it is not finite. */
  static Optional<BigDecimal> of(double value) {
    if (!Double.isFinite(value)) {
      return Optional.empty();
    }
    if (value == 0) {
      return Optional.of(BigDecimal.ZERO);
    }
    BigDecimal rounded = new BigDecimal(value).round(SIX_DIGITS).stripTrailingZeros();
    return Optional.of(rounded.scale() < 0 ? rounded.setScale(0) : rounded);
  }

  static Optional<BigDecimal> of(Optional<Double> value) {
    return value.flatMap(Rounded::of);
  }
}
