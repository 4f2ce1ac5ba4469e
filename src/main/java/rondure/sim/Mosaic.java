package rondure.sim;

/** Colour filters in front of the photosites: none, or one of the four Bayer patterns. */
public enum Mosaic {
  MONO("GGGG"),
  RGGB("RGGB"),
  BGGR("BGGR"),
  GRBG("GRBG"),
  GBRG("GBRG");

  private final String cell;

  Mosaic(String cell) {
    this.cell = cell;
  }

  /** The filter at column x, row y: 0 red, 1 green, 2 blue; always green when mono. */
  public int channelAt(int x, int y) {
    return "RGB".indexOf(cell.charAt(2 * (y & 1) + (x & 1)));
  }

  public boolean isBayer() {
    return this != MONO;
  }
}
