package rondure.blur;

/**
 * What one frame's uniform spin-2 says about shake.
 *
 * <p>Defocus makes no uniform spin-2, and a lens the same in every frame. Clearly there, above 0.10
 * px² and above a tenth of the frame's widening it proves that the camera moved; then the round
 * widening that the frames before and after do not have is the camera's too, as shake is seldom
 * along one line.
 *
 * @param kind how sure
 * @param spin2Px2 length of the uniform spin-2
 * @param errorPx2 its standard error
 */
record Shake(Kind kind, double spin2Px2, double errorPx2) {
  /** How sure a shake is. */
  enum Kind {
    /** Nothing beyond errors. */
    NONE,
    /** There, but small: as much as its spin-2 needs, no more. */
    SLIGHT,
    /** Proven: the tripod takes the round widening too. */
    PROVEN
  }

  private static final double CLEAR = 4.5;
  private static final double LEAST_PX2 = 0.10;
  private static final double LEAST_SHARE = 0.10;

  /** What a smooth lens model leaves of uniform spin-2 in a frame: 0.01 to 0.03 px² in trials. */
  private static final double MODEL_ERROR_PX2 = 0.015;

  /**
   * Reads a frame fitted with a free uniform spin-2.
   *
   * @param spin2 length of that, what all frames share taken off
   * @param excessPx2 its round widening over the core, trail taken off
   */
  static Shake of(FrameModel model, double[] shared, double[] own, double spin2, double excessPx2) {
    FrameNormals normals = FrameNormals.of(model, shared, own, FrameModel.SHARED);
    int along = FrameModel.SHARED + FrameModel.ALONG;
    int diagonal = FrameModel.SHARED + FrameModel.DIAGONAL;
    double stiffness = Math.min(normals.matrix[along][along], normals.matrix[diagonal][diagonal]);
    double error = Math.hypot(MODEL_ERROR_PX2, 1 / Math.sqrt(Math.max(1e-9, stiffness)));
    Kind kind = Kind.NONE;
    if (spin2 > CLEAR * error) {
      boolean matters = spin2 > LEAST_PX2 && spin2 > LEAST_SHARE * excessPx2;
      kind = matters ? Kind.PROVEN : Kind.SLIGHT;
    }
    return new Shake(kind, spin2, error);
  }

  boolean proven() {
    return kind == Kind.PROVEN;
  }
}
