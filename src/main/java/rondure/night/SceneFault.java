package rondure.night;

import java.util.Arrays;

/**
 * A fault of this program that left the frames of a scene measured but without a verdict.
 *
 * @param words what happened and where, for whoever is to mend it
 */
record SceneFault(String words) {
  /** What is said of each frame. */
  static final String OF_A_FRAME =
      "measured, but neither explained nor graded: a fault of this program, see the remarks";

  private static final int DEEPEST_CAUSE = 10;
  private static final String OURS = "rondure.";

  /** Work done side by side wraps a fault: what counts is the innermost. */
  static SceneFault of(RuntimeException fault) {
    Throwable inner = fault;
    for (int i = 0; i < DEEPEST_CAUSE && inner.getCause() != null; i++) {
      inner = inner.getCause();
    }
    return new SceneFault(inner + place(inner));
  }

  private static String place(Throwable fault) {
    return Arrays.stream(fault.getStackTrace())
        .filter(frame -> frame.getClassName().startsWith(OURS))
        .findFirst()
        .map(frame -> " in " + frame.getClassName() + ", line " + frame.getLineNumber())
        .orElse("");
  }

  /** The remark on the scene or scenes so named. */
  String remark(String scene) {
    return scene
        + ": a fault of this program ("
        + words
        + ") left its frames without causes and grades; their measurements stand. Please report it.";
  }
}
