package rondure.night;

/** What to do with a frame. */
public enum Grade {
  KEEP,
  LOOK_CLOSER,
  SET_ASIDE
}
