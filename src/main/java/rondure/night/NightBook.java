package rondure.night;

import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;

/**
 * The whole set, measured and explained: all that the report and the data files are made from.
 *
 * @param inputName last part of the input folder's name (never a full path)
 * @param nights in time order
 * @param scenes in time order
 * @param frames every exposure, time order within cameras interleaved by time; frames without time
 *     in natural file order at the end of their camera's
 * @param leftOut names of files seen but not read, by kind: "video", "sidecar", "other", "special",
 *     "hidden", "again"
 * @param staticDetections lights or hot pixels that stayed on the sensor, removed, by scene number
 * @param events what happened, in time order
 * @param focusSeries frames between which the focus was stepped, in time order
 * @param notes remarks on the set for the reader, as sentences' keys are not needed: plain text
 */
public record NightBook(
    String inputName,
    List<NightSummary> nights,
    List<Scene> scenes,
    List<NightFrame> frames,
    Map<String, List<String>> leftOut,
    Map<Integer, Integer> staticDetections,
    List<Event> events,
    List<FocusSeries> focusSeries,
    List<String> notes) {
  public NightBook {
    nights = List.copyOf(nights);
    scenes = List.copyOf(scenes);
    frames = List.copyOf(frames);
    leftOut = Map.copyOf(leftOut);
    staticDetections = Map.copyOf(staticDetections);
    events = List.copyOf(events);
    focusSeries = List.copyOf(focusSeries);
    notes = List.copyOf(notes);
  }

  /** How many files a person would wonder about, by kind: no hidden ones, none taken already. */
  public Map<String, Integer> ignoredCounts() {
    Map<String, Integer> counts = new TreeMap<>();
    leftOut.forEach(
        (kind, names) ->
            counts.merge(kind.equals("special") ? "other" : kind, names.size(), Integer::sum));
    counts.keySet().removeAll(Set.of("hidden", "again"));
    return counts;
  }
}
