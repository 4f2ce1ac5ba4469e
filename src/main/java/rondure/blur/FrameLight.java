package rondure.blur;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;

/**
 * What became of the stars' light in one frame, beside the other frames of its scene.
 *
 * @param starCount stars of this frame that other frames show too
 * @param loss light lost; empty when it cannot be told
 * @param silence why not; empty when it can
 * @param halo the round glow about its stars, if there is one; empty when it cannot be told
 * @param clearHalo the usual halo of the scene's clear frames; of this frame where none is known
 * @param wings light beside the stars, beyond what the scene's stars of this width have there;
 *     empty when it cannot be told
 */
public record FrameLight(
    int starCount,
    Optional<Loss> loss,
    Optional<Silence> silence,
    Optional<Wings> wings,
    Optional<Halo> halo,
    Optional<Halo> clearHalo) {

  /** The stars' light, as a share, at whose loss a frame counts as hazy. */
  public static final double HAZE_LOSS_SHARE = 0.35;

  /** Frames that lost less light than this are clear. */
  static final double CLEAR_MAG = 0.1;

  public FrameLight {
    Objects.requireNonNull(loss, "loss");
    Objects.requireNonNull(silence, "silence");
    Objects.requireNonNull(wings, "wings");
    Objects.requireNonNull(halo, "halo");
    Objects.requireNonNull(clearHalo, "clearHalo");
    if (loss.isPresent() == silence.isPresent()) {
      throw new IllegalArgumentException("either a loss or why there is none, not both or neither");
    }
  }

  /** Nothing can be told, for this reason. */
  static FrameLight silent(int starCount, Silence why) {
    return new FrameLight(
        starCount,
        Optional.empty(),
        Optional.of(why),
        Optional.empty(),
        Optional.empty(),
        Optional.empty());
  }

  static FrameLight lost(int starCount, Loss loss) {
    return new FrameLight(
        starCount,
        Optional.of(loss),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty());
  }

  FrameLight withWings(Optional<Wings> seen) {
    return new FrameLight(starCount, loss, silence, seen, halo, clearHalo);
  }

  private FrameLight withHalos(Optional<Halo> own, Optional<Halo> clear) {
    return new FrameLight(starCount, loss, silence, wings, own, clear);
  }

  /** The same of a frame whose missing light a knock drew out. */
  FrameLight knocked() {
    return new FrameLight(
        starCount,
        Optional.empty(),
        Optional.of(Silence.KNOCKED),
        Optional.empty(),
        Optional.empty(),
        clearHalo);
  }

  /** The answers of a scene with the halos seen in its frames, in the same order. */
  static List<FrameLight> withHalos(List<FrameLight> lights, List<Optional<Halo>> halos) {
    List<Halo> clear = new ArrayList<>();
    for (int i = 0; i < lights.size(); i++) {
      boolean isClear = lights.get(i).loss().filter(l -> l.lossMag() < CLEAR_MAG).isPresent();
      halos.get(i).filter(halo -> isClear).ifPresent(clear::add);
    }
    Optional<Halo> typical = Halo.typical(clear);
    List<FrameLight> answers = new ArrayList<>();
    for (int i = 0; i < lights.size(); i++) {
      Optional<Halo> own = halos.get(i);
      boolean compared = lights.get(i).loss().isPresent();
      answers.add(lights.get(i).withHalos(own, compared ? typical : own));
    }
    return answers;
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
   * @param fallMag how much light these lost from the first to the last, where they are too few to
   *     show where a steady fall began; else 0
   */
  public record Loss(
      double lossMag,
      double errorMag,
      double scatterMag,
      double slopeXMag,
      double slopeYMag,
      int frames,
      double fallMag) {
    public Loss {
      if (!(Double.isFinite(lossMag)
          && errorMag >= 0
          && scatterMag >= 0
          && frames >= 2
          && fallMag >= 0)) {
        throw new IllegalArgumentException(
            "loss must be finite, its errors >= 0, of 2 or more frames, were "
                + lossMag
                + ", "
                + errorMag
                + ", "
                + scatterMag
                + ", "
                + frames
                + ", "
                + fallMag);
      }
    }

    /** The same in a steady fall. */
    Loss of(double steadyFallMag) {
      return new Loss(lossMag, errorMag, scatterMag, slopeXMag, slopeYMag, frames, steadyFallMag);
    }

    /** Share of the light that is lost: 1 - 10^(-0.4 Δm); negative for a gain. */
    public double lostShare() {
      return 1 - Math.pow(10, -0.4 * lossMag);
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
    /** A knock drew light out of the stars' places. */
    KNOCKED,
    /** Exposure, ISO or f-number is not known, and they may have changed. */
    EXPOSURE_UNKNOWN
  }
}
