package rondure;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;

/**
 * What the user asked for.
 *
 * @param inputs folders or files
 * @param outputFolder where the results go; by default beside the first input
 */
public record Request(List<Path> inputs, Optional<Path> outputFolder) {
  public Request {
    inputs = List.copyOf(inputs);
    if (inputs.isEmpty()) {
      throw new IllegalArgumentException("a request needs at least one input");
    }
  }
}
