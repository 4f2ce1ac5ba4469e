package rondure.sky;

import java.util.List;
import java.util.Optional;

/** Fits one frame's attitude to stars whose directions are known. */
final class FramePlacing {
  private static final double CAPTURE_RADIUS_PX = 4;
  private static final double FINEST_RADIUS_PX = 0.8;
  private static final double KEPT_SIGMAS = 4.5;

  private final Camera camera;

  FramePlacing(Camera camera) {
    this.camera = camera;
  }

  /** An attitude, and which star of the frame each star of the map is under it. */
  record Placed(Attitude attitude, Pairing pairing) {}

  /** Pairs by places foretold and fits, twice; empty when nothing fits. */
  Optional<Placed> place(List<MapStar> visible, FrameStars frame, Rotation guess) {
    Rotation turn = guess;
    Optional<Attitude> found = Optional.empty();
    double radius = CAPTURE_RADIUS_PX;
    for (int round = 0; round < 2; round++) {
      Pairing pairing = Pairing.nearest(foretell(visible, turn), frame, radius);
      Optional<Attitude> fit = fit(visible, pairing, frame, turn);
      if (fit.isEmpty()) {
        break;
      }
      found = fit;
      turn = fit.get().turn();
      radius = Math.max(FINEST_RADIUS_PX, KEPT_SIGMAS * fit.get().misfitPx());
    }
    Rotation last = turn;
    double reach = radius;
    return found.map(f -> new Placed(f, Pairing.nearest(foretell(visible, last), frame, reach)));
  }

  /** Stars that may be in the frame. */
  List<MapStar> visible(List<MapStar> stars, Rotation turn) {
    Direction axis = turn.inverse().apply(new Direction(0, 0, 1));
    double reach = fieldCosine();
    return stars.stream().filter(s -> s.direction().dot(axis) > reach).toList();
  }

  private double fieldCosine() {
    double x = Math.max(0, camera.centreXPx());
    double y = Math.max(0, camera.centreYPx());
    double angle = camera.angleOffAxisRad(camera.centreXPx() + x, camera.centreYPx() + y);
    return Double.isNaN(angle) ? -1 : Math.cos(Math.min(Math.PI, angle * 1.05));
  }

  private Pairing.Foretold foretell(List<MapStar> visible, Rotation turn) {
    Pairing.Foretold places = new Pairing.Foretold(visible.size());
    for (int i = 0; i < visible.size(); i++) {
      places.set(i, camera.project(turn.apply(visible.get(i).direction())));
    }
    return places;
  }

  /** The attitude at which paired stars fit best; empty when too few do. */
  Optional<Attitude> fit(List<MapStar> visible, Pairing pairing, FrameStars frame, Rotation guess) {
    TurnFit.Pairs pairs = new TurnFit.Pairs(pairing.count);
    for (int i = 0; i < pairing.partner.length; i++) {
      int j = pairing.partner[i];
      if (j >= 0) {
        MapStar star = visible.get(i);
        double error = Math.sqrt(frame.errorPx[j] * frame.errorPx[j] + 1 / star.weight());
        pairs.add(star.direction(), frame.x[j], frame.y[j], error);
      }
    }
    return TurnFit.of(camera, pairs, guess)
        .map(fit -> new Attitude(fit.turn(), fit.errors(), fit.misfitPx(), fit.used()));
  }
}
