package rondure.sky;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** The frames of a chain that were linked so far, and which of them a new one is tried with. */
final class LinkedFrames {
  private static final int RECENT = 3;
  private static final int BRIDGES = 6;

  private final List<FrameLink> links = new ArrayList<>();
  private final FrameLink[] linkOf;
  private final Set<Integer> linkedBlocks = new HashSet<>();

  LinkedFrames(int frames) {
    linkOf = new FrameLink[frames];
  }

  void add(FrameLink link) {
    links.add(link);
    linkOf[link.frame()] = link;
    if (!link.isFirst()) {
      linkedBlocks.add(link.block());
    }
  }

  /** In the order in which they were added. */
  List<FrameLink> links() {
    return List.copyOf(links);
  }

  /** The link of a frame that was added. */
  FrameLink of(int frame) {
    return linkOf[frame];
  }

  /** The last frames that are linked with others, then the last that stands alone. */
  List<Integer> recent() {
    List<Integer> recent = new ArrayList<>();
    Optional<Integer> alone = Optional.empty();
    for (int k = links.size() - 1; k >= 0 && recent.size() < RECENT; k--) {
      FrameLink link = links.get(k);
      if (isLinked(link)) {
        recent.add(link.frame());
      } else if (alone.isEmpty()) {
        alone = Optional.of(link.frame());
      }
    }
    alone.ifPresent(recent::add);
    return recent;
  }

  private boolean isLinked(FrameLink link) {
    return !link.isFirst() || linkedBlocks.contains(link.block());
  }

  /** Frames spread evenly over what is linked so far. */
  List<Integer> bridges() {
    List<Integer> linked = links.stream().filter(this::isLinked).map(FrameLink::frame).toList();
    List<Integer> spread = new ArrayList<>();
    int step = Math.max(1, linked.size() / BRIDGES);
    for (int k = linked.size() - 1 - step; k >= 0 && spread.size() < BRIDGES; k -= step) {
      spread.add(linked.get(k));
    }
    return spread;
  }
}
