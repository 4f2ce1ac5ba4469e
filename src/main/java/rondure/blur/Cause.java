package rondure.blur;

/** What can soften a star. */
public enum Cause {
  NONE,
  FOCUS,
  TRAILING,
  TRIPOD,
  LENS,
  HAZE
}
