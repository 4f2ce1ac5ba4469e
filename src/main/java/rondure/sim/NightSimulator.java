package rondure.sim;

import java.util.List;

/**
 * Renders the frames of a plan: light first, step by step along every star's path, then the land,
 * then the sensor. The same plan and frame always give the same counts. Usable by several threads.
 */
public final class NightSimulator {
  private final NightPlan plan;
  private final List<Exposure> timetable;
  private final List<StarCatalogue.CatalogueStar> catalogue;

  public NightSimulator(NightPlan plan) {
    this.plan = plan;
    this.timetable = Exposure.timetable(plan);
    this.catalogue = StarCatalogue.of(plan);
  }

  /**
   * One frame of a plan.
   *
   * @param frameNumber from 1
   */
  public static SimFrame render(NightPlan plan, int frameNumber) {
    return new NightSimulator(plan).render(frameNumber);
  }

  public int frameCount() {
    return timetable.size();
  }

  /**
   * One frame.
   *
   * @param frameNumber from 1
   */
  public SimFrame render(int frameNumber) {
    Exposure exposure = exposure(frameNumber);
    Canvas canvas = paint(exposure);
    char[] counts = Sensor.expose(plan.camera(), plan.seed(), exposure, canvas.electrons());
    return new SimFrame(plan, exposure, counts, canvas.truth());
  }

  /**
   * The truth about one frame without its picture: the same as of {@link #render(int)}, sooner.
   *
   * @param frameNumber from 1
   */
  public FrameTruth truth(int frameNumber) {
    Exposure exposure = exposure(frameNumber);
    Canvas canvas = Canvas.traced(plan, exposure, Passage.of(plan, timetable, exposure));
    canvas.paintStars(catalogue);
    canvas.paintLights();
    return canvas.truth();
  }

  private Exposure exposure(int frameNumber) {
    if (frameNumber < 1 || frameNumber > timetable.size()) {
      throw new IllegalArgumentException(
          "frameNumber must be in [1, " + timetable.size() + "], was " + frameNumber);
    }
    return timetable.get(frameNumber - 1);
  }

  /** The light that falls on each pixel during a frame, electrons through its filter. */
  float[] light(int frameNumber) {
    return paint(timetable.get(frameNumber - 1)).electrons();
  }

  private Canvas paint(Exposure exposure) {
    Canvas canvas = Canvas.painted(plan, exposure, Passage.of(plan, timetable, exposure));
    canvas.paintStars(catalogue);
    canvas.paintSky();
    canvas.paintLand();
    canvas.paintLights();
    canvas.paintAircraft();
    canvas.applyFilters();
    return canvas;
  }
}
