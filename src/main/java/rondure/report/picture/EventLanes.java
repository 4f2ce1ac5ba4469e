package rondure.report.picture;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * Puts the names of events under an axis, in as many lanes as they need, so that no name touches
 * another. Events of one name that lie close together share it.
 */
final class EventLanes {
  private static final double APART = 9;

  private EventLanes() {}

  /** Where an event lies on the axis, in pixels. */
  record Bar(double from, double to) {}

  /**
   * @param words a few
   * @param bars its events, from left to right
   */
  record Named(String words, List<Bar> bars) {
    Named {
      bars = List.copyOf(bars);
    }

    double from() {
      return bars.get(0).from();
    }

    double to() {
      return bars.stream().mapToDouble(Bar::to).max().orElseThrow();
    }
  }

  /**
   * @param named what stands there
   * @param lane 0 = next to the axis
   * @param wordsFrom left end of the words
   * @param wordsTo right end
   */
  record Place(Named named, int lane, double wordsFrom, double wordsTo) {
    double from() {
      return Math.min(named.from(), wordsFrom);
    }

    double to() {
      return Math.max(named.to(), wordsTo);
    }

    private boolean touches(Place other) {
      return lane == other.lane && from() < other.to() + APART && other.from() < to() + APART;
    }
  }

  /**
   * The events that find a place, the weightiest first.
   *
   * @param events the weightiest first
   * @param width of the axis
   * @param lanes at most so many
   */
  static List<Place> place(List<Named> events, double width, int lanes) {
    List<Place> placed = new ArrayList<>();
    for (Named event : events) {
      double wide = wide(event.words());
      double from = Math.max(0, Math.min(event.from(), width - wide));
      for (int lane = 0; lane < lanes; lane++) {
        Place place = new Place(event, lane, from, from + wide);
        if (placed.stream().noneMatch(place::touches)) {
          placed.add(place);
          break;
        }
      }
    }
    return placed;
  }

  /** Events of one name whose words would touch, under one name; order is kept. */
  static List<Named> joined(List<Named> events) {
    List<Named> joined = new ArrayList<>();
    for (String words : events.stream().map(Named::words).distinct().toList()) {
      List<Bar> bars =
          events.stream()
              .filter(event -> event.words().equals(words))
              .flatMap(event -> event.bars().stream())
              .sorted(Comparator.comparingDouble(Bar::from))
              .toList();
      int start = 0;
      for (int i = 1; i <= bars.size(); i++) {
        double end = bars.get(start).from() + wide(words) + APART;
        double reached = bars.subList(start, i).stream().mapToDouble(Bar::to).max().orElse(end);
        if (i == bars.size() || bars.get(i).from() > Math.max(end, reached + APART)) {
          joined.add(new Named(words, bars.subList(start, i)));
          start = i;
        }
      }
    }
    return joined;
  }

  private static double wide(String words) {
    return TextMeasure.width(ReportFonts.sans(CourseChart.FONT_SIZE), words);
  }
}
