package rondure.sim;

/**
 * Share of the zero point's electrons that each filter lets through, 0 to 1 and a little above.
 *
 * @param red through the red filter
 * @param green through the green filter, or the whole of a mono sensor
 * @param blue through the blue filter
 */
public record Throughput(double red, double green, double blue) {

  /** Every channel sees the same. */
  public static final Throughput GREY = new Throughput(1, 1, 1);

  public Throughput {
    Checks.within("throughput red", red, 0, 2);
    Checks.within("throughput green", green, 0, 2);
    Checks.within("throughput blue", blue, 0, 2);
  }

  /** The share for a channel: 0 red, 1 green, 2 blue. */
  double of(int channel) {
    return switch (channel) {
      case 0 -> red;
      case 1 -> green;
      case 2 -> blue;
      default -> throw new IllegalArgumentException("channel must be 0 to 2, was " + channel);
    };
  }
}
