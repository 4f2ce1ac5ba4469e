package rondure.intake;

import java.util.List;

/**
 * One press of the shutter and all files made from it.
 *
 * @param files at least one, the one to measure first
 */
public record Exposure(List<Shot> files) {
  public Exposure {
    files = List.copyOf(files);
    if (files.isEmpty()) {
      throw new IllegalArgumentException("an exposure needs a file");
    }
  }
}
