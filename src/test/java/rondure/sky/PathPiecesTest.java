package rondure.sky;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

class PathPiecesTest {
  private static final Vec NOISE = new Vec(1, 1, 1);

  private static Vec[] path(int count, double stepAt20, double slopeFrom40) {
    Random chance = new Random(4);
    Vec[] path = new Vec[count];
    for (int i = 0; i < count; i++) {
      double x = (i >= 20 ? stepAt20 : 0) + (i >= 40 ? slopeFrom40 * (i - 40) : 0);
      path[i] = new Vec(x + chance.nextGaussian(), chance.nextGaussian(), chance.nextGaussian());
    }
    return path;
  }

  private static List<PathPieces.Piece> pieces(Vec[] path) {
    double[] times = new double[path.length];
    java.util.Arrays.setAll(times, i -> i);
    return PathPieces.of(times, path, NOISE, 45);
  }

  @Test
  void noiseAloneIsOnePiece() {
    assertEquals(1, pieces(path(60, 0, 0)).size());
  }

  @Test
  void aStepAndABendAreFoundWhereTheyAre() {
    List<PathPieces.Piece> pieces = pieces(path(60, 12, 2));
    assertEquals(3, pieces.size());
    assertEquals(20, pieces.get(0).until());
    assertEquals(40, pieces.get(1).until(), 2);
    // Slope of a straight line through 20 points of noise 1: 1 / √(Σ (t - t̄)²) = 0.039.
    assertEquals(2, pieces.get(2).slope().x(), 4 * 0.039);
  }

  @Test
  void oneWildPointDoesNotBendItsNeighbours() {
    Vec[] path = path(30, 0, 0);
    path[10] = new Vec(200, 0, 0);
    List<PathPieces.Piece> pieces = pieces(path);
    // Two points lie on any line: the wild one may stand alone or with one neighbour, no more.
    assertTrue(pieces.stream().anyMatch(p -> p.from() <= 10 && p.until() > 10 && p.count() <= 2));
  }
}
