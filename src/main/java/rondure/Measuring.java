package rondure;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import rondure.crew.Crew;
import rondure.crew.CrewProblem;
import rondure.crew.Outcome;
import rondure.intake.Exposure;
import rondure.intake.FoundFile;
import rondure.night.MeasuredExposure;
import rondure.stars.StarSettings;
import rondure.store.MeasurementStore;

/** Measures the best readable file of each exposure, unless that was done before. */
final class Measuring {
  private static final int NAMED_AT_MOST = 3;

  private final Crew crew;
  private final StarSettings stars;
  private final MeasurementStore store;
  private final Progress progress;
  private final List<String> notes = new ArrayList<>();
  private List<Place> places = List.of();
  private Map<FoundFile, String> failures = Map.of();

  Measuring(Crew crew, StarSettings stars, MeasurementStore store, Progress progress) {
    this.crew = crew;
    this.stars = stars;
    this.store = store;
    this.progress = progress;
  }

  /** Which copies had to stand in, and why. */
  List<String> notes() {
    return notes;
  }

  /**
   * Takes the exposures and finds out which of them were measured before.
   *
   * @param exposures to be measured
   * @param unreadable files that are known to be unreadable, and why
   * @return how many were measured before
   */
  int lookUp(List<Exposure> exposures, Map<FoundFile, String> unreadable)
      throws CrewProblem, InterruptedException {
    places = exposures.stream().map(Place::new).toList();
    failures = unreadable;
    lookUp(places);
    return (int) places.stream().filter(Place::isSettled).count();
  }

  /**
   * Measures; an exposure whose file cannot be read gets a turn with its next file, until one can
   * be read or all were tried.
   *
   * @return one for each exposure, in order
   */
  List<MeasuredExposure> measure() throws CrewProblem, InterruptedException {
    List<Place> open = places;
    while (!open.isEmpty()) {
      turn(open.stream().filter(place -> !place.isSettled()).toList());
      open = open.stream().filter(Place::tryNext).toList();
      lookUp(open);
    }
    standIns();
    return places.stream().map(Place::result).toList();
  }

  /** Settles the places whose present file was measured before. */
  private void lookUp(List<Place> open) throws CrewProblem, InterruptedException {
    List<Place> asked =
        open.stream().filter(place -> !failures.containsKey(place.shot().file())).toList();
    if (asked.isEmpty() || store.isEmpty()) {
      return;
    }
    Map<Integer, String> digests = new TreeMap<>();
    progress.begin("Looking for earlier measurements", asked.size());
    crew.digests(
        asked.stream().map(Place::job).toList(),
        (index, outcome) -> {
          if (outcome instanceof Outcome.Done<String> done) {
            digests.put(index, done.answer());
          }
          progress.step();
        });
    progress.end();
    digests.entrySet().parallelStream()
        .forEach(
            digest -> {
              Place place = asked.get(digest.getKey());
              store
                  .find(place.job(), digest.getValue())
                  .ifPresent(known -> place.settle(new Outcome.Done<>(known)));
            });
  }

  private void turn(List<Place> open) throws CrewProblem, InterruptedException {
    List<Place> asked = new ArrayList<>();
    for (Place place : open) {
      String failure = failures.get(place.shot().file());
      if (failure == null) {
        asked.add(place);
      } else {
        place.settle(new Outcome.Failed<>(failure));
      }
    }
    progress.begin("Measuring stars", asked.size());
    crew.measure(
        asked.stream().map(Place::job).toList(),
        stars,
        store,
        (index, outcome) -> {
          asked.get(index).settle(outcome);
          progress.step();
        });
    progress.end();
  }

  /** One sentence for each reason, naming the files when they are few. */
  private void standIns() {
    Map<String, List<Place>> byReason = new TreeMap<>();
    for (Place place : places) {
      if (place.stoodIn()) {
        byReason.computeIfAbsent(place.firstReason(), reason -> new ArrayList<>()).add(place);
      }
    }
    byReason.forEach(
        (reason, members) -> {
          if (members.size() > NAMED_AT_MOST) {
            notes.add(
                members.size()
                    + " frames were measured from a copy, because the file that is best to measure"
                    + " could not be read: "
                    + reason);
          } else {
            members.forEach(
                place ->
                    notes.add(
                        place.name(0)
                            + " could not be read ("
                            + reason
                            + "); its copy "
                            + place.currentName()
                            + " was measured instead."));
          }
        });
  }
}
