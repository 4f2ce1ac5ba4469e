package rondure.blur;

import java.util.Set;

/**
 * That the sharpest frames of a scene are near focus, and how firmly.
 *
 * @param frames held near focus; none where a core is expected instead
 */
record NearFocus(Set<Integer> frames, Firmness firmness) {
  private static final double HELD_SHARE = 0.1;

  /** A disc that widens a star by 2.5 % is in focus, D²/16 = 0.05 M: D over √M. */
  private static final double WIDTHS = 0.9;

  private static final double LEAST_PX2 = 0.1;

  /** What the expectation does against the field. */
  enum Firmness {
    /** Gaussian: decides where the field says little, meets it half way where both are sure. */
    EXPECTED,
    /** As good as certain, to ask how badly that fits. */
    HELD,
    /** Gives way to the field, and drifts where that says nothing. */
    LOOSE
  }

  NearFocus {
    frames = Set.copyOf(frames);
  }

  /** The same frames. */
  NearFocus with(Firmness other) {
    return new NearFocus(frames, other);
  }

  /** Expects a frame's disc to be what it is in focus. */
  void expect(Prior prior, double focusedPx, FrameModel model, double misfit) {
    double error = errorPx(model);
    double tempered = error / Math.sqrt(misfit);
    switch (firmness) {
      case EXPECTED -> prior.expect(FrameModel.DISC, focusedPx, tempered);
      case HELD -> prior.expect(FrameModel.DISC, focusedPx, HELD_SHARE * tempered);
      case LOOSE -> prior.expectLoosely(FrameModel.DISC, focusedPx, error, misfit);
    }
  }

  /** Disc that still counts as in focus. */
  static double errorPx(FrameModel model) {
    double still = model.stars().stillRoundPx2(model.lengthening());
    return WIDTHS * Math.sqrt(Math.max(LEAST_PX2, still));
  }
}
