package rondure.sim;

/** Smooth random patterns: values on a lattice, eased between, summed over octaves. */
final class Texture {
  private final long seed;

  Texture(long seed) {
    this.seed = seed;
  }

  /** About -1 to 1, features of size 1 and finer; half the strength with each octave. */
  double at(double x, double y, int octaves) {
    double sum = 0;
    double strength = 1;
    double total = 0;
    double scale = 1;
    for (int i = 0; i < octaves; i++) {
      sum += strength * lattice(x * scale + 17.3 * i, y * scale - 9.1 * i);
      total += strength;
      strength /= 2;
      scale *= 2;
    }
    return sum / total;
  }

  private double lattice(double x, double y) {
    long column = (long) Math.floor(x);
    long row = (long) Math.floor(y);
    double right = eased(x - column);
    double down = eased(y - row);
    double top = mix(Chance.at(seed, column, row), Chance.at(seed, column + 1, row), right);
    double bottom =
        mix(Chance.at(seed, column, row + 1), Chance.at(seed, column + 1, row + 1), right);
    return 2 * mix(top, bottom, down) - 1;
  }

  private static double eased(double t) {
    return t * t * (3 - 2 * t);
  }

  private static double mix(double from, double to, double share) {
    return from + share * (to - from);
  }
}
