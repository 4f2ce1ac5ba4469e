package rondure.blur;

/** Independent Gaussian expectations of some parameters: precision 0 expects nothing. */
final class Prior {
  private final double[] target;
  private final double[] precision;

  Prior(int parameters) {
    target = new double[parameters];
    precision = new double[parameters];
  }

  /** Expects a parameter within an error. */
  Prior expect(int parameter, double value, double error) {
    target[parameter] = value;
    precision[parameter] = 1 / (error * error);
    return this;
  }

  double precision(int parameter) {
    return precision[parameter];
  }

  /** Minus the gradient of the loss. */
  double pull(int parameter, double value) {
    return precision[parameter] * (target[parameter] - value);
  }

  /** Half the sum of squares of what is off, in errors. */
  double loss(double[] values) {
    double sum = 0;
    for (int i = 0; i < values.length; i++) {
      sum += precision[i] * (values[i] - target[i]) * (values[i] - target[i]) / 2;
    }
    return sum;
  }
}
