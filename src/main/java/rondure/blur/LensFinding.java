package rondure.blur;

import java.util.Objects;

/**
 * A lens that may explain a scene.
 *
 * @param surface what it does over the field
 * @param errors of the surface's numbers
 * @param share how far it is believed, 0 to 1, beside the others that may explain the scene
 */
public record LensFinding(LensSurface surface, LensErrors errors, double share) {
  public LensFinding {
    Objects.requireNonNull(surface, "surface");
    Objects.requireNonNull(errors, "errors");
    if (!(share >= 0 && share <= 1)) {
      throw new IllegalArgumentException("share must be in [0, 1], was " + share);
    }
  }
}
