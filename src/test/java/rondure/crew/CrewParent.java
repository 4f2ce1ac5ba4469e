package rondure.crew;

import java.nio.file.Path;
import java.util.List;
import rondure.stars.StarSettings;

/** A program with a crew that is busy until it is ended from outside. */
public final class CrewParent {
  private CrewParent() {}

  /**
   * @param args folder for the private folder and the marker file of the hanging task
   */
  public static void main(String[] args) throws Exception {
    Path folder = Path.of(args[0]);
    CrewSettings usual = CrewFixture.settings(2);
    CrewSettings patient =
        new CrewSettings(2, 0, 600, 1, usual.tasksClass(), usual.javaExecutable());
    try (Crew crew = Crew.start(patient, folder)) {
      List<MeasureJob> jobs = CrewFixture.jobs(folder, "hang-1", "hang-2");
      crew.measure(jobs, StarSettings.defaults(), CrewFixture.NOTHING_KEPT, (index, outcome) -> {});
    }
  }
}
