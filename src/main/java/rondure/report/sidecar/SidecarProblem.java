package rondure.report.sidecar;

/** A sidecar that is left alone, and why, as the end of a sentence. */
final class SidecarProblem extends Exception {
  private static final long serialVersionUID = 1L;

  SidecarProblem(String reason) {
    super(reason);
  }

  SidecarProblem(String reason, Throwable cause) {
    super(reason, cause);
  }
}
