package rondure.night;

/** What became of a frame. Only MEASURED and TOO_FEW_STARS count in the night's totals. */
public enum FrameStatus {
  MEASURED,
  TOO_FEW_STARS,
  NOT_NIGHT,
  TRAILS_INTENDED,
  COMPOSITE,
  UNREADABLE
}
