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
  private final SkyGrid sky;

  /** True exposure over nominal, squared. */
  private final double lengthening;

  /** Whether a star is one image of the whole exposure: after a knock it may be two of a part. */
  private final boolean whole;

  private final ComaGrowth coma;

  FrameModel(FrameStars stars, SkyGrid sky, double lengthening, boolean whole) {
    this(stars, sky, lengthening, whole, ComaGrowth.SEIDEL);
  }

  private FrameModel(
      FrameStars stars, SkyGrid sky, double lengthening, boolean whole, ComaGrowth coma) {
    this.coma = coma;
    this.stars = stars;
    this.sky = sky;
    this.lengthening = lengthening;
    this.whole = whole;
  }

  /** The same frame behind a lens whose coma grows otherwise. */
  FrameModel with(ComaGrowth other) {
    return new FrameModel(stars, sky, lengthening, whole, other);
  }

  boolean whole() {
    return whole;
  }

  SkyGrid sky() {
    return sky;
  }

  FrameStars stars() {
    return stars;
  }

  double lengthening() {
    return lengthening;
  }

  /** Round part of the sky's own tensor at a place of the sky. */
  double trail(int i) {
    return lengthening * sky.places().trail[3 * i];
  }

  /** Round part of what the camera's motion adds to the sky's there, steady and shaken. */
  double tripod(int i, double[] own) {
    FieldPlaces places = sky.places();
    double steady = lengthening * (places.moved[3 * i] - places.trail[3 * i]);
    return steady + shaken(places, 3 * i, own);
  }

  private static double shaken(FieldPlaces places, int at, double[] own) {
    return (own[SHAKE] + own[ALONG]) * places.shakeX[at]
        + (own[SHAKE] - own[ALONG]) * places.shakeY[at]
        + own[DIAGONAL] * places.shakeXY[at];
  }

  /** Second moment of star i's disc, mean of both axes. */
  double discPx2(int i, double[] shared, double[] own) {
    FieldPlaces places = stars.places;
    double square = places.x[i] * places.x[i] + places.y[i] * places.y[i];
    double tilted = shared[TILT_RIGHT] * places.x[i] + shared[TILT_DOWN] * places.y[i];
    double disc = own[DISC] + places.stop * (tilted + shared[CURVATURE] * square);
    double split = places.stop * shared[ASTIGMATISM] * square / 2;
    return (disc * disc + split * split) / 16;
  }

  /**
   * Predicts star i.
   *
   * @param into three numbers
   * @param slopes derivatives of the three numbers with respect to all parameters, shared first;
   *     filled as well
   */
  void predict(int i, double[] shared, double[] own, double[] into, double[][] slopes) {
    FieldPlaces places = stars.places;
    double x = places.x[i];
    double y = places.y[i];
    double square = x * x + y * y;
    double stop = places.stop;
    double disc =
        own[DISC]
            + stop * (shared[TILT_RIGHT] * x + shared[TILT_DOWN] * y + shared[CURVATURE] * square);
    double split = stop * shared[ASTIGMATISM] * square / 2;
    double along = disc + split;
    double across = disc - split;
    double radial = along * along / 16;
    double tangential = across * across / 16;
    double cos = square > 1e-12 ? (x * x - y * y) / square : 1;
    double sin = square > 1e-12 ? 2 * x * y / square : 0;
    turned(into, (radial + tangential) / 2, (radial - tangential) / 2, cos, sin);
    into[0] += shared[CORE];
    for (int part = 0; part < 3; part++) {
      into[part] += lengthening * places.moved[3 * i + part] + shaken(places, 3 * i + part, own);
    }
    double[] common = slopes[SHARED + DISC];
    turned(common, (along + across) / 16, (along - across) / 16, cos, sin);
    for (int part = 0; part < 3; part++) {
      slopes[TILT_RIGHT][part] = stop * x * common[part];
      slopes[TILT_DOWN][part] = stop * y * common[part];
      slopes[CURVATURE][part] = stop * square * common[part];
      slopes[SHARED + SHAKE][part] = places.shakeX[3 * i + part] + places.shakeY[3 * i + part];
      slopes[SHARED + ALONG][part] = places.shakeX[3 * i + part] - places.shakeY[3 * i + part];
      slopes[SHARED + DIAGONAL][part] = places.shakeXY[3 * i + part];
    }
    double half = stop * square / 32;
    turned(slopes[ASTIGMATISM], half * (along - across), half * (along + across), cos, sin);
    turned(slopes[CORE], 1, 0, cos, sin);
    double growth = coma.at(square) * stop * stop * stop * stop;
    SeenComa.add(
        into, slopes, new SeenComa.Here(shared[COMA] * growth, growth, cos, sin, stars.peaked));
  }

  /** Second moment of all in a star but coma, mean of both axes. */
  double evenPx2(int i, double[] shared, double[] own) {
    double moved = lengthening * stars.places.moved[3 * i] + shaken(stars.places, 3 * i, own);
    return shared[CORE] + discPx2(i, shared, own) + moved;
  }

  private static void turned(double[] into, double round, double spin2, double cos, double sin) {
    into[0] = round;
    into[1] = spin2 * cos;
    into[2] = spin2 * sin;
  }

  /** The lens that shared parameters describe. */
  LensSurface lens(double[] shared) {
    return new LensSurface(
        shared[TILT_RIGHT],
        shared[TILT_DOWN],
        shared[CURVATURE],
        shared[ASTIGMATISM],
        shared[COMA],
        coma);
  }

  /** The field's mean signed disc of this frame, see {@link LensSurface}. */
  double meanDiscPx(double[] shared, double centreDiscPx) {
    return lens(shared).meanDiscPx(centreDiscPx, stars.places.stop);
  }
}
