package rondure.blur;

/**
 * The tensors that a scene's and a frame's parameters predict, and how they change with them.
 *
 * <p>M(x, y) = core + steady motion + camera's turning B S Bᵀ + disc and coma of the lens, in the
 * three numbers of {@link FrameStars}. Shared parameters: {@link #CORE}, {@link #TILT_RIGHT}, …;
 * the frame's own: {@link #DISC}, {@link #SHAKE} (round part of S, px² at the centre), {@link
 * #ALONG}, {@link #DIAGONAL} (its spin-2 part).
 */
final class FrameModel {
  static final int CORE = 0;
  static final int TILT_RIGHT = 1;
  static final int TILT_DOWN = 2;
  static final int CURVATURE = 3;
  static final int ASTIGMATISM = 4;
  static final int COMA = 5;

  /** Number of shared parameters; the frame's own follow. */
  static final int SHARED = 6;

  static final int DISC = 0;
  static final int SHAKE = 1;
  static final int ALONG = 2;
  static final int DIAGONAL = 3;

  /** Number of the frame's own parameters. */
  static final int OWN = 4;

  static final int ALL = SHARED + OWN;

  private final FrameStars stars;

  /** True exposure over nominal, squared. */
  private final double lengthening;

  FrameModel(FrameStars stars, double lengthening) {
    this.stars = stars;
    this.lengthening = lengthening;
  }

  FrameStars stars() {
    return stars;
  }

  double lengthening() {
    return lengthening;
  }

  /** The sky's own part of star i's tensor, component by component. */
  double trail(int i, int part) {
    return lengthening * stars.trail[3 * i + part];
  }

  /** What the camera's motion adds to the sky's, steady and shaken. */
  double tripod(int i, int part, double[] own) {
    int at = 3 * i + part;
    double steady = lengthening * (stars.moved[at] - stars.trail[at]);
    return steady + shaken(at, own);
  }

  private double shaken(int at, double[] own) {
    return (own[SHAKE] + own[ALONG]) * stars.shakeX[at]
        + (own[SHAKE] - own[ALONG]) * stars.shakeY[at]
        + own[DIAGONAL] * stars.shakeXY[at];
  }

  /**
   * Predicts star i.
   *
   * @param into three numbers
   * @param slopes derivatives of the three numbers with respect to all parameters, shared first;
   *     filled as well
   */
  void predict(int i, double[] shared, double[] own, double[] into, double[][] slopes) {
    double x = stars.x[i];
    double y = stars.y[i];
    double square = x * x + y * y;
    double stop = stars.stop;
    double disc =
        own[DISC]
            + stop * (shared[TILT_RIGHT] * x + shared[TILT_DOWN] * y + shared[CURVATURE] * square);
    double split = stop * shared[ASTIGMATISM] * square / 2;
    double comaGrowth = square * stop * stop * stop * stop;
    double along = disc + split;
    double across = disc - split;
    double radial = along * along / 16 + shared[COMA] * comaGrowth / 2;
    double tangential = across * across / 16 + shared[COMA] * comaGrowth / 6;
    double cos = square > 1e-12 ? (x * x - y * y) / square : 1;
    double sin = square > 1e-12 ? 2 * x * y / square : 0;
    turned(into, (radial + tangential) / 2, (radial - tangential) / 2, cos, sin);
    into[0] += shared[CORE];
    for (int part = 0; part < 3; part++) {
      into[part] += lengthening * stars.moved[3 * i + part] + shaken(3 * i + part, own);
    }
    double[] common = slopes[SHARED + DISC];
    turned(common, (along + across) / 16, (along - across) / 16, cos, sin);
    for (int part = 0; part < 3; part++) {
      slopes[TILT_RIGHT][part] = stop * x * common[part];
      slopes[TILT_DOWN][part] = stop * y * common[part];
      slopes[CURVATURE][part] = stop * square * common[part];
      slopes[SHARED + SHAKE][part] = stars.shakeX[3 * i + part] + stars.shakeY[3 * i + part];
      slopes[SHARED + ALONG][part] = stars.shakeX[3 * i + part] - stars.shakeY[3 * i + part];
      slopes[SHARED + DIAGONAL][part] = stars.shakeXY[3 * i + part];
    }
    double half = stop * square / 32;
    turned(slopes[ASTIGMATISM], half * (along - across), half * (along + across), cos, sin);
    turned(slopes[COMA], comaGrowth / 3, comaGrowth / 6, cos, sin);
    slopes[CORE][0] = 1;
  }

  private static void turned(double[] into, double round, double spin2, double cos, double sin) {
    into[0] = round;
    into[1] = spin2 * cos;
    into[2] = spin2 * sin;
  }

  /** The lens that shared parameters describe. */
  static LensSurface lens(double[] shared) {
    return new LensSurface(
        shared[TILT_RIGHT],
        shared[TILT_DOWN],
        shared[CURVATURE],
        shared[ASTIGMATISM],
        shared[COMA]);
  }
}
