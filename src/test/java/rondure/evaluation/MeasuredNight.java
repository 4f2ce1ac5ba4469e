package rondure.evaluation;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.datatype.jdk8.Jdk8Module;
import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import rondure.base.FrameProblem;
import rondure.crew.FrameMeasurement;
import rondure.crew.StoredMeasurement;
import rondure.sim.NightPlan;
import rondure.sim.NightSimulator;
import rondure.sim.OutputFormat;
import rondure.sim.Recipe;
import rondure.sim.SimFrame;

/**
 * A drawn night, rendered to files and measured as the program measures files.
 *
 * @param name for tables
 * @param answers the truth about each frame
 * @param frames what was measured in each
 */
record MeasuredNight(String name, List<FrameAnswer> answers, List<FrameMeasurement> frames) {
  private static final ObjectMapper MAPPER = new ObjectMapper().registerModule(new Jdk8Module());

  /** From the shelf; rendered and measured when it does not lie there. */
  static MeasuredNight of(NightDraw.Drawn drawn, Path shelf) {
    try {
      String recipe = Recipe.toJson(drawn.plan()) + drawn.format();
      Path folder = shelf.resolve(Integer.toHexString(recipe.hashCode()));
      Path done = folder.resolve("recipe.json");
      if (!Files.exists(done) || !Files.readString(done).equals(recipe)) {
        Files.createDirectories(folder);
        make(drawn.plan(), drawn.format(), folder);
        Files.writeString(done, recipe);
      }
      return read(drawn.plan(), folder);
    } catch (IOException | FrameProblem e) {
      throw new UncheckedIOException(new IOException(drawn.plan().title(), e));
    }
  }

  private static void make(NightPlan plan, OutputFormat format, Path folder)
      throws IOException, FrameProblem {
    NightSimulator simulator = new NightSimulator(plan);
    for (int number = 1; number <= simulator.frameCount(); number++) {
      SimFrame frame = simulator.render(number);
      Path picture = folder.resolve("frame." + format.extension());
      try (OutputStream out = new BufferedOutputStream(Files.newOutputStream(picture))) {
        format.write(frame, out);
      }
      StoredMeasurement.write(StoredMeasurement.of(picture), measured(folder, number));
      Files.delete(picture);
      MAPPER.writeValue(answer(folder, number).toFile(), FrameAnswer.of(frame.truth()));
    }
  }

  private static MeasuredNight read(NightPlan plan, Path folder) throws IOException {
    List<FrameAnswer> answers = new ArrayList<>();
    List<FrameMeasurement> frames = new ArrayList<>();
    for (int number = 1; number <= plan.frameCount(); number++) {
      answers.add(MAPPER.readValue(answer(folder, number).toFile(), FrameAnswer.class));
      frames.add(StoredMeasurement.read(measured(folder, number)));
    }
    return new MeasuredNight(plan.title(), answers, frames);
  }

  private static Path measured(Path folder, int number) {
    return folder.resolve("measured_" + number + ".json");
  }

  private static Path answer(Path folder, int number) {
    return folder.resolve("truth_" + number + ".json");
  }
}
