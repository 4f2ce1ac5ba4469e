package rondure.blur;

import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import rondure.base.Moments;
import rondure.base.RobustStats;
import rondure.stars.SkyMask;
import rondure.stars.Star;
import rondure.stars.StarField;

/**
 * What the lamps on the ground tell about a smear that the stars share: the camera's motion smears
 * them like the stars beside them, the sky's does not smear them at all.
 *
 * <p>Lamps compare with the nearest third of the stars, which the lens draws alike. Stretch is the
 * tensor's spin-2 part along the stars' common direction.
 *
 * @param lights lamps
 * @param starsPx2 stretch of the stars near them
 * @param lightsPx2 stretch of the lamps
 * @param errorPx2 standard error of the difference
 * @param skyLogOdds log-odds for the sky against the tripod
 */
record GroundSmear(
    int lights, double starsPx2, double lightsPx2, double errorPx2, double skyLogOdds) {

  private static final int LEAST_LIGHTS = 2;
  private static final int LEAST_STARS = 10;
  private static final double NEAREST = 1 / 3.0;

  /** Less stretch than this cannot be told from what lamps have of their own. */
  private static final double LEAST_PX2 = 0.15;

  private static final double SURE_SIGMAS = 4.5;

  /** Lamps are no points: what their own shapes add, as a share of the stretch, for one lamp. */
  private static final double OWN_SHAPE_SHARE = 0.5;

  /** What lens and sampling hide however many there are, as a share of the stretch. */
  private static final double HIDDEN_SHARE = 0.2;

  /** A sixteenth of all times the "lamps" are something else. */
  private static final double ODD_ONES = 0.06;

  /** Stars behind bare branches look like lamps that follow the stars. */
  private static final double UNPROVEN_LOG_ODDS = 1.5;

  private static final double TELLING_LOG_ODDS = 0.7;

  /**
   * So dense beside the stars, "lamps" are stars in a part of the sky that was not seen as such.
   */
  private static final double STARLIKE_DENSITY = 0.35;

  /**
   * Of one frame; empty without lamps or without a smear.
   *
   * @param proven whether these lights were seen to stay on the sensor while the stars moved
   */
  static Optional<GroundSmear> of(StarField field, boolean proven) {
    List<Star> lamps = field.groundLights();
    if (lamps.size() < LEAST_LIGHTS) {
      return Optional.empty();
    }
    FieldShape shape = FieldShape.of(field);
    Moments common = shape.moments();
    double stretch = common.spin2Px2();
    if (!(stretch > Math.max(LEAST_PX2, SURE_SIGMAS * shape.smearErrorPx2()))) {
      return Optional.empty();
    }
    double[] stars = along(near(field.stars(), lamps), common);
    double[] lights = along(lamps, common);
    double ownShape = OWN_SHAPE_SHARE * stretch / Math.sqrt(lamps.size());
    double scatter = lights.length > 3 ? error(lights) : 0;
    double error = Math.hypot(error(stars), Math.max(scatter, ownShape));
    double starsPx2 = RobustStats.median(stars);
    double lightsPx2 = RobustStats.median(lights);
    double logOdds =
        logOdds((starsPx2 - lightsPx2) / stretch, Math.hypot(HIDDEN_SHARE, error / stretch));
    if (!proven && logOdds < 0) {
      logOdds = areStars(field) ? 0 : Math.max(-UNPROVEN_LOG_ODDS, logOdds);
    }
    return Optional.of(new GroundSmear(lamps.size(), starsPx2, lightsPx2, error, logOdds));
  }

  /** The sentence, where the lamps tell anything. */
  Optional<Evidence> evidence() {
    if (Math.abs(skyLogOdds) < TELLING_LOG_ODDS) {
      return Optional.empty();
    }
    Evidence.Kind kind =
        skyLogOdds > 0 ? Evidence.Kind.GROUND_LIGHTS_SHARP : Evidence.Kind.GROUND_LIGHTS_SMEARED;
    return Optional.of(new Evidence(kind, Map.of("lightCount", (double) lights)));
  }

  /** Of the sky (share 1 is missing from the lamps) against the tripod (nothing is missing). */
  private static double logOdds(double missing, double sigma) {
    double sky = Math.exp(-Math.pow((missing - 1) / sigma, 2) / 2);
    double tripod = Math.exp(-Math.pow(missing / sigma, 2) / 2);
    return Math.log((sky + ODD_ONES) / (tripod + ODD_ONES));
  }

  private static double[] along(List<Star> stars, Moments common) {
    double angle = 2 * common.positionAngleRad();
    return stars.stream()
        .map(Star::moments)
        .mapToDouble(
            m -> (m.xxPx2() - m.yyPx2()) / 2 * Math.cos(angle) + m.xyPx2() * Math.sin(angle))
        .toArray();
  }

  private static List<Star> near(List<Star> stars, List<Star> lamps) {
    double x = RobustStats.median(lamps.stream().mapToDouble(Star::xPx).toArray());
    double y = RobustStats.median(lamps.stream().mapToDouble(Star::yPx).toArray());
    long count = Math.max(LEAST_STARS, Math.round(NEAREST * stars.size()));
    return stars.stream()
        .sorted(Comparator.comparingDouble(s -> Math.hypot(s.xPx() - x, s.yPx() - y)))
        .limit(count)
        .toList();
  }

  private static double error(double[] values) {
    return Math.sqrt(Math.PI / 2) * RobustStats.madSigma(values) / Math.sqrt(values.length);
  }

  /** Whether the lights stand nearly as close as stars do in the sky. */
  private static boolean areStars(StarField field) {
    double starDensity = field.stars().size() / Math.max(1.0, cells(field.mask(), true));
    double lampDensity = field.groundLights().size() / Math.max(1.0, cells(field.mask(), false));
    return lampDensity > STARLIKE_DENSITY * starDensity;
  }

  /** Cells of the sky; or of the ground away from the sky, where lamps are looked for. */
  private static long cells(SkyMask mask, boolean ofSky) {
    long count = 0;
    for (int row = 0; row < mask.rows().size(); row++) {
      for (int column = 0; column < mask.rows().get(row).length(); column++) {
        boolean counts = ofSky ? mask.isSkyCell(column, row) : !mask.isNearSkyCell(column, row);
        count += counts ? 1 : 0;
      }
    }
    return count;
  }
}
