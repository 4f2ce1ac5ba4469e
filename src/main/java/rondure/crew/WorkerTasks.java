package rondure.crew;

import java.nio.file.Path;
import rondure.base.FrameProblem;
import rondure.intake.ReadingLimits;
import rondure.intake.ShotFacts;
import rondure.stars.StarSettings;

/**
 * What a worker process does for one file: pure functions of the file and the settings. An
 * implementation has a constructor without arguments and is named in {@link CrewSettings}.
 */
interface WorkerTasks {

  /** The same work within other limits for a single file. */
  default WorkerTasks within(ReadingLimits limits) {
    return this;
  }

  /** What the file says about its exposure. */
  ShotFacts facts(Path file) throws FrameProblem;

  /** Decodes the file and measures its stars. */
  FrameMeasurement measure(Path file, ShotFacts facts, StarSettings settings) throws FrameProblem;
}
