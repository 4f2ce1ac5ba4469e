package rondure.sim;

import com.fasterxml.jackson.annotation.JsonSubTypes;
import com.fasterxml.jackson.annotation.JsonTypeInfo;
import java.util.Objects;

/**
 * Something that happens during the night. Frames are counted from 1. Shifts are px of the image at
 * the frame's centre, x to the right, y down; directions run from +x towards +y.
 */
@JsonTypeInfo(use = JsonTypeInfo.Id.NAME, property = "kind")
@JsonSubTypes({
  @JsonSubTypes.Type(value = NightEvent.Gust.class, name = "gust"),
  @JsonSubTypes.Type(value = NightEvent.Knock.class, name = "knock"),
  @JsonSubTypes.Type(value = NightEvent.Droop.class, name = "droop"),
  @JsonSubTypes.Type(value = NightEvent.HandPress.class, name = "handPress"),
  @JsonSubTypes.Type(value = NightEvent.ReAim.class, name = "reAim"),
  @JsonSubTypes.Type(value = NightEvent.Cloud.class, name = "cloud"),
  @JsonSubTypes.Type(value = NightEvent.Dew.class, name = "dew"),
  @JsonSubTypes.Type(value = NightEvent.SkyGlow.class, name = "skyGlow"),
  @JsonSubTypes.Type(value = NightEvent.Aircraft.class, name = "aircraft")
})
public sealed interface NightEvent {

  /** First frame that the event touches. */
  int firstFrame();

  /** Last frame that the event touches; a lasting change names its first frame only. */
  int lastFrame();

  /**
   * Wind: the camera swings as a sinusoid along {@code directionDeg}, less across and in roll.
   *
   * @param amplitudePx amplitude along the direction
   * @param acrossShare amplitude across, as a share of that along
   * @param frequencyHz 2 to 15 for tripods (common practice)
   */
  record Gust(
      int firstFrame,
      int lastFrame,
      double amplitudePx,
      double acrossShare,
      double frequencyHz,
      double directionDeg)
      implements NightEvent {
    public Gust {
      Checks.frames(firstFrame, lastFrame);
      Checks.within("gust amplitudePx", amplitudePx, 0, 200);
      Checks.within("gust acrossShare", acrossShare, 0, 1);
      Checks.within("gust frequencyHz", frequencyHz, 0.05, 60);
      Checks.finite("gust directionDeg", directionDeg);
    }
  }

  /**
   * A kick: the camera jumps for good, and rings.
   *
   * @param frame during which it happens
   * @param atShare of the exposure that has passed, 0 to 1
   * @param shiftXPx lasting shift
   * @param shiftYPx lasting shift
   * @param ringPx first amplitude of the vibration, along the shift
   * @param ringHz its frequency
   * @param ringDecaySeconds time in which it falls to 1/e
   */
  record Knock(
      int frame,
      double atShare,
      double shiftXPx,
      double shiftYPx,
      double ringPx,
      double ringHz,
      double ringDecaySeconds)
      implements NightEvent {
    public Knock {
      Checks.frames(frame, frame);
      Checks.within("knock atShare", atShare, 0, 1);
      Checks.finite("knock shiftXPx", shiftXPx);
      Checks.finite("knock shiftYPx", shiftYPx);
      Checks.notNegative("knock ringPx", ringPx);
      Checks.within("knock ringHz", ringHz, 0.05, 60);
      Checks.within("knock ringDecaySeconds", ringDecaySeconds, 0.01, 60);
    }

    @Override
    public int firstFrame() {
      return frame;
    }

    @Override
    public int lastFrame() {
      return frame;
    }
  }

  /**
   * A drooping head: the camera turns at a steady rate from the first frame's start to the last
   * one's end. On a tracking mount: its drift.
   */
  record Droop(int firstFrame, int lastFrame, double pxPerMinute, double directionDeg)
      implements NightEvent {
    public Droop {
      Checks.frames(firstFrame, lastFrame);
      Checks.finite("droop pxPerMinute", pxPerMinute);
      Checks.finite("droop directionDeg", directionDeg);
    }
  }

  /** A hand on the shutter: a vibration at the start of each exposure, decaying. */
  record HandPress(
      int firstFrame, int lastFrame, double amplitudePx, double frequencyHz, double decaySeconds)
      implements NightEvent {
    public HandPress {
      Checks.frames(firstFrame, lastFrame);
      Checks.within("hand amplitudePx", amplitudePx, 0, 200);
      Checks.within("hand frequencyHz", frequencyHz, 0.05, 60);
      Checks.within("hand decaySeconds", decaySeconds, 0.01, 600);
    }
  }

  /** The camera is aimed anew before this frame. */
  record ReAim(int frame, AimPlan aim) implements NightEvent {
    public ReAim {
      Checks.frames(frame, frame);
      Objects.requireNonNull(aim, "reAim aim");
    }

    @Override
    public int firstFrame() {
      return frame;
    }

    @Override
    public int lastFrame() {
      return frame;
    }
  }

  /**
   * Drifting cloud: patchy extinction, and glow from below.
   *
   * @param opacityMag mean extinction; patches vary about it
   * @param patchiness 0 = even veil, 1 = patches from clear to twice the mean
   * @param glow brightness added where the cloud is, as a multiple of the zenith sky
   */
  record Cloud(int firstFrame, int lastFrame, double opacityMag, double patchiness, double glow)
      implements NightEvent {
    public Cloud {
      Checks.frames(firstFrame, lastFrame);
      Checks.within("cloud opacityMag", opacityMag, 0, 10);
      Checks.within("cloud patchiness", patchiness, 0, 1);
      Checks.notNegative("cloud glow", glow);
    }
  }

  /**
   * Dew on the front lens, growing from the first frame to the last and staying.
   *
   * @param opacityMag light lost at the end
   * @param haloShare share of the star's remaining light that ends in a halo
   * @param haloFwhmPx width of the halo
   */
  record Dew(int firstFrame, int lastFrame, double opacityMag, double haloShare, double haloFwhmPx)
      implements NightEvent {
    public Dew {
      Checks.frames(firstFrame, lastFrame);
      Checks.within("dew opacityMag", opacityMag, 0, 10);
      Checks.within("dew haloShare", haloShare, 0, 0.95);
      Checks.within("dew haloFwhmPx", haloFwhmPx, 1, 60);
    }
  }

  /** Moon or twilight: the sky brightens evenly from the first frame to the last and stays. */
  record SkyGlow(int firstFrame, int lastFrame, double factor) implements NightEvent {
    public SkyGlow {
      Checks.frames(firstFrame, lastFrame);
      Checks.within("skyGlow factor", factor, 0.01, 1e6);
    }
  }

  /** A streak from one point of the frame to another, with strobes. */
  record Aircraft(
      int frame, double fromXPx, double fromYPx, double toXPx, double toYPx, double magnitude)
      implements NightEvent {
    public Aircraft {
      Checks.frames(frame, frame);
      Checks.finite("aircraft fromXPx", fromXPx);
      Checks.finite("aircraft fromYPx", fromYPx);
      Checks.finite("aircraft toXPx", toXPx);
      Checks.finite("aircraft toYPx", toYPx);
      Checks.finite("aircraft magnitude", magnitude);
    }

    @Override
    public int firstFrame() {
      return frame;
    }

    @Override
    public int lastFrame() {
      return frame;
    }
  }
}
