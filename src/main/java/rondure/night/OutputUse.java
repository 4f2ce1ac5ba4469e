package rondure.night;

/** What a picture is good for at most, the most demanding first. */
public enum OutputUse {
  /** Every pixel as taken: a large print, or a look at 100 %. */
  FULL_SIZE,
  /** Filling a 4K screen. */
  SCREEN_4K,
  /** On a web page. */
  WEB,
  /** Stars are no points even there. */
  NONE
}
