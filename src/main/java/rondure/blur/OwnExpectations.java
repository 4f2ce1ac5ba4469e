package rondure.blur;

import java.util.ArrayList;
import java.util.List;

/**
 * What is expected of each frame's own parameters before its stars are asked.
 *
 * <p>Unshaken frames: no shake, any defocus, the sharpest near focus. Shaken ones: any round shake,
 * and the defocus of the unshaken frames before and after them, as focus drifts or is bumped but
 * does not come and go with a gust; none where every frame is shaken. An expectation weighs the
 * more, the more stars of a block miss the model together ({@link SharedMisfit}).
 */
final class OwnExpectations {

  private static final double NO_SHAKE_PX2 = 0.02;
  private static final double ANY_PX2 = 30;
  private static final double ANY_SPIN2_PX2 = 10;
  private static final double ANY_DISC_PX = 40;

  private static final double LIKE_NEIGHBOURS_PX = 0.7;

  /**
   * Round part of a shake over its spin-2: 1 along one line, 1.3 to 1.7 for the swings of gusts.
   */
  private static final double USUAL_ROUND = 1.2;

  /** One wind blows on all frames: together they say this once. */
  private static final double ROUND_SPREAD = 0.35;

  private final List<FrameModel> models;
  private final NearFocus nearFocus;
  private final List<Shake> shakes;
  private final double[] discs;
  private final double misfit;
  private final boolean coreFromShaken;

  private OwnExpectations(
      List<FrameModel> models,
      NearFocus nearFocus,
      List<Shake> shakes,
      double[] discs,
      double misfit,
      boolean coreFromShaken) {
    this.coreFromShaken = coreFromShaken;
    this.models = models;
    this.nearFocus = nearFocus;
    this.shakes = shakes;
    this.discs = discs;
    this.misfit = misfit;
  }

  /**
   * Before anything is known of shakes.
   *
   * @param misfit see {@link SharedMisfit}
   */
  static OwnExpectations calm(List<FrameModel> models, NearFocus nearFocus, double misfit) {
    Shake none = new Shake(Shake.Kind.NONE, 0, 0);
    List<Shake> calm = java.util.Collections.nCopies(models.size(), none);
    return new OwnExpectations(models, nearFocus, calm, new double[models.size()], misfit, false);
  }

  /**
   * Once shakes are read from frames fitted as unshaken.
   *
   * @param coreFromShaken whether too few are unshaken to show the core: then the round part of a
   *     shake is what its spin-2 makes likely
   */
  OwnExpectations with(
      List<Shake> read, List<double[]> own, LensSurface lens, boolean coreFromShaken) {
    double[] expected = new double[models.size()];
    for (int j = 0; j < expected.length; j++) {
      double focused = -lens.meanDiscPx(0, models.get(j).stars().places.stop);
      expected[j] = read.get(j).proven() ? neighbours(j, read, own, focused) : focused;
    }
    return new OwnExpectations(models, nearFocus, read, expected, misfit, coreFromShaken);
  }

  /** The same with the sharpest frames near focus as firmly as said. */
  OwnExpectations with(NearFocus.Firmness firmness) {
    NearFocus other = nearFocus.with(firmness);
    return new OwnExpectations(models, other, shakes, discs, misfit, coreFromShaken);
  }

  /** Whether the disc of a frame expected near focus is farther from it than that allows. */
  boolean focusDoubted(List<double[]> own) {
    for (int j = 0; j < discs.length; j++) {
      double off = Math.abs(own.get(j)[FrameModel.DISC] - discs[j]);
      if (isNearFocus(j) && off > NearFocus.errorPx(models.get(j))) {
        return true;
      }
    }
    return false;
  }

  private boolean isNearFocus(int frame) {
    return nearFocus.frames().contains(frame) && !shakes.get(frame).proven();
  }

  /** Disc between those of the nearest unshaken frames before and after. */
  private static double neighbours(
      int frame, List<Shake> read, List<double[]> own, double otherwise) {
    int before = frame - 1;
    while (before >= 0 && read.get(before).proven()) {
      before--;
    }
    int after = frame + 1;
    while (after < read.size() && read.get(after).proven()) {
      after++;
    }
    boolean first = before < 0;
    boolean last = after >= read.size();
    if (first && last) {
      return otherwise;
    }
    double one = own.get(first ? after : before)[FrameModel.DISC];
    double two = own.get(last ? before : after)[FrameModel.DISC];
    double share = first || last ? 0 : (frame - before) / (double) (after - before);
    return one + share * (two - one);
  }

  /** Of one frame. */
  Prior of(int frame) {
    double tempered = 1 / Math.sqrt(misfit);
    Shake shake = shakes.get(frame);
    Prior prior = new Prior(FrameModel.OWN);
    prior.expect(FrameModel.ALONG, 0, ANY_SPIN2_PX2);
    prior.expect(FrameModel.DIAGONAL, 0, ANY_SPIN2_PX2);
    prior.expect(FrameModel.DISC, 0, ANY_DISC_PX);
    if (shake.proven()) {
      double spin2 = shake.spin2Px2();
      if (coreFromShaken) {
        double spread = ROUND_SPREAD * Math.sqrt(shakes.size());
        prior.expect(FrameModel.SHAKE, USUAL_ROUND * spin2, spread * spin2 * tempered);
      } else {
        prior.expect(FrameModel.SHAKE, 0, ANY_PX2);
      }
      prior.expect(FrameModel.DISC, discs[frame], LIKE_NEIGHBOURS_PX * tempered);
      return prior;
    }
    double needed = shake.kind() == Shake.Kind.SLIGHT ? shake.spin2Px2() : 0;
    prior.expect(FrameModel.SHAKE, needed, NO_SHAKE_PX2 * tempered);
    if (isNearFocus(frame)) {
      nearFocus.expect(prior, discs[frame], models.get(frame), misfit);
    }
    return prior;
  }

  /** Where a shaken frame's fit begins, its widening given to the shake; others as they were. */
  double[] start(int frame, double[] own) {
    double[] start = own.clone();
    if (shakes.get(frame).proven()) {
      start[FrameModel.DISC] = discs[frame];
      double widening = (own[FrameModel.DISC] * own[FrameModel.DISC] - discs[frame] * discs[frame]);
      start[FrameModel.SHAKE] = Math.max(shakes.get(frame).spin2Px2(), widening / 16);
    }
    return start;
  }

  List<Prior> of(List<Integer> frames) {
    List<Prior> priors = new ArrayList<>();
    frames.forEach(frame -> priors.add(of(frame)));
    return priors;
  }
}
