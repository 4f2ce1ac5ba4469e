package rondure.crew;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import rondure.base.FrameProblem;
import rondure.stars.StarSettings;

/** Measures a file as a worker does, and keeps what was measured on disk, for tests. */
public final class StoredMeasurement {
  private StoredMeasurement() {}

  /** What a worker measures in a file. */
  public static FrameMeasurement of(Path file) throws FrameProblem {
    RealTasks tasks = new RealTasks();
    return tasks.measure(file, tasks.facts(file), StarSettings.defaults());
  }

  /** Writes it exactly. */
  public static void write(FrameMeasurement measured, Path file) throws IOException {
    Files.write(file, RecordJson.write(measured));
  }

  /** Reads what was written. */
  public static FrameMeasurement read(Path file) throws IOException {
    return RecordJson.read(Files.readAllBytes(file), FrameMeasurement.class);
  }
}
