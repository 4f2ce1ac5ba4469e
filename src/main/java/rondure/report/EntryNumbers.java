package rondure.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import rondure.night.FrameShape;
import rondure.night.NightFrame;
import rondure.report.layout.Wording;

/** The numbers of one frame's entry, with their names. */
final class EntryNumbers {
  private final Wording words;

  EntryNumbers(Wording words) {
    this.words = words;
  }

  private String zones(FrameShape shape) {
    Optional<String> centre = shape.fwhmCentrePx().map(Figures::px);
    Optional<String> edge = shape.fwhmEdgePx().map(Figures::px);
    if (centre.isPresent() && edge.isPresent()) {
      String key = centre.equals(edge) ? "value.zonesSame" : "value.zones";
      return words.say(key, "centre", centre.get(), "edge", edge.get());
    }
    return centre
        .map(px -> words.say("value.zonesCentre", "centre", px))
        .or(() -> edge.map(px -> words.say("value.zonesEdge", "edge", px)))
        .orElse(words.say("value.zonesUnknown"));
  }

  /**
   * @param all those of a teacher too
   */
  List<EntryView.Number> of(NightFrame frame, boolean all) {
    FrameShape shape = frame.shape().orElseThrow();
    List<EntryView.Number> numbers = new ArrayList<>();
    add(numbers, "width", width(shape));
    add(numbers, "zones", zones(shape));
    add(numbers, "roundness", Figures.fixed(2, shape.roundness()));
    if (all) {
      add(numbers, "direction", direction(shape));
    }
    add(numbers, "trail", trail(frame));
    add(numbers, "stars", Integer.toString(shape.starCount()));
    add(numbers, "sky", Figures.smallPercent(shape.skyBackground()));
    return numbers;
  }

  private String width(FrameShape shape) {
    String px = Figures.px(shape.fwhmPx());
    return shape
        .fwhmArcsec()
        .map(arcsec -> Figures.fixed(arcsec < 9.95 ? 1 : 0, arcsec))
        .map(arcsec -> words.say("value.widthArcsec", "px", px, "arcsec", arcsec))
        .orElse(words.say("value.width", "px", px));
  }

  private String direction(FrameShape shape) {
    return words.say(
        "value.direction",
        "angle",
        Figures.fixed(0, shape.elongationAngleDeg()),
        "coherence",
        Figures.percent(shape.directionCoherence()));
  }

  private String trail(NightFrame frame) {
    return frame
        .trailPredictedPx()
        .map(trail -> words.say(trailKey(frame), "trail", Figures.px(trail)))
        .orElse(words.say("value.trailUnknown"));
  }

  /** A frame with a budget has its trail from the pole; else it is the longest there can be. */
  private static String trailKey(NightFrame frame) {
    return frame.budget().isPresent() ? "value.trailByPole" : "value.trail";
  }

  private void add(List<EntryView.Number> numbers, String key, String value) {
    numbers.add(new EntryView.Number(words.say("number." + key), value));
  }
}
