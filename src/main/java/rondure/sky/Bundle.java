package rondure.sky;

import java.util.Arrays;
import java.util.Optional;
import org.hipparchus.linear.RealVector;

/** A camera, attitudes and stars that should explain a table of sightings. */
final class Bundle {
  private static final double LONGEST_STEP = 0.1;

  /** Half the square of a smaller step, times the place in a frame, is below 0.01 px. */
  private static final double STRAIGHT_STEP = 0.002;

  private static final double MOST_K1 = 0.5;

  /** k1 stays this share of the way to where the corner's image would turn back. */
  private static final double K1_MARGIN = 0.95;

  final SightingTable table;
  final int reference;
  private final Rotation[] attitudes;
  private final Direction[] stars;
  private Camera camera;

  /** First attitudes and directions for a camera. */
  Bundle(SightingTable table, Camera start) {
    this.table = table;
    reference = table.reference();
    camera = start;
    camera = kept(camera.focalLengthPx(), camera.k1());
    BundleStart first = new BundleStart(table, camera);
    attitudes = first.attitudes;
    stars = first.stars;
  }

  /** A copy that moves on its own. */
  Bundle(Bundle from) {
    table = from.table;
    reference = from.reference;
    camera = from.camera;
    attitudes = from.attitudes.clone();
    stars = from.stars.clone();
  }

  Camera camera() {
    return camera;
  }

  /** The steady spin that the attitudes show. */
  Optional<RateLine> rate(double[] seconds, double stepSeconds) {
    return RateLine.of(attitudes, seconds, stepSeconds);
  }

  /** Distance of each sighting from its prediction over its error; infinite out of view. */
  double[] misfits() {
    double[] all = new double[table.count()];
    Arrays.fill(all, Double.POSITIVE_INFINITY);
    for (int track = 0; track < table.tracks(); track++) {
      for (int i = table.firstOfTrack[track]; i < table.firstOfTrack[track + 1]; i++) {
        Optional<ImagePoint> at = predicted(i, track);
        if (at.isPresent()) {
          all[i] = Math.hypot(at.get().xPx() - table.xs[i], at.get().yPx() - table.ys[i]);
          all[i] /= table.errors[i];
        }
      }
    }
    return all;
  }

  private Optional<ImagePoint> predicted(int i, int track) {
    Rotation attitude = attitudes[table.frame[i]];
    return attitude == null || stars[track] == null
        ? Optional.empty()
        : camera.project(attitude.apply(stars[track]));
  }

  /** Enters all sightings with a weight into normal equations, and takes the stars out again. */
  BundleNormal.Track[] fill(BundleNormal normal, double[] weights) {
    BundleNormal.Track[] tracks = new BundleNormal.Track[table.tracks()];
    for (int track = 0; track < tracks.length; track++) {
      int first = table.firstOfTrack[track];
      int end = table.firstOfTrack[track + 1];
      tracks[track] = normal.new Track(end - first);
      for (int i = first; i < end; i++) {
        if (weights[i] > 0) {
          SightingLine line = line(i, track);
          tracks[track].add(table.frame[i], weights[i], line.slopes, line.misfit);
        }
      }
      tracks[track].eliminate();
    }
    return tracks;
  }

  private SightingLine line(int i, int track) {
    return new SightingLine(
        camera, attitudes[table.frame[i]], stars[track], table.xs[i], table.ys[i]);
  }

  /**
   * Moves everything by a step.
   *
   * @return how far ln f or k1 went
   */
  double move(RealVector step, BundleNormal.Track[] tracks, double[] weights) {
    double asked = Math.max(Math.abs(step.getEntry(0)), Math.abs(step.getEntry(1)));
    double share = Math.min(1, LONGEST_STEP / Math.max(1e-300, asked));
    double[] whole = step.toArray();
    for (int track = 0; track < tracks.length; track++) {
      double[] own = tracks[track].starStep(whole);
      turnStar(track, share * own[0], share * own[1]);
    }
    for (int f = 0; f < table.frames(); f++) {
      if (attitudes[f] != null && f != reference) {
        int at = BundleNormal.column(f);
        Rotation turn =
            Rotation.ofVector(share * whole[at], share * whole[at + 1], share * whole[at + 2]);
        attitudes[f] = attitudes[f].then(turn);
      }
    }
    Camera before = camera;
    camera =
        kept(camera.focalLengthPx() * Math.exp(share * whole[0]), camera.k1() + share * whole[1]);
    double moved =
        Math.max(
            Math.abs(Math.log(camera.focalLengthPx() / before.focalLengthPx())),
            Math.abs(camera.k1() - before.k1()));
    if (moved > STRAIGHT_STEP) {
      settleStars(weights);
    }
    return moved;
  }

  /**
   * Brings each star to where the moved camera's sightings want it: what its straight step lacks
   * (the square of a change in scale times a place far from the centre) is many pixels.
   */
  private void settleStars(double[] weights) {
    for (int track = 0; track < stars.length; track++) {
      BundleNormal.Star star = new BundleNormal.Star();
      for (int i = table.firstOfTrack[track]; i < table.firstOfTrack[track + 1]; i++) {
        if (weights[i] > 0 && predicted(i, track).isPresent()) {
          SightingLine line = line(i, track);
          star.add(weights[i], line.slopes, line.misfit);
        }
      }
      double[] step = star.step();
      turnStar(track, step[0], step[1]);
    }
  }

  private void turnStar(int track, double one, double two) {
    if (stars[track] != null) {
      Spin[] turns = SightingLine.starTurns(stars[track]);
      Spin turn = turns[0].times(one).plus(turns[1].times(two));
      stars[track] = Rotation.of(turn, 1).apply(stars[track]);
    }
  }

  /** The camera with k1 kept where the whole frame's image grows with the angle. */
  private Camera kept(double focalLengthPx, double k1) {
    double corner = Math.hypot(camera.centreXPx(), camera.centreYPx()) / focalLengthPx;
    double least = -K1_MARGIN * 4 / (27 * corner * corner);
    return camera.with(focalLengthPx, Math.max(least, Math.min(MOST_K1, k1)));
  }
}
