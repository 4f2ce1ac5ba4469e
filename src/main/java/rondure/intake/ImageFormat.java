package rondure.intake;

/** Kinds of image file, in the order in which copies of one exposure are preferred. */
public enum ImageFormat {
  RAW,
  FITS,
  TIFF,
  PNG,
  JPEG,
  HEIC,
  AVIF
}
