package rondure.evaluation;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.datatype.jdk8.Jdk8Module;
import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.lang.reflect.RecordComponent;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import rondure.base.FrameProblem;
import rondure.crew.FrameMeasurement;
import rondure.crew.StoredMeasurement;
import rondure.intake.ShotFacts;
import rondure.sim.NightPlan;
import rondure.sim.NightSimulator;
import rondure.sim.OutputFormat;
import rondure.sim.Recipe;
import rondure.sim.SimFrame;
import rondure.stars.Star;
import rondure.stars.StarField;

/**
 * A drawn night, rendered to files and measured as the program measures files.
 *
 * @param name for tables
 * @param answers the truth about each frame
 * @param frames what was measured in each
 */
record MeasuredNight(String name, List<FrameAnswer> answers, List<FrameMeasurement> frames) {
  /** What a measurement holds: others are measured anew. */
  private static final String FORM =
      Stream.of(FrameMeasurement.class, ShotFacts.class, StarField.class, Star.class)
          .flatMap(type -> Stream.of(type.getRecordComponents()))
          .map(RecordComponent::toString)
          .collect(Collectors.joining("\n"));

  /** How truth is named and what is told of it: what was told otherwise is told anew. */
  private static final String TRUTH =
      "haze by the light that is left in the star\n"
          + Stream.of(FrameAnswer.class.getRecordComponents())
              .map(RecordComponent::toString)
              .collect(Collectors.joining("\n"));

  private static final ObjectMapper MAPPER = new ObjectMapper().registerModule(new Jdk8Module());

  /** From the shelf; rendered, and measured, when that does not lie there. */
  static MeasuredNight of(NightDraw.Drawn drawn, Path shelf) {
    try {
      String recipe = Recipe.toJson(drawn.plan()) + drawn.format();
      Path folder = shelf.resolve(Integer.toHexString(recipe.hashCode()));
      unlessDone(
          folder.resolve("recipe.json"),
          recipe,
          () -> render(drawn.plan(), drawn.format(), folder));
      unlessDone(folder.resolve("truth.txt"), TRUTH, () -> tell(drawn.plan(), folder));
      unlessDone(
          folder.resolve("form.txt"), FORM, () -> measure(drawn.plan(), drawn.format(), folder));
      return read(drawn.plan(), folder);
    } catch (IOException | FrameProblem e) {
      throw new UncheckedIOException(new IOException(drawn.plan().title(), e));
    }
  }

  /** Work whose result lies on the shelf. */
  private interface Making {
    void make() throws IOException, FrameProblem;
  }

  /** Makes what a mark does not vouch for, then sets the mark. */
  private static void unlessDone(Path mark, String text, Making making)
      throws IOException, FrameProblem {
    if (!Files.exists(mark) || !Files.readString(mark).equals(text)) {
      Files.createDirectories(mark.getParent());
      making.make();
      Files.writeString(mark, text);
    }
  }

  private static void render(NightPlan plan, OutputFormat format, Path folder) throws IOException {
    NightSimulator simulator = new NightSimulator(plan);
    for (int number = 1; number <= simulator.frameCount(); number++) {
      SimFrame frame = simulator.render(number);
      Path picture = picture(folder, number, format);
      try (OutputStream out = new BufferedOutputStream(Files.newOutputStream(picture))) {
        format.write(frame, out);
      }
    }
  }

  private static void tell(NightPlan plan, Path folder) throws IOException {
    NightSimulator simulator = new NightSimulator(plan);
    for (int number = 1; number <= simulator.frameCount(); number++) {
      FrameAnswer answer = FrameAnswer.of(simulator.truth(number));
      MAPPER.writeValue(answer(folder, number).toFile(), answer);
    }
  }

  private static void measure(NightPlan plan, OutputFormat format, Path folder)
      throws IOException, FrameProblem {
    for (int number = 1; number <= plan.frameCount(); number++) {
      Path picture = picture(folder, number, format);
      StoredMeasurement.write(StoredMeasurement.of(picture), measured(folder, number));
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

  private static Path picture(Path folder, int number, OutputFormat format) {
    return folder.resolve("frame_" + number + "." + format.extension());
  }

  private static Path measured(Path folder, int number) {
    return folder.resolve("measured_" + number + ".json");
  }

  private static Path answer(Path folder, int number) {
    return folder.resolve("truth_" + number + ".json");
  }
}
