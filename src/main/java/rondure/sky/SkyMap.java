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
  private static final int FORGET_AFTER_FRAMES = 6;
  private static final int SWEEPS = 2;

  private final FramePlacing placing;
  private final List<FrameStars> frames;
  private final Attitude[] attitudes;
  private final int[][] tracks;
  private final List<MapStar> stars = new ArrayList<>();
  private final List<MapStar> alive = new ArrayList<>();

  SkyMap(Camera camera, List<FrameStars> frames) {
    this.placing = new FramePlacing(camera);
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
    List<MapStar> visible = placing.visible(alive, guess);
    int[] numbers = none(link.frame());
    Optional<FramePlacing.Placed> placed = placing.place(visible, frames.get(link.frame()), guess);
    if (placed.isEmpty()) {
      accept(link.frame(), Attitude.foretold(guess), numbers);
      return;
    }
    int[] partner = placed.get().pairing().partner;
    for (int i = 0; i < visible.size(); i++) {
      if (partner[i] >= 0) {
        numbers[partner[i]] = visible.get(i).number;
      }
    }
    accept(link.frame(), placed.get().attitude(), numbers);
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
    links.parallelStream()
        .mapToInt(FrameLink::frame)
        .filter(number -> attitudes[number] != null)
        .forEach(number -> refit(number, fresh));
  }

  /** Reads no other attitude than the frame's own. */
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
    placing
        .fit(shared, Pairing.given(partner), frame, attitudes[number].turn())
        .ifPresent(better -> attitudes[number] = better);
  }
}
