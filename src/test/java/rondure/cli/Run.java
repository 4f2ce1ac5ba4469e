package rondure.cli;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import picocli.CommandLine;

/**
 * What a command did.
 *
 * @param code exit code
 * @param out what it wrote to standard output
 * @param err what it wrote to standard error
 */
record Run(int code, String out, String err) {

  /** Runs the whole command in this process. */
  static Run of(Object... arguments) {
    StringWriter out = new StringWriter();
    StringWriter err = new StringWriter();
    CommandLine command = Main.commandLine(new Stopping());
    command.setOut(new PrintWriter(out)).setErr(new PrintWriter(err));
    int code =
        command.execute(Arrays.stream(arguments).map(Object::toString).toArray(String[]::new));
    return new Run(code, out.toString(), err.toString());
  }

  /** {@code report} with one worker, the results in {@code output}. */
  static Run report(Path output, Object... arguments) {
    Object[] first = {"report", "--workers", 1, "--entries", "none", "--out", output};
    return of(Stream.concat(Arrays.stream(first), Arrays.stream(arguments)).toArray());
  }

  List<String> errLines() {
    return err.lines().toList();
  }

  static JsonNode night(Path output) throws IOException {
    return new ObjectMapper().readTree(output.resolve("night.json").toFile());
  }

  /** The frames of night.json by their names. */
  static Map<String, JsonNode> frames(Path output) throws IOException {
    Map<String, JsonNode> frames = new TreeMap<>();
    night(output).get("frames").forEach(frame -> frames.put(frame.get("file").asText(), frame));
    return frames;
  }

  /** Names of all that lies in a folder, in order. */
  static List<String> names(Path folder) throws IOException {
    try (Stream<Path> entries = Files.list(folder)) {
      return entries.map(entry -> entry.getFileName().toString()).sorted().toList();
    }
  }
}
