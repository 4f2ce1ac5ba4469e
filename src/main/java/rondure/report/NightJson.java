package rondure.report;

import com.fasterxml.jackson.core.util.DefaultIndenter;
import com.fasterxml.jackson.core.util.DefaultPrettyPrinter;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.SerializationFeature;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.io.OutputStream;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import rondure.intake.CaptureTime;
import rondure.night.NightBook;
import rondure.night.NightFrame;
import rondure.night.NightSummary;
import rondure.night.Scene;
import rondure.night.SceneSolution;
import rondure.sky.Camera;
import rondure.sky.CameraFinding;

/**
 * Writes night.json: the whole night as data, described by docs/night.schema.json.
 *
 * <p>The same book gives the same bytes: no run time, worker count or machine in it.
 */
public final class NightJson {

  /** Version of the layout; grows when a key changes its meaning. */
  public static final String SCHEMA = "rondure-night-1";

  private static final ObjectMapper MAPPER =
      new ObjectMapper()
          .enable(SerializationFeature.INDENT_OUTPUT)
          .enable(com.fasterxml.jackson.core.JsonGenerator.Feature.WRITE_BIGDECIMAL_AS_PLAIN)
          .setDefaultPrettyPrinter(
              new DefaultPrettyPrinter()
                  .withObjectIndenter(new DefaultIndenter("  ", "\n"))
                  .withArrayIndenter(new DefaultIndenter("  ", "\n")));

  private NightJson() {}

  /** Writes the book as UTF-8 JSON; leaves the stream open. */
  public static void write(
      NightBook book, String toolVersion, List<ShownSetting> settings, OutputStream out)
      throws IOException {
    ObjectNode root = MAPPER.createObjectNode();
    root.put("schema", SCHEMA);
    root.putObject("tool").put("name", "Rondure").put("version", toolVersion);
    root.put("input", book.inputName());
    ObjectNode shown = root.putObject("settings");
    settings.forEach(setting -> shown.put(setting.name(), setting.value()));
    ArrayNode nights = root.putArray("nights");
    book.nights().forEach(night -> nights.add(night(night)));
    ArrayNode scenes = root.putArray("scenes");
    book.scenes().forEach(scene -> scenes.add(scene(book, scene)));
    ArrayNode events = root.putArray("events");
    book.events().forEach(event -> events.add(EventJson.of(event, book)));
    ArrayNode series = root.putArray("focusSeries");
    book.focusSeries().forEach(one -> series.add(SeriesJson.of(one, book)));
    ArrayNode copies = root.putArray("copies");
    book.frames().forEach(frame -> addCopies(copies, frame));
    ArrayNode frames = root.putArray("frames");
    Standings standings = Standings.of(book);
    Map<Integer, Integer> members = SeriesJson.members(book.focusSeries());
    for (int i = 0; i < book.frames().size(); i++) {
      NightFrame frame = book.frames().get(i);
      frames.add(FrameJson.of(frame, standings.of(frame), Optional.ofNullable(members.get(i))));
    }
    ObjectNode ignored = root.putObject("ignoredFiles");
    book.ignoredCounts().entrySet().stream()
        .sorted(Map.Entry.comparingByKey())
        .forEach(entry -> ignored.put(entry.getKey(), entry.getValue()));
    ArrayNode leftOut = root.putArray("leftOut");
    new TreeMap<>(book.leftOut())
        .forEach(
            (why, names) ->
                names.forEach(name -> leftOut.addObject().put("file", name).put("why", why)));
    ArrayNode notes = root.putArray("notes");
    book.notes().forEach(notes::add);
    out.write(MAPPER.writeValueAsBytes(root));
    out.write('\n');
  }

  private static ObjectNode night(NightSummary night) {
    ObjectNode node = MAPPER.createObjectNode();
    node.put("index", night.index());
    node.put("start", time(night.start()));
    node.put("end", time(night.end()));
    ArrayNode scenes = node.putArray("scenes");
    night.scenes().forEach(scenes::add);
    node.put("frameCount", night.frameCount());
    node.put("measuredCount", night.measuredCount());
    node.put("keepCount", night.keepCount());
    return node;
  }

  private static ObjectNode scene(NightBook book, Scene scene) {
    ObjectNode node = MAPPER.createObjectNode();
    node.put("number", scene.number());
    node.put("name", SceneName.of(book, scene));
    node.put("nightIndex", scene.nightIndex());
    node.put("camera", scene.cameraName());
    node.put("focalLengthMm", Rounded.of(scene.focalLengthMm()).orElse(null));
    node.put("sharpestFwhmPx", Rounded.of(scene.sharpestFwhmPx()).orElse(null));
    node.put("staticDetections", book.staticDetections().getOrDefault(scene.number(), 0));
    node.set("sky", solution(scene.solution()));
    ArrayNode files = node.putArray("files");
    scene.frames().forEach(index -> files.add(book.frames().get(index).file()));
    return node;
  }

  private static ObjectNode solution(SceneSolution solution) {
    ObjectNode node = MAPPER.createObjectNode();
    node.put("finding", FrameFields.spelled(solution.finding()));
    node.put("registeredFrames", solution.registeredFrames());
    Optional<Camera> camera = solution.camera();
    node.put("projection", camera.map(c -> FrameFields.spelled(c.projection())).orElse(null));
    node.put("focalLengthPx", Rounded.of(camera.map(Camera::focalLengthPx)).orElse(null));
    node.put("distortionK1", Rounded.of(camera.map(Camera::k1)).orElse(null));
    node.put("calibrated", solution.calibrated());
    node.put("centreDeclinationDeg", Rounded.of(solution.centreDeclinationDeg()).orElse(null));
    node.put("poleErrorDeg", Rounded.of(solution.poleErrorDeg()).orElse(null));
    node.set("projections", projections(solution));
    node.set("mount", solution.mount().map(NightJson::mount).orElse(null));
    node.put("explainedShare", Rounded.of(solution.explainedShare()).orElse(null));
    return node;
  }

  /** Misfits beyond the best projection's: differences are what counts. */
  private static ArrayNode projections(SceneSolution solution) {
    ArrayNode list = MAPPER.createArrayNode();
    double best = solution.projections().stream().mapToDouble(p -> p.criterion()).min().orElse(0);
    for (CameraFinding.Score score : solution.projections()) {
      ObjectNode node = list.addObject();
      node.put("projection", FrameFields.spelled(score.projection()));
      node.put("chi2AboveBest", Rounded.of(score.criterion() - best).orElse(null));
      node.put("focalLengthPx", Rounded.of(score.focalLengthPx()).orElse(null));
      node.put("distortionK1", Rounded.of(score.k1()).orElse(null));
    }
    return list;
  }

  private static ObjectNode mount(SceneSolution.Drift drift) {
    ObjectNode node = MAPPER.createObjectNode();
    node.put("driftPxPerMin", Rounded.of(drift.pxPerMin()).orElse(null));
    node.put("driftAngleDeg", Rounded.of(drift.angleDeg()).orElse(null));
    node.put("axisOffDeg", Rounded.of(drift.axisOffDeg()).orElse(null));
    return node;
  }

  private static void addCopies(ArrayNode copies, NightFrame frame) {
    if (!frame.copies().isEmpty()) {
      ObjectNode node = copies.addObject();
      node.put("file", frame.file());
      ArrayNode others = node.putArray("copies");
      frame.copies().forEach(others::add);
    }
  }

  private static String time(Optional<CaptureTime> time) {
    return time.map(FrameFields::isoTime).orElse(null);
  }
}
