package rondure.sky;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;

/**
 * Matches each frame of a scene with an earlier one: by the last pair's motion where there is one,
 * by a search where that fails, and across gaps. A frame that matches none starts a block of its
 * own, to which later ones may be linked.
 */
final class StarChain {
  /** Fewer stars fix no rotation that chance could not make. */
  static final int LEAST_STARS = 4;

  /** After many failures only as many frames are searched: cloud or a covered lens lasts. */
  private static final int FEWEST_SEARCHES = 2;

  private static final double RADIUS_PX = 12;
  private static final double STANDING_SHARE = 0.15;
  private static final double MOVING_SHARE = 0.33;
  private static final double LEAST_SHARE = 0.2;

  private final Camera camera;
  private final List<FrameStars> frames;
  private final SceneClock clock;
  private final LinkedFrames linked;
  private int failures;
  private Optional<Spin> spin = Optional.empty();
  private Optional<Rotation> lastTurn = Optional.empty();

  private StarChain(Camera camera, List<FrameStars> frames, SceneClock clock) {
    this.camera = camera;
    this.frames = frames;
    this.clock = clock;
    this.linked = new LinkedFrames(frames.size());
  }

  /** Links in the order in which they were made: a parent comes before its children. */
  static List<FrameLink> of(Camera camera, List<FrameStars> frames, SceneClock clock) {
    StarChain chain = new StarChain(camera, frames, clock);
    int blocks = 0;
    for (int i = 0; i < frames.size(); i++) {
      if (frames.get(i).count < LEAST_STARS) {
        continue;
      }
      Optional<FrameLink> link = chain.link(i);
      chain.add(link.orElse(new FrameLink(i, i, blocks, Rotation.NONE, List.of())));
      blocks += link.isEmpty() ? 1 : 0;
    }
    return chain.linked.links();
  }

  /**
   * Matches the same pairs of frames anew, seen through a better camera.
   *
   * @param links as first made, in their order
   */
  static List<FrameLink> again(Camera camera, List<FrameStars> frames, List<FrameLink> links) {
    return links.parallelStream().map(link -> again(camera, frames, link)).toList();
  }

  private static FrameLink again(Camera camera, List<FrameStars> frames, FrameLink link) {
    if (link.isFirst()) {
      return link;
    }
    FramePair pair = new FramePair(camera, frames.get(link.parent()), frames.get(link.frame()));
    return FrameMatch.refined(pair, link.turn(), RADIUS_PX, 0)
        .filter(FrameMatch::isCertain)
        .map(m -> link.with(m.turn(), List.of(m.pairs())))
        .orElse(link);
  }

  private void add(FrameLink link) {
    linked.add(link);
    if (!link.isFirst()) {
      Optional<Double> seconds = seconds(link.parent(), link.frame());
      spin =
          seconds
              .filter(s -> Math.abs(s) > clock.stepSeconds() / 4)
              .map(s -> link.turn().perSecond().times(1 / s))
              .or(() -> spin);
      lastTurn = Optional.of(link.turn());
    }
  }

  private Optional<Double> seconds(int from, int to) {
    return clock.secondsOf(from).flatMap(a -> clock.secondsOf(to).map(b -> b - a));
  }

  private Optional<FrameLink> link(int frame) {
    List<Integer> recent = linked.recent();
    for (int parent : recent) {
      Optional<FrameLink> link = foretold(parent, frame);
      if (link.isPresent()) {
        return link;
      }
    }
    LinkedHashSet<Integer> tries = new LinkedHashSet<>(recent);
    tries.addAll(linked.bridges());
    int most = Math.max(FEWEST_SEARCHES, tries.size() - failures);
    for (int parent : tries.stream().limit(most).toList()) {
      Optional<FrameLink> link = searched(parent, frame);
      if (link.isPresent()) {
        failures = 0;
        return link;
      }
    }
    failures++;
    return Optional.empty();
  }

  private Optional<FrameLink> foretold(int parent, int frame) {
    Optional<Rotation> guess =
        seconds(parent, frame).flatMap(s -> spin.map(v -> Rotation.of(v, s))).or(() -> lastTurn);
    FramePair pair = new FramePair(camera, frames.get(parent), frames.get(frame));
    return guess
        .flatMap(turn -> FrameMatch.refined(pair, turn, RADIUS_PX, 0))
        .filter(FrameMatch::isCertain)
        .filter(match -> match.share(pair.from(), pair.to()) >= LEAST_SHARE)
        .map(match -> link(parent, frame, match));
  }

  private Optional<FrameLink> searched(int parent, int frame) {
    FramePair pair = new FramePair(camera, frames.get(parent), frames.get(frame));
    double expectedPx =
        seconds(parent, frame)
            .map(s -> Math.abs(s) * SkyMotion.SIDEREAL_RATE_RAD_PER_S * camera.focalLengthPx())
            .orElse(0.0);
    double standingPx = Math.max(1, STANDING_SHARE * expectedPx);
    FrameMatch best = null;
    for (FrameMatch match : TurnSearch.matches(pair, standingPx)) {
      double handicap = best == null ? 0 : best.pairing().count * MOVING_SHARE;
      boolean stands = match.motionPx() < standingPx;
      if (best == null
          || (stands && match.pairing().count * MOVING_SHARE > best.pairing().count)
          || (!stands && match.pairing().count > handicap)) {
        best = match;
      }
    }
    return Optional.ofNullable(best).map(match -> link(parent, frame, match));
  }

  private FrameLink link(int parent, int frame, FrameMatch found) {
    FramePair pair = new FramePair(camera, frames.get(parent), frames.get(frame));
    boolean[] followed = new boolean[pair.from().count];
    linked.of(parent).pairs().forEach(stars -> followed[stars[1]] = true);
    FrameMatch match = BrighterImage.of(pair, found, followed);
    return new FrameLink(
        frame, parent, linked.of(parent).block(), match.turn(), List.of(match.pairs()));
  }
}
