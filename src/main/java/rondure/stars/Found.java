package rondure.stars;

import java.util.List;

/**
 * What the finder gives to the shape meter.
 *
 * @param background level and noise everywhere
 * @param mask sky and not-sky
 * @param sky the background in a few numbers
 * @param candidates detected sources, brightest first
 */
public record Found(Background background, SkyMask mask, SkyState sky, List<Candidate> candidates) {
  public Found {
    candidates = List.copyOf(candidates);
  }
}
