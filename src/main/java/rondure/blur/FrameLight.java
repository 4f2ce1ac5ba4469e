package rondure.blur;

import java.util.Objects;
import java.util.Optional;

/**
 * What became of the stars' light in one frame, beside the other frames of its scene.
 *
 * @param starCount stars of this frame that other frames show too
 * @param loss light lost; empty when it cannot be told
 * @param silence why not; empty when it can
 * @param wings light beside the stars, beyond what the scene's stars of this width have there;
 *     empty when it cannot be told
 */
public record FrameLight(
    int starCount, Optional<Loss> loss, Optional<Silence> silence, Optional<Wings> wings) {

  /** The stars' light, as a share, at whose loss a frame counts as hazy. */
  public static final double HAZE_LOSS_SHARE = 0.35;

  public FrameLight {
    Objects.requireNonNull(loss, "loss");
    Objects.requireNonNull(silence, "silence");
    Objects.requireNonNull(wings, "wings");
    if (loss.isPresent() == silence.isPresent()) {
      throw new IllegalArgumentException("either a loss or why there is none, not both or neither");
    }
  }

  /** Nothing can be told, for this reason. */
  static FrameLight silent(int starCount, Silence why) {
    return new FrameLight(starCount, Optional.empty(), Optional.of(why), Optional.empty());
  }

  static FrameLight lost(int starCount, Loss loss) {
    return new FrameLight(starCount, Optional.of(loss), Optional.empty(), Optional.empty());
  }

  FrameLight withWings(Optional<Wings> seen) {
    return new FrameLight(starCount, loss, silence, seen);
  }

  /**
   * Light lost, in magnitudes of the same stars, exposure, ISO and f-number taken off.
   *
   * @param lossMag beyond the 25th percentile of the frames it is linked with; negative for the
   *     clearest
   * @param errorMag standard error of that
   * @param scatterMag scatter of the loss over the field beyond the measuring errors: patches of
   *     cloud
   * @param slopeXMag how the loss grows to the right over half the frame's diagonal
   * @param slopeYMag the same downwards, stored coordinates
   * @param frames frames linked with each other by the stars they share
   */
  public record Loss(
      double lossMag,
      double errorMag,
      double scatterMag,
      double slopeXMag,
      double slopeYMag,
      int frames) {
    public Loss {
      if (!(Double.isFinite(lossMag) && errorMag >= 0 && scatterMag >= 0 && frames >= 2)) {
        throw new IllegalArgumentException(
            "loss must be finite, its errors >= 0, of 2 or more frames, were "
                + lossMag
                + ", "
                + errorMag
                + ", "
                + scatterMag
                + ", "
                + frames);
      }
    }

    /** Share of the light that is lost: 1 - 10^(-0.4 Δm); negative for a gain. */
    public double lostShare() {
      return 1 - Math.pow(10, -0.4 * lossMag);
    }

    /** How many standard errors the loss is beyond a given share of the light. */
    public double sigmasBeyond(double share) {
      return (lossMag + 2.5 * Math.log10(1 - share)) / Math.max(1e-3, errorMag);
    }
  }

  /**
   * Light beside the stars.
   *
   * @param excess wing ratio over the scene's own for stars of this width, minus 1
   * @param errorShare standard error of the excess
   */
  public record Wings(double excess, double errorShare) {
    public Wings {
      if (!(Double.isFinite(excess) && errorShare >= 0)) {
        throw new IllegalArgumentException(
            "wings must be finite, their error >= 0, were " + excess + ", " + errorShare);
      }
    }
  }

  /** Why the loss of light cannot be told. */
  public enum Silence {
    /** The frames could not be matched, or there is only one. */
    NOT_MATCHED,
    /** Too few of its stars are in other frames. */
    FEW_STARS,
    /** The sky is clipped to black: with it goes faint light. */
    BLACK_SKY,
    /** Every star is there twice, its light divided: no link between the frames beside it. */
    DOUBLE_IMAGE,
    /** Exposure, ISO or f-number is not known, and they may have changed. */
    EXPOSURE_UNKNOWN
  }
}
