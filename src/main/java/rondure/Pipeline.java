package rondure;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import rondure.base.PathNames;
import rondure.blur.AttributionSettings;
import rondure.blur.SceneAttribution;
import rondure.crew.Crew;
import rondure.crew.CrewProblem;
import rondure.intake.ImageFormat;
import rondure.intake.RawSupport;
import rondure.intake.Scan;
import rondure.intake.ScanResult;
import rondure.night.MeasuredExposure;
import rondure.night.NamedSeries;
import rondure.night.NightBook;
import rondure.night.NightBuilder;
import rondure.night.NightInput;
import rondure.report.OutputFolder;
import rondure.report.OutputPlace;
import rondure.report.OutputProblem;
import rondure.report.PdfReport;
import rondure.report.sidecar.Sidecars;
import rondure.store.MeasurementStore;

/** The whole program: a folder of pictures in, an output folder with the report out. */
public final class Pipeline {
  private final Request request;
  private final Settings settings;
  private final Progress progress;
  private final List<String> notes = new ArrayList<>();
  private List<NamedSeries> focusTests = List.of();

  public Pipeline(Request request, Settings settings, Progress progress) {
    this.request = request;
    this.settings = settings;
    this.progress = progress;
  }

  /**
   * Runs everything.
   *
   * @throws CommandProblem when there is nothing to read, or a folder cannot be used
   * @throws OutputProblem when the output folder cannot be used
   * @throws IOException when no worker process can be started or the results cannot be written
   * @throws InterruptedException when the run is stopped
   */
  public RunSummary run() throws CommandProblem, OutputProblem, IOException, InterruptedException {
    checkFolders();
    ScanResult scan = scan();
    focusTests = FocusTests.resolved(request.focusTests(), scan.files());
    if (request.sidecars().dryRun()) {
      return rehearse(scan);
    }
    prepareReport();
    try (OutputFolder output = OutputFolder.open(outputPlace())) {
      MeasurementStore store = MeasurementStore.open(output.measured(), settings.stars());
      NightBook book = book(scan, store);
      Sidecars sidecars = new Sidecars(book, scan.files(), request.sidecars());
      progress.begin("Writing the report", 1);
      Results.write(book, settings, sidecars, output);
      progress.step();
      progress.end();
      if (allThere(scan)) {
        store.forgetOthers();
      }
      return new RunSummary(
          book, Optional.of(output.path()), sidecars.summary(), output.movedAside());
    }
  }

  /** False when pictures vanished meanwhile, as with a card: they may come again. */
  private static boolean allThere(ScanResult scan) {
    return scan.files().stream().allMatch(file -> Files.exists(file.path()));
  }

  /** Everything but writing; what earlier runs measured is read, and nothing added to it. */
  private RunSummary rehearse(ScanResult scan)
      throws CommandProblem, OutputProblem, IOException, InterruptedException {
    Path measured = OutputFolder.measuredIn(outputPlace());
    NightBook book = book(scan, MeasurementStore.readOnly(measured, settings.stars()));
    Sidecars sidecars = new Sidecars(book, scan.files(), request.sidecars());
    sidecars.rehearse();
    return new RunSummary(book, Optional.empty(), sidecars.summary(), List.of());
  }

  private NightBook book(ScanResult scan, MeasurementStore store)
      throws CommandProblem, IOException, InterruptedException {
    List<MeasuredExposure> measured = measure(scan, store);
    NightBook book =
        NightBuilder.build(
            new NightInput(inputName(), measured, scan.leftOut(), notes, focusTests),
            settings.night(),
            new SceneAttribution(AttributionSettings.defaults()));
    FocusTests.checkFrames(focusTests, book);
    return book;
  }

  /** A file that may not be read is one frame's trouble; a folder is the whole run's. */
  private void checkFolders() throws CommandProblem {
    for (Path input : request.inputs()) {
      if (!Files.exists(input)) {
        throw new CommandProblem(input + " is not there; check the spelling of its name.");
      }
      if (Files.isDirectory(input) && !Files.isReadable(input)) {
        throw new CommandProblem(input + " may not be read; change its permissions.");
      }
    }
  }

  private void prepareReport() throws CommandProblem {
    try {
      PdfReport.prepare(settings.report());
    } catch (IOException problem) {
      throw new CommandProblem(problem.getMessage());
    }
  }

  private Path outputPlace() throws OutputProblem {
    return request.outputFolder().isPresent()
        ? OutputPlace.named(request.outputFolder().get())
        : OutputPlace.beside(request.inputs().get(0), Path.of(""));
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

  private List<MeasuredExposure> measure(ScanResult scan, MeasurementStore store)
      throws IOException, InterruptedException {
    try (Crew crew = Crew.start(settings.crew())) {
      ShotReading shots = ShotReading.read(crew, scan.files(), settings.overrides(), progress);
      shots.notes().forEach(progress::say);
      notes.addAll(shots.notes());
      Measuring measuring = new Measuring(crew, settings.stars(), store, progress);
      int before = measuring.lookUp(shots.exposures(), shots.failures());
      progress.start(shots.runStart(settings.crew().workers(), before));
      List<MeasuredExposure> measured = measuring.measure();
      measuring.notes().forEach(progress::say);
      store.trouble().ifPresent(progress::say);
      notes.addAll(measuring.notes());
      return measured;
    } catch (CrewProblem problem) {
      throw new IOException(problem.getMessage(), problem);
    }
  }

  private String inputName() {
    String name = PathNames.last(request.inputs().get(0).toAbsolutePath().normalize());
    return name.isEmpty() ? "night" : name;
  }
}
