package rondure.crew;

import java.nio.file.Path;
import rondure.base.FrameProblem;
import rondure.intake.DecodedFrame;
import rondure.intake.FactsReader;
import rondure.intake.FrameDecoder;
import rondure.intake.Linearity;
import rondure.intake.ReadingLimits;
import rondure.intake.ShotFacts;
import rondure.stars.PixelContext;
import rondure.stars.StarField;
import rondure.stars.StarMeter;
import rondure.stars.StarSettings;

/** What a worker does in earnest: read the facts; decode the pixels and measure their stars. */
final class RealTasks implements WorkerTasks {
  private final ReadingLimits limits;

  RealTasks() {
    this(ReadingLimits.defaults());
  }

  private RealTasks(ReadingLimits limits) {
    this.limits = limits;
  }

  @Override
  public WorkerTasks within(ReadingLimits others) {
    return new RealTasks(others);
  }

  @Override
  public ShotFacts facts(Path file) throws FrameProblem {
    return FactsReader.read(file, limits);
  }

  @Override
  public FrameMeasurement measure(Path file, ShotFacts facts, StarSettings settings)
      throws FrameProblem {
    DecodedFrame frame = FrameDecoder.decode(file, facts.format(), facts.orientation(), limits);
    Linearity linearity = frame.linearity();
    PixelContext context =
        new PixelContext(
            frame.whiteLevelCounts(), frame.codeStepCounts(), linearity == Linearity.DEVELOPED);
    StarField field = StarMeter.measure(frame.plane(), context, settings);
    return new FrameMeasurement(facts, linearity, field, frame.thumbnail());
  }
}
