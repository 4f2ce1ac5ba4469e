package rondure.sky;

/** A star of the map: the sum of its directions, and when it was last seen. */
final class MapStar {
  private static final double LONGEST_MEMORY = 12;

  final int number;
  private double x;
  private double y;
  private double z;
  private double weight;

  /** In how many frames. */
  int seen;

  int lastFrame;

  MapStar(int number) {
    this.number = number;
  }

  void add(Direction d, double errorPx, int frame) {
    double share = 1 / (errorPx * errorPx);
    // A bounded memory lets the star follow what the camera model leaves.
    double fade = seen >= LONGEST_MEMORY ? 1 - 1 / LONGEST_MEMORY : 1;
    x = fade * x + share * d.x();
    y = fade * y + share * d.y();
    z = fade * z + share * d.z();
    weight = fade * weight + share;
    seen++;
    lastFrame = frame;
  }

  /** Of the direction's standard error, px⁻². */
  double weight() {
    return weight;
  }

  Direction direction() {
    return Direction.of(x, y, z);
  }
}
