package rondure;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.IntStream;
import rondure.crew.Crew;
import rondure.crew.CrewProblem;
import rondure.crew.FrameMeasurement;
import rondure.crew.MeasureJob;
import rondure.crew.Outcome;
import rondure.intake.Exposure;
import rondure.intake.FoundFile;
import rondure.intake.Shot;
import rondure.night.MeasuredExposure;
import rondure.stars.StarSettings;

/** Measures the best readable file of each exposure. */
final class Measuring {
  private static final int NAMED_AT_MOST = 3;

  private final Crew crew;
  private final StarSettings stars;
  private final Progress progress;
  private final List<String> notes = new ArrayList<>();

  Measuring(Crew crew, StarSettings stars, Progress progress) {
    this.crew = crew;
    this.stars = stars;
    this.progress = progress;
  }

  /** Which copies had to stand in, and why. */
  List<String> notes() {
    return notes;
  }

  /**
   * Measures; an exposure whose file cannot be read gets a turn with its next file, until one can
   * be read or all were tried.
   *
   * @param failures files that are known to be unreadable, and why
   * @return one for each exposure, in order
   */
  List<MeasuredExposure> measure(List<Exposure> exposures, Map<FoundFile, String> failures)
      throws CrewProblem, InterruptedException {
    List<Place> places = exposures.stream().map(Place::new).toList();
    List<Place> open = places;
    while (!open.isEmpty()) {
      turn(open, failures);
      open = open.stream().filter(Place::tryNext).toList();
    }
    standIns(places);
    return places.stream().map(Place::result).toList();
  }

  private void turn(List<Place> open, Map<FoundFile, String> failures)
      throws CrewProblem, InterruptedException {
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
        (index, outcome) -> {
          asked.get(index).settle(outcome);
          progress.step();
        });
    progress.end();
  }

  /** One sentence for each reason, naming the files when they are few. */
  private void standIns(List<Place> places) {
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
                            + place.name(place.current)
                            + " was measured instead."));
          }
        });
  }

  /** An exposure and how far its files have been tried. */
  private static final class Place {
    private final Exposure exposure;
    private final List<Outcome<FrameMeasurement>> outcomes = new ArrayList<>();
    private int current;

    Place(Exposure exposure) {
      this.exposure = exposure;
    }

    Shot shot() {
      return exposure.files().get(current);
    }

    String name(int index) {
      return exposure.files().get(index).file().relativeName();
    }

    MeasureJob job() {
      return new MeasureJob(shot().file().path(), shot().facts());
    }

    void settle(Outcome<FrameMeasurement> outcome) {
      outcomes.add(outcome);
    }

    /** Moves on to the next file; back to the first, for its reason, when none could be read. */
    boolean tryNext() {
      if (outcomes.get(current) instanceof Outcome.Done) {
        return false;
      }
      current = (current + 1) % exposure.files().size();
      return current > 0;
    }

    boolean stoodIn() {
      return current > 0;
    }

    String firstReason() {
      return outcomes.get(0) instanceof Outcome.Failed<FrameMeasurement> failed
          ? failed.reason()
          : "";
    }

    MeasuredExposure result() {
      List<String> copies =
          IntStream.range(0, exposure.files().size())
              .filter(i -> i != current)
              .mapToObj(this::name)
              .toList();
      return new MeasuredExposure(name(current), copies, shot().facts(), outcomes.get(current));
    }
  }
}
