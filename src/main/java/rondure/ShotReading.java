package rondure;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import rondure.crew.Crew;
import rondure.crew.CrewProblem;
import rondure.crew.Outcome;
import rondure.intake.Copies;
import rondure.intake.Exposure;
import rondure.intake.FactOverrides;
import rondure.intake.FolderKin;
import rondure.intake.FormatSniffer;
import rondure.intake.FoundFile;
import rondure.intake.ImageFormat;
import rondure.intake.ResizedCopies;
import rondure.intake.Shot;
import rondure.intake.ShotFacts;

/** Reads the facts of all files and recognises which of them are copies of one exposure. */
final class ShotReading {
  private static final double PIXELS_PER_MEGAPIXEL = 1e6;

  private final FactOverrides overrides;
  private final List<Shot> shots = new ArrayList<>();
  private final Map<FoundFile, String> failures = new HashMap<>();
  private final List<String> notes = new ArrayList<>();
  private List<Exposure> exposures = List.of();

  private ShotReading(FactOverrides overrides) {
    this.overrides = overrides;
  }

  static ShotReading read(
      Crew crew, List<FoundFile> files, FactOverrides overrides, Progress progress)
      throws CrewProblem, InterruptedException {
    ShotReading reading = new ShotReading(overrides);
    progress.begin("Reading facts", files.size());
    crew.facts(
        files.stream().map(FoundFile::path).toList(),
        (index, outcome) -> {
          reading.take(files.get(index), outcome);
          progress.step();
        });
    progress.end();
    reading.finish();
    return reading;
  }

  /** Every exposure with its files, the one to measure first. */
  List<Exposure> exposures() {
    return exposures;
  }

  /** Why files could not be read at all. */
  Map<FoundFile, String> failures() {
    return failures;
  }

  /** What the user should know about the files. */
  List<String> notes() {
    return notes;
  }

  /**
   * What lies before the run.
   *
   * @param measuredBefore exposures that need not be measured
   */
  RunStart runStart(int workers, int measuredBefore) {
    Map<ImageFormat, Integer> counts = new TreeMap<>();
    shots.forEach(shot -> counts.merge(shot.facts().format(), 1, Integer::sum));
    Map<String, Integer> byName = new LinkedHashMap<>();
    counts.forEach((format, count) -> byName.put(format.name(), count));
    long folders = shots.stream().map(shot -> shot.file().path().getParent()).distinct().count();
    return new RunStart(
        exposures.size(), measuredBefore, (int) folders, byName, megapixels(), workers);
  }

  /** Frames of unknown size count as the mean of the others. */
  private double megapixels() {
    double[] known =
        exposures.stream()
            .map(exposure -> exposure.files().get(0).facts())
            .mapToDouble(facts -> (double) facts.widthPx() * facts.heightPx())
            .filter(pixels -> pixels > 0)
            .toArray();
    double sum = java.util.Arrays.stream(known).sum();
    double all = known.length == 0 ? 0 : sum * exposures.size() / known.length;
    return all / PIXELS_PER_MEGAPIXEL;
  }

  private void take(FoundFile file, Outcome<ShotFacts> outcome) {
    ShotFacts facts = ShotFacts.unknown(file.formatByName());
    if (outcome instanceof Outcome.Done<ShotFacts> done) {
      facts = done.answer();
    } else if (outcome instanceof Outcome.Failed<ShotFacts> failed) {
      failures.put(file, failed.reason());
    }
    FormatSniffer.mislabelled(file, facts.format()).ifPresent(notes::add);
    shots.add(new Shot(file, facts));
  }

  /** Copies are recognised by what the files say, before anything is given to some of them. */
  private void finish() {
    List<Shot> given =
        shots.stream().map(shot -> new Shot(shot.file(), overrides.apply(shot.facts()))).toList();
    List<String> cameras =
        given.stream().flatMap(shot -> shot.facts().camera().stream()).distinct().toList();
    notes.addAll(overrides.clockShiftTroubles(cameras));
    Map<FoundFile, Shot> byFile = new HashMap<>();
    List<Shot> sound = ResizedCopies.withoutDoubtfulPitch(given);
    List<Shot> named = FolderKin.withCameraOfTheFolder(sound);
    notes.addAll(FolderKin.notes(sound, named));
    named.forEach(shot -> byFile.put(shot.file(), shot));
    exposures =
        Copies.group(shots).stream()
            .map(exposure -> exposure.files().stream().map(s -> byFile.get(s.file())).toList())
            .map(Exposure::new)
            .toList();
  }
}
