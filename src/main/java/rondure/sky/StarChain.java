package rondure.sky;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * Matches each frame of a scene with an earlier one: by the last pair's motion where there is one,
 * by a search where that fails, and across gaps. A frame that matches none starts a block of its
 * own, to which later ones may be linked.
 */
final class StarChain {
  /** Fewer stars fix no rotation that chance could not make. */
  static final int LEAST_STARS = 4;

  private static final int RECENT = 3;
  private static final int BRIDGES = 6;

  /** After many failures only as many frames are searched: cloud or a covered lens lasts. */
  private static final int FEWEST_SEARCHES = 2;

  private static final double RADIUS_PX = 12;
  private static final double STANDING_SHARE = 0.15;
  private static final double MOVING_SHARE = 0.33;
  private static final double LEAST_SHARE = 0.2;

  private final Camera camera;
  private final List<FrameStars> frames;
  private final SceneClock clock;
  private final List<Link> links = new ArrayList<>();
  private final Link[] linkOf;
  private final Set<Integer> linkedBlocks = new HashSet<>();
  private int failures;
  private Optional<Spin> spin = Optional.empty();
  private Optional<Rotation> lastTurn = Optional.empty();

  /**
   * A frame with the earlier one it was matched to; a frame that starts a block is its own parent.
   *
   * @param frame number
   * @param parent number
   * @param block number, from 0
   * @param turn from the parent's camera axes to the frame's
   * @param pairs matched stars: the parent's, the frame's
   */
  record Link(int frame, int parent, int block, Rotation turn, List<int[]> pairs) {
    Link {
      pairs = List.copyOf(pairs);
    }

    boolean isFirst() {
      return frame == parent;
    }

    Link with(Rotation better, List<int[]> betterPairs) {
      return new Link(frame, parent, block, better, betterPairs);
    }
  }

  private StarChain(Camera camera, List<FrameStars> frames, SceneClock clock) {
    this.camera = camera;
    this.frames = frames;
    this.clock = clock;
    this.linkOf = new Link[frames.size()];
  }

  /** Links in the order in which they were made: a parent comes before its children. */
  static List<Link> of(Camera camera, List<FrameStars> frames, SceneClock clock) {
    StarChain chain = new StarChain(camera, frames, clock);
    int blocks = 0;
    for (int i = 0; i < frames.size(); i++) {
      if (frames.get(i).count < LEAST_STARS) {
        continue;
      }
      Optional<Link> link = chain.link(i);
      chain.add(link.orElse(new Link(i, i, blocks, Rotation.NONE, List.of())));
      blocks += link.isEmpty() ? 1 : 0;
    }
    return List.copyOf(chain.links);
  }

  /**
   * Matches the same pairs of frames anew, seen through a better camera.
   *
   * @param links as first made, in their order
   */
  static List<Link> again(Camera camera, List<FrameStars> frames, List<Link> links) {
    List<Link> better = new ArrayList<>();
    for (Link link : links) {
      FramePair pair = new FramePair(camera, frames.get(link.parent()), frames.get(link.frame()));
      better.add(
          link.isFirst()
              ? link
              : FrameMatch.refined(pair, link.turn(), RADIUS_PX, 0)
                  .filter(FrameMatch::isCertain)
                  .map(m -> link.with(m.turn(), List.of(m.pairs())))
                  .orElse(link));
    }
    return better;
  }

  private void add(Link link) {
    links.add(link);
    linkOf[link.frame()] = link;
    if (!link.isFirst()) {
      linkedBlocks.add(link.block());
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

  private Optional<Link> link(int frame) {
    List<Integer> recent = recent();
    for (int parent : recent) {
      Optional<Link> link = foretold(parent, frame);
      if (link.isPresent()) {
        return link;
      }
    }
    LinkedHashSet<Integer> tries = new LinkedHashSet<>(recent);
    tries.addAll(bridges());
    int most = Math.max(FEWEST_SEARCHES, tries.size() - failures);
    for (int parent : tries.stream().limit(most).toList()) {
      Optional<Link> link = searched(parent, frame);
      if (link.isPresent()) {
        failures = 0;
        return link;
      }
    }
    failures++;
    return Optional.empty();
  }

  /** The last frames that are linked with others, then the last that stands alone. */
  private List<Integer> recent() {
    List<Integer> recent = new ArrayList<>();
    Optional<Integer> alone = Optional.empty();
    for (int k = links.size() - 1; k >= 0 && recent.size() < RECENT; k--) {
      Link link = links.get(k);
      if (isLinked(link)) {
        recent.add(link.frame());
      } else if (alone.isEmpty()) {
        alone = Optional.of(link.frame());
      }
    }
    alone.ifPresent(recent::add);
    return recent;
  }

  private boolean isLinked(Link link) {
    return !link.isFirst() || linkedBlocks.contains(link.block());
  }

  /** Frames spread evenly over what is linked so far. */
  private List<Integer> bridges() {
    List<Integer> linked = links.stream().filter(this::isLinked).map(Link::frame).toList();
    List<Integer> spread = new ArrayList<>();
    int step = Math.max(1, linked.size() / BRIDGES);
    for (int k = linked.size() - 1 - step; k >= 0 && spread.size() < BRIDGES; k -= step) {
      spread.add(linked.get(k));
    }
    return spread;
  }

  private Optional<Link> foretold(int parent, int frame) {
    Optional<Rotation> guess =
        seconds(parent, frame).flatMap(s -> spin.map(v -> Rotation.of(v, s))).or(() -> lastTurn);
    FramePair pair = new FramePair(camera, frames.get(parent), frames.get(frame));
    return guess
        .flatMap(turn -> FrameMatch.refined(pair, turn, RADIUS_PX, 0))
        .filter(FrameMatch::isCertain)
        .filter(match -> match.share(pair.from(), pair.to()) >= LEAST_SHARE)
        .map(match -> link(parent, frame, match));
  }

  private Optional<Link> searched(int parent, int frame) {
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

  private Link link(int parent, int frame, FrameMatch found) {
    FramePair pair = new FramePair(camera, frames.get(parent), frames.get(frame));
    boolean[] followed = new boolean[pair.from().count];
    linkOf[parent].pairs().forEach(stars -> followed[stars[1]] = true);
    FrameMatch match = BrighterImage.of(pair, found, followed);
    return new Link(frame, parent, linkOf[parent].block(), match.turn(), List.of(match.pairs()));
  }
}
