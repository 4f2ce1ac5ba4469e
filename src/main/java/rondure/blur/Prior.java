package rondure.blur;

/**
 * Independent expectations of some parameters: Gaussian ones, and loose ones that a good reason
 * overrules. What is off a loose one by many errors is hardly pulled back: half of log(1 + u²) is
 * lost where a Gaussian would lose u²/2 (a Cauchy distribution, its curvature that of iteratively
 * reweighted least squares; Holland &amp; Welsch 1977, from memory).
 */
final class Prior {
  private final double[] target;
  private final double[] precision;

  /** How often the expectation counts; 0 for Gaussian ones, which count by their precision. */
  private final double[] times;

  Prior(int parameters) {
    target = new double[parameters];
    precision = new double[parameters];
    times = new double[parameters];
  }

  /** Expects a parameter within an error. */
  Prior expect(int parameter, double value, double error) {
    target[parameter] = value;
    precision[parameter] = 1 / (error * error);
    times[parameter] = 0;
    return this;
  }

  /**
   * Expects a parameter within an error, if nothing speaks against it.
   *
   * @param count how often this is to count
   */
  Prior expectLoosely(int parameter, double value, double error, double count) {
    target[parameter] = value;
    precision[parameter] = 1 / (error * error);
    times[parameter] = count;
    return this;
  }

  /** At a value of the parameter; 0 where nothing is expected. */
  double precision(int parameter, double value) {
    return times[parameter] > 0
        ? times[parameter] * precision[parameter] / (1 + squareOff(parameter, value))
        : precision[parameter];
  }

  private double squareOff(int parameter, double value) {
    double off = target[parameter] - value;
    return precision[parameter] * off * off;
  }

  /** Minus the gradient of the loss. */
  double pull(int parameter, double value) {
    return precision(parameter, value) * (target[parameter] - value);
  }

  /** Half the sum of squares of what is off, in errors, less where an expectation is loose. */
  double loss(double[] values) {
    double sum = 0;
    for (int i = 0; i < values.length; i++) {
      double square = squareOff(i, values[i]);
      sum += times[i] > 0 ? times[i] * Math.log1p(square) / 2 : square / 2;
    }
    return sum;
  }
}
