package rondure;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import rondure.blur.AttributionSettings;
import rondure.blur.OneFrameAttribution;
import rondure.crew.Crew;
import rondure.crew.CrewProblem;
import rondure.crew.FrameMeasurement;
import rondure.crew.MeasureJob;
import rondure.crew.Outcome;
import rondure.intake.Copies;
import rondure.intake.Exposure;
import rondure.intake.FormatSniffer;
import rondure.intake.FoundFile;
import rondure.intake.ImageFormat;
import rondure.intake.RawSupport;
import rondure.intake.ResizedCopies;
import rondure.intake.Scan;
import rondure.intake.ScanResult;
import rondure.intake.Shot;
import rondure.intake.ShotFacts;
import rondure.night.FrameStatus;
import rondure.night.MeasuredExposure;
import rondure.night.NightBook;
import rondure.night.NightBuilder;
import rondure.night.NightInput;
import rondure.report.OutputFolder;
import rondure.report.OutputProblem;

/** The whole program: a folder of pictures in, an output folder with the report out. */
public final class Pipeline {
  private final Request request;
  private final Settings settings;
  private final Progress progress;
  private final List<String> notes = new ArrayList<>();

  public Pipeline(Request request, Settings settings, Progress progress) {
    this.request = request;
    this.settings = settings;
    this.progress = progress;
  }

  /**
   * Runs everything.
   *
   * @throws CommandProblem when there is nothing to read
   * @throws OutputProblem when the output folder cannot be used
   * @throws IOException when no worker process can be started or the results cannot be written
   * @throws InterruptedException when the run is stopped
   */
  public RunSummary run() throws CommandProblem, OutputProblem, IOException, InterruptedException {
    checkInputs();
    try (OutputFolder output = openOutput()) {
      ScanResult scan = scan();
      List<MeasuredExposure> measured;
      try (Crew crew = Crew.start(settings.crew())) {
        measured = measure(crew, scan.files());
      } catch (CrewProblem problem) {
        throw new IOException(problem.getMessage(), problem);
      }
      NightBook book =
          NightBuilder.build(
              new NightInput(inputName(), measured, scan.ignoredCounts(), notes),
              settings.night(),
              new OneFrameAttribution(AttributionSettings.defaults()));
      progress.begin("Writing the report", 1);
      Results.write(book, settings, output);
      progress.step();
      progress.end();
      return new RunSummary(book, output.path(), count(book, FrameStatus.UNREADABLE));
    }
  }

  private void checkInputs() throws CommandProblem {
    for (Path input : request.inputs()) {
      if (!Files.exists(input)) {
        throw new CommandProblem(input + " is not there; check the spelling of the folder's name.");
      }
      if (!Files.isReadable(input)) {
        throw new CommandProblem(input + " may not be read; change its permissions.");
      }
    }
  }

  private OutputFolder openOutput() throws OutputProblem {
    return request.outputFolder().isPresent()
        ? OutputFolder.named(request.outputFolder().get())
        : OutputFolder.beside(request.inputs().get(0), Path.of(""));
  }

  private ScanResult scan() throws CommandProblem {
    ScanResult scan = Scan.scan(request.inputs());
    scan.troubles().forEach(progress::say);
    notes.addAll(scan.troubles());
    if (scan.files().isEmpty()) {
      throw new CommandProblem(
          request.inputs().get(0)
              + " holds no pictures that Rondure reads; it reads RAW, DNG, TIFF, PNG, JPEG and FITS"
              + " files.");
    }
    boolean anyRaw = scan.files().stream().anyMatch(f -> f.formatByName() == ImageFormat.RAW);
    if (anyRaw && RawSupport.status() instanceof RawSupport.Absent absent) {
      progress.say(absent.message());
    }
    return scan;
  }

  private List<MeasuredExposure> measure(Crew crew, List<FoundFile> files)
      throws CrewProblem, InterruptedException {
    Map<FoundFile, String> failures = new HashMap<>();
    List<Shot> shots = readFacts(crew, files, failures);
    List<Exposure> exposures = Copies.group(shots);
    Map<Integer, Measured> best = new HashMap<>();
    List<Integer> open = new ArrayList<>();
    for (int i = 0; i < exposures.size(); i++) {
      open.add(i);
    }
    for (int turn = 0; !open.isEmpty(); turn++) {
      open = measureTurn(crew, exposures, open, turn, failures, best);
    }
    List<MeasuredExposure> measured = new ArrayList<>();
    for (int i = 0; i < exposures.size(); i++) {
      measured.add(result(exposures.get(i), best.get(i)));
    }
    return measured;
  }

  private List<Shot> readFacts(Crew crew, List<FoundFile> files, Map<FoundFile, String> failures)
      throws CrewProblem, InterruptedException {
    progress.begin("Reading facts", files.size());
    List<Shot> shots = new ArrayList<>();
    crew.facts(
        files.stream().map(FoundFile::path).toList(),
        (index, outcome) -> {
          FoundFile file = files.get(index);
          ShotFacts facts = ShotFacts.unknown(file.formatByName());
          if (outcome instanceof Outcome.Done<ShotFacts> done) {
            facts = settings.overrides().apply(done.answer());
          } else if (outcome instanceof Outcome.Failed<ShotFacts> failed) {
            failures.put(file, failed.reason());
          }
          FormatSniffer.mislabelled(file, facts.format()).ifPresent(notes::add);
          shots.add(new Shot(file, facts));
          progress.step();
        });
    progress.end();
    List<String> cameras =
        shots.stream().flatMap(shot -> shot.facts().cameraModel().stream()).distinct().toList();
    notes.addAll(settings.overrides().clockShiftTroubles(cameras));
    return ResizedCopies.withoutDoubtfulPitch(shots);
  }

  /** Measures the turn-th file of each open exposure; answers which exposures stay open. */
  private List<Integer> measureTurn(
      Crew crew,
      List<Exposure> exposures,
      List<Integer> open,
      int turn,
      Map<FoundFile, String> failures,
      Map<Integer, Measured> best)
      throws CrewProblem, InterruptedException {
    List<Integer> asked = new ArrayList<>();
    List<MeasureJob> jobs = new ArrayList<>();
    List<Integer> stillOpen = new ArrayList<>();
    for (int exposure : open) {
      Shot shot = exposures.get(exposure).files().get(turn);
      String failure = failures.get(shot.file());
      if (failure == null) {
        asked.add(exposure);
        jobs.add(new MeasureJob(shot.file().path(), shot.facts()));
      } else {
        settle(exposures, exposure, turn, new Outcome.Failed<>(failure), best, stillOpen);
      }
    }
    progress.begin("Measuring stars", jobs.size());
    crew.measure(
        jobs,
        settings.stars(),
        (index, outcome) -> {
          settle(exposures, asked.get(index), turn, outcome, best, stillOpen);
          progress.step();
        });
    progress.end();
    return stillOpen;
  }

  private static void settle(
      List<Exposure> exposures,
      int exposure,
      int turn,
      Outcome<FrameMeasurement> outcome,
      Map<Integer, Measured> best,
      List<Integer> stillOpen) {
    boolean done = outcome instanceof Outcome.Done<FrameMeasurement>;
    if (done || !best.containsKey(exposure)) {
      best.put(exposure, new Measured(turn, outcome));
    }
    if (!done && turn + 1 < exposures.get(exposure).files().size()) {
      stillOpen.add(exposure);
    }
  }

  private MeasuredExposure result(Exposure exposure, Measured measured) {
    Shot main = exposure.files().get(measured.turn());
    List<String> copies =
        exposure.files().stream()
            .filter(shot -> shot != main)
            .map(shot -> shot.file().relativeName())
            .toList();
    if (measured.turn() > 0) {
      notes.add(
          exposure.files().get(0).file().relativeName()
              + " could not be read; its copy "
              + main.file().relativeName()
              + " was measured instead.");
    }
    return new MeasuredExposure(
        main.file().relativeName(), copies, main.facts(), measured.outcome());
  }

  private String inputName() {
    return Optional.ofNullable(request.inputs().get(0).toAbsolutePath().normalize().getFileName())
        .map(Path::toString)
        .orElse("night");
  }

  private static int count(NightBook book, FrameStatus status) {
    return (int) book.frames().stream().filter(frame -> frame.status() == status).count();
  }

  /** The answer for an exposure and which of its files gave it. */
  private record Measured(int turn, Outcome<FrameMeasurement> outcome) {}
}
