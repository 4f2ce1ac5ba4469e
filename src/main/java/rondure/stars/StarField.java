package rondure.stars;

import java.util.List;
import java.util.Map;
import java.util.Objects;

/**
 * Everything measured about the stars of one frame: a pure function of its pixels and the settings.
 *
 * @param widthPx stored width
 * @param heightPx stored height
 * @param stars measured stars in the sky region, brightest first; at most
 *     StarSettings.shapeStarsMax
 * @param others detections without a shape, brightest first; at most StarSettings.otherStarsMax
 * @param refused how many detections were refused, by reason (before the list was cut)
 * @param sky the background
 * @param mask sky and not-sky
 * @param averageStars averages over zones that hold at least 5 stars; WHOLE first
 * @param groundLights lamps outside the sky region, measured as stars are, brightest first; at most
 *     StarSettings.groundLightsMax
 * @param surroundings light about the stars that stand alone
 */
public record StarField(
    int widthPx,
    int heightPx,
    List<Star> stars,
    List<Detection> others,
    Map<Refusal, Integer> refused,
    SkyState sky,
    SkyMask mask,
    List<AverageStar> averageStars,
    List<Star> groundLights,
    Surroundings surroundings) {
  public StarField {
    stars = List.copyOf(stars);
    others = List.copyOf(others);
    refused = Map.copyOf(refused);
    averageStars = List.copyOf(averageStars);
    groundLights = List.copyOf(groundLights);
    Objects.requireNonNull(sky, "sky");
    Objects.requireNonNull(mask, "mask");
    Objects.requireNonNull(surroundings, "surroundings");
  }

  /** A field of whose stars' surroundings nothing is known. */
  public StarField(
      int widthPx,
      int heightPx,
      List<Star> stars,
      List<Detection> others,
      Map<Refusal, Integer> refused,
      SkyState sky,
      SkyMask mask,
      List<AverageStar> averageStars,
      List<Star> groundLights) {
    this(
        widthPx,
        heightPx,
        stars,
        others,
        refused,
        sky,
        mask,
        averageStars,
        groundLights,
        Surroundings.NONE);
  }
}
