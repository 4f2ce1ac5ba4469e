package rondure.evaluation;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import rondure.base.JpegPicture;
import rondure.crew.FrameMeasurement;
import rondure.intake.CaptureTime;
import rondure.intake.Fact;
import rondure.intake.ImageFormat;
import rondure.intake.Linearity;
import rondure.intake.ShotFacts;
import rondure.sim.FrameTruth;
import rondure.sim.LensPlan;
import rondure.sim.NightPlan;
import rondure.sim.NightSimulator;
import rondure.sim.ShotGroup;
import rondure.stars.StarField;
import rondure.testing.TruthFields;

/** A drawn night as measured without pixels: true shapes with the noise of measuring. */
public final class TruthNight {
  private TruthNight() {}

  /** What would have been measured in the frames of a plan. */
  public static List<FrameMeasurement> frames(NightPlan plan) {
    return of(plan).frames();
  }

  /** Cores are Gaussian: made shapes say nothing of wings. */
  static MeasuredNight of(NightPlan drawn) {
    NightPlan plan = gaussian(drawn);
    NightSimulator simulator = new NightSimulator(plan);
    List<FrameAnswer> answers = new ArrayList<>();
    List<FrameMeasurement> frames = new ArrayList<>();
    int number = 0;
    for (ShotGroup group : plan.shots()) {
      for (int i = 0; i < group.count(); i++) {
        number++;
        FrameTruth truth = simulator.truth(number);
        StarField field = TruthFields.of(plan, truth, plan.seed());
        answers.add(FrameAnswer.of(truth));
        frames.add(
            new FrameMeasurement(
                facts(plan, group, truth.startSeconds()),
                Linearity.TAGGED,
                field,
                new JpegPicture(new byte[0])));
      }
    }
    return new MeasuredNight("truth " + plan.title(), answers, frames);
  }

  private static NightPlan gaussian(NightPlan p) {
    LensPlan l = p.lens();
    LensPlan lens =
        new LensPlan(
            l.model(),
            l.focalLengthMm(),
            l.fNumber(),
            l.coreFwhmPx(),
            0,
            l.distortionK1(),
            l.tiltRightMicrons(),
            l.tiltDownMicrons(),
            l.curvatureMicrons(),
            l.astigmatismMicrons(),
            l.comaPx(),
            l.obstruction(),
            l.vignettingStops());
    return Plans.with(p, lens);
  }

  private static ShotFacts facts(NightPlan plan, ShotGroup group, double startSeconds) {
    boolean fine = !plan.files().withoutSubSeconds();
    long nanos = (long) (startSeconds * 1e9);
    java.time.LocalDateTime start = plan.startTime().plusNanos(nanos);
    return new ShotFacts(
        ImageFormat.TIFF,
        plan.camera().widthPx(),
        plan.camera().heightPx(),
        plan.aim().held(),
        Optional.of(
            new CaptureTime(
                start.withNano(fine ? start.getNano() / 10_000_000 * 10_000_000 : 0),
                OptionalInt.empty(),
                fine,
                Fact.Source.FILE)),
        known(group.exposureSeconds()),
        known(group.fNumber().orElse(plan.lens().fNumber())),
        known(group.iso()),
        known(plan.lens().focalLengthMm()),
        Optional.empty(),
        known(plan.camera().pixelPitchMicrons()),
        Optional.empty(),
        known(plan.camera().model()),
        known(plan.lens().model()),
        false);
  }

  private static <T> Optional<Fact<T>> known(T value) {
    return Optional.of(new Fact<>(value, Fact.Source.FILE));
  }
}
