package rondure.intake;

import java.util.Arrays;

/**
 * Which colour each photosite of a sensor sees: a small pattern that repeats over the raster.
 *
 * <p>Patterns that repeat after 1, 2, 3, 4, 6, 8, 12, 16 or 24 sites fit the table's side.
 */
final class Mosaic {
  /** Side of the table, a multiple of the periods of all patterns in use. */
  static final int SIDE = 48;

  private final char[] letters;

  private Mosaic(char[] letters) {
    this.letters = letters;
  }

  /** Tells the colour letter (R, G, B, C, M, Y, E …) at column x and row y. */
  @FunctionalInterface
  interface Pattern {
    char at(int x, int y);
  }

  static Mosaic of(Pattern pattern) {
    char[] letters = new char[SIDE * SIDE];
    for (int i = 0; i < letters.length; i++) {
      letters[i] = pattern.at(i % SIDE, i / SIDE);
    }
    return new Mosaic(letters);
  }

  /** A pattern of 2 x 2 sites, row by row, such as RGGB. */
  static Mosaic ofCell(String cell) {
    return of((x, y) -> cell.charAt(2 * (y % 2) + x % 2));
  }

  char at(int x, int y) {
    return letters[y % SIDE * SIDE + x % SIDE];
  }

  /** The letters of row y, from column 0 on; {@value #SIDE} of them. */
  char[] row(int y) {
    int start = y % SIDE * SIDE;
    return Arrays.copyOfRange(letters, start, start + SIDE);
  }

  /** True when green sits exactly where x + y is even, or exactly where it is odd. */
  boolean greenCheckerboard() {
    int parity = greenParity();
    for (int i = 0; i < letters.length; i++) {
      boolean onParity = (i % SIDE + i / SIDE) % 2 == parity;
      if (onParity != (letters[i] == 'G')) {
        return false;
      }
    }
    return true;
  }

  /** (x + y) mod 2 of the green sites of a checkerboard. */
  int greenParity() {
    return at(0, 0) == 'G' ? 0 : 1;
  }

  /** Part of the sites that are green. */
  double greenShare() {
    int green = 0;
    for (char letter : letters) {
      green += letter == 'G' ? 1 : 0;
    }
    return (double) green / letters.length;
  }

  /** True when the sites are red, green and blue only. */
  boolean primaries() {
    for (char letter : letters) {
      if (letter != 'R' && letter != 'G' && letter != 'B') {
        return false;
      }
    }
    return true;
  }

  /** Side of the smallest block that is sure to hold every colour, px. */
  int blockPx() {
    return greenCheckerboard() ? 2 : 3;
  }
}
