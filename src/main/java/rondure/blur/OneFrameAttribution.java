package rondure.blur;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import rondure.sky.Direction;

/**
 * The first honest judgement: what one frame shows, beside the sharpest of its scene.
 *
 * <p>Round and wide is focus; one direction everywhere is the sky or the tripod, told apart by the
 * longest trail the exposure allows, by how directions turn over a wide field, and by whether the
 * other frames are stretched alike; every star twice, or with a faint tail, is the tripod; soft or
 * oval at the edges only is the lens; oval stars are never "none". Where the whole scene is soft,
 * its core is not known: a prior on the width of lens cores is mixed in, and confidence is low.
 */
public final class OneFrameAttribution implements Attribution {

  /** With so few stars a median is worth half of what it is with many. */
  private static final double FEW_STARS = 4;

  private static final double FLAT_TOP_LEAVES = 0.1;

  /** Two images of every star leave no room but for a mount or a mirror nobody thought of. */
  private static final double PROVEN = 0.95;

  private final AttributionSettings settings;

  public OneFrameAttribution(AttributionSettings settings) {
    this.settings = settings;
  }

  @Override
  public SceneVerdicts judge(SceneEvidence scene) {
    List<Judged> frames =
        scene.frames().stream()
            .parallel()
            .map(frame -> new Judged(judge(frame), Optional.empty(), Optional.empty()))
            .toList();
    return new SceneVerdicts(frames, Optional.empty());
  }

  /** Judges one frame. */
  public Verdict judge(FrameEvidence evidence) {
    return judge(evidence, CameraPath.of(evidence));
  }

  /** The same where the camera's path was read already. */
  Verdict judge(FrameEvidence evidence, CameraPath path) {
    FieldShape shape = FieldShape.of(evidence.field());
    double oval = Oval.probability(shape);
    DirectionReading direction = DirectionReading.of(evidence, oval >= Oval.CLEAR);
    WidthReading widths = WidthReading.of(evidence.field(), direction.at());
    SmearOwner owner = SmearOwner.of(evidence, shape, direction, path.tail().isPresent());
    Core core = core(evidence, shape, widths);
    double smear = direction.smearPx2() + path.tailPx2();
    Map<Cause, Double> byWidth = byWidth(core, widths, smear, owner.trailing());
    Map<Cause, Double> byShape = Oval.applied(byWidth, direction, owner.trailing(), oval);
    Map<Cause, Double> humble = humble(byShape, shape.starCount());
    Map<Cause, Double> probabilities =
        path.twice().isPresent()
            ? Mixing.mix(Mixing.certain(Cause.TRIPOD), PROVEN, humble)
            : humble;
    Excess excess = Excess.over(core.px2(), widths, smear);
    Findings findings = new Findings(evidence, shape, direction, excess);
    return Verdict.of(probabilities, findings.list(owner, core, path));
  }

  /**
   * Whose a smear common to all stars is.
   *
   * @param trailing probability that it is the sky's and not the tripod's
   * @param pole of the sky, the likeliest if it is, where facts allow to say
   */
  record Owner(double trailing, Optional<Direction> pole) {}

  Owner owner(FrameEvidence evidence) {
    FieldShape shape = FieldShape.of(evidence.field());
    boolean oval = Oval.probability(shape) >= Oval.CLEAR;
    DirectionReading direction = DirectionReading.of(evidence, oval);
    boolean tail = FaintTail.of(evidence.field(), shape).isPresent();
    return new Owner(
        SmearOwner.of(evidence, shape, direction, tail).trailing(),
        direction.poles().map(PoleOdds::pole));
  }

  private Map<Cause, Double> byWidth(
      Core core, WidthReading widths, double smearPx2, double trailing) {
    Excess excess = Excess.over(core.px2(), widths, smearPx2);
    Excess ifDefocused = Excess.over(core.ifDefocusedPx2(), widths, smearPx2);
    return Mixing.mix(
        excess.probabilities(trailing, settings),
        core.sharp(),
        ifDefocused.probabilities(trailing, settings));
  }

  /**
   * What the core may be.
   *
   * @param px2 as the sharpest frames, or the sharpest part of this one, show it
   * @param ifDefocusedPx2 what it is when even those are out of focus
   * @param sharp probability that they are not
   * @param flatness of the average star's top, when it is flat
   * @param finestFwhmPx half-maximum width that pixels alone can give
   */
  record Core(
      double px2,
      double ifDefocusedPx2,
      double sharp,
      Optional<Double> flatness,
      double finestFwhmPx) {}

  private Core core(FrameEvidence evidence, FieldShape shape, WidthReading widths) {
    double pixelLimit = BestCase.gaussianPx2(settings.pixelLimitFwhmPx());
    double diffraction = evidence.diffractionFwhmPx().map(BestCase::leastPx2).orElse(0.0);
    double least = Math.max(pixelLimit, diffraction);
    double seen = Math.min(evidence.scene().corePx2(), widths.bestPx2());
    double core = Math.max(least, seen);
    // Half-maximum width of that core, by this frame's own relation of the two.
    double perRms = shape.minorFwhmPx() / Math.sqrt(shape.minorPx2());
    double coreFwhm =
        Math.min(evidence.scene().coreFwhmPx(), Math.max(1, perRms * Math.sqrt(core)));
    double limit =
        evidence.developed() ? settings.widestCoreDevelopedPx() : settings.widestCoreSensorPx();
    double sharp = Excess.logistic((limit - coreFwhm) / settings.coreSpreadPx());
    Optional<Double> flat =
        FlatTop.of(evidence.field())
            .filter(f -> f >= FlatTop.FLAT_FROM && shape.moments().roundness() > 0.75);
    double usual = Math.min(1, settings.usualCoreFwhmPx() / coreFwhm);
    boolean wholeSceneFlat = flat.isPresent() && core > 0.8 * widths.medianPx2();
    return new Core(
        core,
        Math.max(least, core * usual * usual),
        wholeSceneFlat ? sharp * FLAT_TOP_LEAVES : sharp,
        flat,
        settings.pixelLimitFwhmPx());
  }

  /** Few stars: part of the probability goes to every cause alike. */
  private static Map<Cause, Double> humble(Map<Cause, Double> probabilities, int starCount) {
    return Mixing.mix(probabilities, starCount / (starCount + FEW_STARS), Mixing.even());
  }
}
