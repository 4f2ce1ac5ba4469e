package rondure.report;

import java.util.List;

/**
 * What every frame of a lens shares.
 *
 * @param blocks one for each set-up
 * @param more a sentence on set-ups without a block; empty where there are none
 */
record LensView(List<Block> blocks, List<String> more) {

  /** Whether it is worth a page of its own. */
  boolean isLong() {
    return blocks.size() > 1 || blocks.stream().anyMatch(block -> !block.field().isEmpty());
  }

  /**
   * A camera with a lens.
   *
   * @param heading its name
   * @param facts which frames, which pixels
   * @param stars average stars from centre to edge, where there are any
   * @param starsFrom which frame they are from, and why that one
   * @param ladder widths beside each other, where the core is known
   * @param core sentences on it
   * @param field the star outlines over the frame, where the lens is known
   * @param fieldNote how to read them
   * @param findings what the lens does
   * @param cautions how far that may be trusted
   * @param stops stars by aperture
   * @param stopWords whether stopping down helps
   * @param geometry focal length, projection, distortion
   */
  record Block(
      String heading,
      String facts,
      List<PictureView> stars,
      String starsFrom,
      List<PictureView> ladder,
      List<String> core,
      List<PictureView> field,
      String fieldNote,
      List<Finding> findings,
      List<String> cautions,
      List<Stop> stops,
      List<String> stopWords,
      List<String> geometry) {}

  /** A quality of the lens and what was found of it. */
  record Finding(String name, String text) {}

  /** What the lens alone makes of a star at an aperture. */
  record Stop(String aperture, String light, String centre, String side, String corner) {}
}
