package rondure.sky;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * The stars of one block of frames in axes that turn with the sky, and each frame's attitude: frame
 * after frame is fitted to the stars known so far, then both are improved in turn. Costs grow with
 * the frames, not with their pairs.
 */
final class SkyMap {
  private static final double CAPTURE_RADIUS_PX = 4;
  private static final double FINEST_RADIUS_PX = 0.8;
  private static final double KEPT_SIGMAS = 4.5;
  private static final int FORGET_AFTER_FRAMES = 6;
  private static final int SWEEPS = 2;

  private final Camera camera;
  private final List<FrameStars> frames;
  private final Attitude[] attitudes;
  private final int[][] tracks;
  private final List<MapStar> stars = new ArrayList<>();
  private final List<MapStar> alive = new ArrayList<>();

  SkyMap(Camera camera, List<FrameStars> frames) {
    this.camera = camera;
    this.frames = frames;
    this.attitudes = new Attitude[frames.size()];
    this.tracks = new int[frames.size()][];
  }

  /** Attitude of a frame, when it belongs to the block and fits. */
  Optional<Attitude> attitude(int frame) {
    return Optional.ofNullable(attitudes[frame]);
  }

  /** For each star of a frame its number in the map, or -1. */
  Optional<int[]> tracks(int frame) {
    return Optional.ofNullable(tracks[frame]).map(int[]::clone);
  }

  int starCount() {
    return stars.size();
  }

  /** Builds the map from the links of one block, parents first. */
  void build(List<FrameLink> links) {
    for (FrameLink link : links) {
      if (link.isFirst()) {
        accept(link.frame(), Attitude.foretold(Rotation.NONE), none(link.frame()));
      } else if (attitudes[link.parent()] != null) {
        place(link);
      }
    }
    for (int sweep = 0; sweep < SWEEPS; sweep++) {
      improve(links);
    }
  }

  private int[] none(int frame) {
    int[] none = new int[frames.get(frame).count];
    java.util.Arrays.fill(none, -1);
    return none;
  }

  private void place(FrameLink link) {
    Rotation guess = attitudes[link.parent()].turn().then(link.turn());
    List<MapStar> visible = visible(guess);
    FrameStars frame = frames.get(link.frame());
    Rotation turn = guess;
    Attitude found = null;
    Pairing pairing = null;
    double radius = CAPTURE_RADIUS_PX;
    for (int round = 0; round < 2; round++) {
      pairing = Pairing.nearest(foretell(visible, turn), frame, radius);
      Optional<Attitude> fit = fit(visible, pairing, frame, turn);
      if (fit.isEmpty()) {
        break;
      }
      found = fit.get();
      turn = found.turn();
      radius = Math.max(FINEST_RADIUS_PX, KEPT_SIGMAS * found.misfitPx());
    }
    if (found == null) {
      accept(link.frame(), Attitude.foretold(guess), none(link.frame()));
      return;
    }
    pairing = Pairing.nearest(foretell(visible, turn), frame, radius);
    int[] numbers = none(link.frame());
    for (int i = 0; i < visible.size(); i++) {
      if (pairing.partner[i] >= 0) {
        numbers[pairing.partner[i]] = visible.get(i).number;
      }
    }
    accept(link.frame(), found, numbers);
  }

  private List<MapStar> visible(Rotation turn) {
    Direction axis = turn.inverse().apply(new Direction(0, 0, 1));
    double reach = fieldCosine();
    return alive.stream().filter(s -> s.direction().dot(axis) > reach).toList();
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

  private Optional<Attitude> fit(
      List<MapStar> visible, Pairing pairing, FrameStars frame, Rotation guess) {
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

  private void accept(int number, Attitude attitude, int[] numbers) {
    FrameStars frame = frames.get(number);
    Rotation back = attitude.turn().inverse();
    for (int j = 0; j < frame.count; j++) {
      MapStar star;
      if (numbers[j] >= 0) {
        star = stars.get(numbers[j]);
      } else {
        star = new MapStar(stars.size());
        stars.add(star);
        alive.add(star);
        numbers[j] = star.number;
      }
      star.add(back.apply(frame.direction(j)), frame.errorPx[j], number);
    }
    alive.removeIf(s -> s.seen == 1 && Math.abs(number - s.lastFrame) > FORGET_AFTER_FRAMES);
    attitudes[number] = attitude;
    tracks[number] = numbers;
  }

  /** New directions from all frames, then new attitudes from them. */
  private void improve(List<FrameLink> links) {
    List<MapStar> fresh = new ArrayList<>();
    for (MapStar star : stars) {
      fresh.add(new MapStar(star.number));
    }
    for (FrameLink link : links) {
      int number = link.frame();
      if (attitudes[number] != null) {
        Rotation back = attitudes[number].turn().inverse();
        FrameStars frame = frames.get(number);
        for (int j = 0; j < frame.count; j++) {
          fresh
              .get(tracks[number][j])
              .add(back.apply(frame.direction(j)), frame.errorPx[j], number);
        }
      }
    }
    for (FrameLink link : links) {
      if (attitudes[link.frame()] != null) {
        refit(link.frame(), fresh);
      }
    }
  }

  private void refit(int number, List<MapStar> fresh) {
    FrameStars frame = frames.get(number);
    List<MapStar> shared = new ArrayList<>();
    List<Integer> mine = new ArrayList<>();
    for (int j = 0; j < frame.count; j++) {
      MapStar star = fresh.get(tracks[number][j]);
      if (star.seen >= 2) {
        shared.add(star);
        mine.add(j);
      }
    }
    int[] partner = mine.stream().mapToInt(Integer::intValue).toArray();
    fit(shared, Pairing.given(partner), frame, attitudes[number].turn())
        .ifPresent(better -> attitudes[number] = better);
  }
}
