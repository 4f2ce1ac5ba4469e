package rondure;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import rondure.crew.FrameMeasurement;
import rondure.crew.MeasureJob;
import rondure.crew.Outcome;
import rondure.intake.Exposure;
import rondure.intake.Shot;
import rondure.night.MeasuredExposure;

/** An exposure and how far its files have been tried. */
final class Place {
  private final Exposure exposure;
  private final List<Outcome<FrameMeasurement>> outcomes = new ArrayList<>();
  private int current;

  Place(Exposure exposure) {
    this.exposure = exposure;
  }

  Shot shot() {
    return exposure.files().get(current);
  }

  /** The name of one of the files. */
  String name(int index) {
    return exposure.files().get(index).file().relativeName();
  }

  MeasureJob job() {
    return new MeasureJob(shot().file().path(), shot().facts());
  }

  /** True when the present file has its outcome. */
  boolean isSettled() {
    return outcomes.size() > current;
  }

  void settle(Outcome<FrameMeasurement> outcome) {
    outcomes.add(outcome);
  }

  /** The name of the file that has its turn. */
  String currentName() {
    return name(current);
  }

  /** Moves on to the next file; back to the first, for its reason, when none could be read. */
  boolean tryNext() {
    if (outcomes.get(current) instanceof Outcome.Done) {
      return false;
    }
    current = (current + 1) % exposure.files().size();
    return current > 0;
  }

  /** True when a copy was measured in place of the best file. */
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
