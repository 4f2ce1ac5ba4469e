package rondure.stars;

/**
 * Places inside a square cell that stay the same set when the cell is flipped or turned.
 *
 * <p>Statistics over some of a cell's pixels must not depend on which way up the camera was.
 */
final class CellPlaces {
  private CellPlaces() {}

  /**
   * Places along one side, from 0 to {@code side} − 1, symmetric about its middle.
   *
   * @param count how many, even
   */
  static int[] along(int side, int count) {
    int[] places = new int[count];
    for (int i = 0; i < count / 2; i++) {
      places[i] = (2 * i + 1) * side / (2 * count);
      places[count - 1 - i] = side - 1 - places[i];
    }
    return places;
  }
}
