package rondure.sim;

import java.util.function.ToDoubleFunction;

/**
 * Brightness and clearness of the sky in each direction at mid-exposure.
 *
 * <p>Brightness is a multiple of the zenith's; airmass by Kasten &amp; Young 1989, Appl. Opt. 28,
 * 4735 (from memory): 1 / (sin h + 0.50572 (h + 6.07995)^-1.6364), h in degrees.
 */
final class SkyLight {
  private final NightPlan plan;
  private final Exposure exposure;
  private final double[] equatorialFromGround;
  private final double[] bandPole;
  private final Texture cloudTexture;
  private final Texture bandTexture;
  private final double glowFactor;
  private final double dewMag;

  SkyLight(NightPlan plan, Exposure exposure) {
    this.plan = plan;
    this.exposure = exposure;
    this.equatorialFromGround =
        Turn.transposed(
            SkyTurn.groundFromEquatorial(plan.sky().latitudeDeg(), exposure.midSeconds()));
    this.bandPole =
        SkyTurn.equatorial(
            Math.toRadians(plan.sky().bandPoleRightAscensionDeg()),
            Math.toRadians(plan.sky().bandPoleDeclinationDeg()));
    this.cloudTexture = new Texture(plan.seed() + 501);
    this.bandTexture = new Texture(plan.seed() + 502);
    double factor = 1;
    double dew = 0;
    for (NightEvent event : plan.events()) {
      double grown = grown(event, exposure.number());
      if (event instanceof NightEvent.SkyGlow glow) {
        factor *= 1 + (glow.factor() - 1) * grown;
      } else if (event instanceof NightEvent.Dew wet) {
        dew += wet.opacityMag() * grown;
      }
    }
    this.glowFactor = factor;
    this.dewMag = dew;
  }

  /** How far an event that grows and stays has come: 0 before its first frame, 1 at its last. */
  static double grown(NightEvent event, int number) {
    double span = event.lastFrame() - event.firstFrame() + 1;
    return Math.min(1, Math.max(0, (number - event.firstFrame() + 1) / span));
  }

  static double airmass(double altitudeDeg) {
    double altitude = Math.max(0, altitudeDeg);
    return 1
        / (Math.sin(Math.toRadians(altitude)) + 0.50572 * Math.pow(altitude + 6.07995, -1.6364));
  }

  /** Sky brightness over the clear zenith's, through cloud and dew. */
  double brightness(double[] ground) {
    SkyPlan sky = plan.sky();
    double altitude = altitudeDeg(ground);
    double lift = Math.exp(-Math.max(0, altitude) / 14);
    double off =
        Math.IEEEremainder(
            Math.toDegrees(Math.atan2(ground[0], ground[1])) - sky.domeAzimuthDeg(), 360);
    double dome = sky.domeGlow() * Math.exp(-Math.max(0, altitude) / 9 - off * off / (2 * 28 * 28));
    double clear = glowFactor + sky.horizonGlow() * lift + dome + band(ground);
    return clear * Math.pow(10, -0.4 * dewMag) + cloudGlow(ground);
  }

  private double band(double[] ground) {
    double glow = plan.sky().bandGlow();
    if (glow == 0) {
      return 0;
    }
    double[] star = Turn.apply(equatorialFromGround, ground);
    double sine = star[0] * bandPole[0] + star[1] * bandPole[1] + star[2] * bandPole[2];
    double offDeg = Math.toDegrees(Math.asin(Math.max(-1, Math.min(1, sine))));
    double patches = bandTexture.at(9 * star[0] + 5 * star[2], 9 * star[1] - 3 * star[2], 5);
    double rift = Math.exp(-Math.pow((offDeg + 3 * patches) / 2.2, 2)) * (0.4 + 0.4 * patches);
    return glow * Math.exp(-offDeg * offDeg / (2 * 7.5 * 7.5)) * (1 + 0.5 * patches - rift);
  }

  /** Share of the stars' light that cloud and dew let through. */
  double transparency(double[] ground) {
    return Math.pow(10, -0.4 * (dewMag + cloudMag(ground)));
  }

  /** Share that the clear air lets through, over the zenith's. */
  double clearAir(double[] ground) {
    double airmass = airmass(altitudeDeg(ground));
    return Math.pow(10, -0.4 * plan.sky().extinctionMagPerAirmass() * (airmass - 1));
  }

  private double cloudMag(double[] ground) {
    return clouds(ground, NightEvent.Cloud::opacityMag);
  }

  private double cloudGlow(double[] ground) {
    return clouds(ground, NightEvent.Cloud::glow);
  }

  private double clouds(double[] ground, ToDoubleFunction<NightEvent.Cloud> ofMeanThickness) {
    double sum = 0;
    for (NightEvent event : plan.events()) {
      if (event instanceof NightEvent.Cloud cloud && during(cloud)) {
        sum += ofMeanThickness.applyAsDouble(cloud) * thickness(cloud, ground);
      }
    }
    return sum;
  }

  private boolean during(NightEvent.Cloud cloud) {
    return exposure.number() >= cloud.firstFrame() && exposure.number() <= cloud.lastFrame();
  }

  /** Cloud of mean thickness 1 on a flat ceiling, drifting east. */
  private double thickness(NightEvent.Cloud cloud, double[] ground) {
    double height = Math.max(0.08, ground[2]);
    double drift = exposure.midSeconds() / 240;
    double pattern = cloudTexture.at(2.5 * ground[0] / height - drift, 2.5 * ground[1] / height, 5);
    return Math.max(0, 1 + 2 * cloud.patchiness() * pattern);
  }

  static double altitudeDeg(double[] ground) {
    return Math.toDegrees(Math.asin(Math.max(-1, Math.min(1, ground[2]))));
  }
}
