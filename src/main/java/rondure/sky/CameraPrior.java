package rondure.sky;

/**
 * What is known of a camera before its stars are looked at.
 *
 * @param nominal camera from the facts
 * @param focalShare standard error of its focal length, as a share of it
 * @param k1Error standard error of its k1
 */
record CameraPrior(Camera nominal, double focalShare, double k1Error) {

  /**
   * Focal lengths in files are rounded, and true ones differ by several percent (common practice:
   * ±5 % is usual); the distortion of lenses is mostly below 5 % (common practice).
   */
  static CameraPrior ofFacts(Camera nominal) {
    return new CameraPrior(nominal, 0.03, 0.05);
  }

  /** A camera whose focal length the scene itself told, to a share. */
  static CameraPrior found(Camera camera, double focalShare) {
    return new CameraPrior(camera, focalShare, 0.05);
  }

  /** Misfit of a camera, squared and summed over both parameters. */
  double chi2(Camera camera) {
    double focal = Math.log(camera.focalLengthPx() / nominal.focalLengthPx()) / focalShare;
    double distortion = (camera.k1() - nominal.k1()) / k1Error;
    return focal * focal + distortion * distortion;
  }

  CameraPrior through(Projection projection) {
    Camera camera =
        new Camera(
            projection,
            nominal.focalLengthPx(),
            projection == nominal.projection() ? nominal.k1() : 0,
            nominal.centreXPx(),
            nominal.centreYPx());
    return new CameraPrior(camera, focalShare, k1Error);
  }
}
