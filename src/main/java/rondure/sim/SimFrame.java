package rondure.sim;

/** One rendered frame: raw sensor counts, row-major, and the truth about them. Frozen. */
public final class SimFrame {
  private final NightPlan plan;
  private final Exposure exposure;
  private final char[] counts;
  private final FrameTruth truth;

  SimFrame(NightPlan plan, Exposure exposure, char[] counts, FrameTruth truth) {
    this.plan = plan;
    this.exposure = exposure;
    this.counts = counts;
    this.truth = truth;
  }

  public int widthPx() {
    return plan.camera().widthPx();
  }

  public int heightPx() {
    return plan.camera().heightPx();
  }

  /** Code value at column {@code x}, row {@code y}, black level included. */
  public int at(int x, int y) {
    return counts[y * widthPx() + x];
  }

  public NightPlan plan() {
    return plan;
  }

  public FrameTruth truth() {
    return truth;
  }

  Exposure exposure() {
    return exposure;
  }

  /** The raster itself. Shared, not a copy: read only. */
  char[] counts() {
    return counts;
  }
}
