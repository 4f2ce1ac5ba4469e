package rondure.sky;

/**
 * How a lens maps the angle θ off its axis to the distance r from the image centre, before radial
 * distortion (Kingslake, Optical System Design; from memory).
 */
public enum Projection {
  /** r = f tan θ: straight lines stay straight. */
  RECTILINEAR,
  /** r = f θ. */
  EQUIDISTANT,
  /** r = 2 f sin(θ/2). */
  EQUISOLID,
  /** r = 2 f tan(θ/2). */
  STEREOGRAPHIC
}
