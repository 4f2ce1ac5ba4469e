package rondure.intake;

import java.util.Optional;

/**
 * How the codes of a developed file are made linear.
 *
 * @param curve the tone curve to undo
 * @param linearity how far that can be trusted
 */
record Developed(ToneCurve curve, Linearity linearity) {

  /**
   * The choice for a TIFF, PNG or JPEG. Files of 8 bits went through a developer's tone mapping as
   * well, so they stay DEVELOPED even when a curve is embedded.
   *
   * @param tagged the curve that the file states, if any
   * @param profiled true when the file holds a profile, readable or not
   * @param bits per sample
   */
  static Developed of(Optional<ToneCurve> tagged, boolean profiled, int bits) {
    if (bits <= 8) {
      return new Developed(tagged.orElse(ToneCurve.SRGB), Linearity.DEVELOPED);
    }
    if (tagged.isPresent()) {
      return new Developed(tagged.get(), Linearity.TAGGED);
    }
    return profiled
        ? new Developed(ToneCurve.SRGB, Linearity.DEVELOPED)
        : new Developed(ToneCurve.LINEAR, Linearity.ASSUMED);
  }
}
