package rondure.sim;

import java.util.Arrays;
import java.util.stream.IntStream;

/**
 * The land in front of the sky: hills, a tree line, a dark pattern; drawn as the camera saw it at
 * mid-exposure and smeared by the camera's motion, but not by the sky's.
 */
final class Landscape {
  private static final int BLOCK_PX = 16;

  private final ForegroundPlan plan;
  private final double ahead;
  private final Texture hills;
  private final Texture trees;
  private final Texture surface;

  Landscape(NightPlan plan) {
    this.plan = plan.foreground();
    this.ahead = plan.aim().azimuthDeg();
    this.hills = new Texture(plan.seed() + 601);
    this.trees = new Texture(plan.seed() + 602);
    this.surface = new Texture(plan.seed() + 603);
  }

  /** Altitude of the skyline in a direction. */
  double skylineDeg(double azimuthDeg) {
    double place = place(azimuthDeg);
    double relief = plan.reliefDeg() * hills.at(place / 11, 0, 4);
    double grove = Math.max(0, hills.at(place / 7, 40, 2) + 0.35);
    double crown = Math.abs(trees.at(place * 1.9, 3, 4)) + 0.35 * trees.at(place * 9, 8, 2);
    return plan.horizonDeg() + relief + plan.treesDeg() * Math.min(1, grove * Math.max(0, crown));
  }

  /** Azimuth from the first aim, so that the patterns' seam lies behind the camera. */
  private double place(double azimuthDeg) {
    return Math.IEEEremainder(azimuthDeg - ahead, 360);
  }

  /** Share of a pixel at this direction that shows sky, the skyline blurred over one pixel. */
  double skyShare(double azimuthDeg, double altitudeDeg, double pixelDeg) {
    double above = (altitudeDeg - skylineDeg(azimuthDeg)) / pixelDeg;
    return Math.max(0, Math.min(1, above + 0.5));
  }

  private double surfaceBrightness(double azimuthDeg, double altitudeDeg) {
    double place = place(azimuthDeg);
    double pattern = surface.at(place * 1.3, altitudeDeg * 3.1, 6);
    double depth = Math.max(0, skylineDeg(azimuthDeg) - altitudeDeg);
    return plan.brightness() * Math.max(0, 1 + plan.texture() * 1.8 * pattern + 0.02 * depth);
  }

  /**
   * Covers the lower part of {@code electrons} (stars and sky, without filters) with land.
   *
   * @param groundFromCamera attitude at mid-exposure
   * @param smear what the camera's motion and the lens do to the picture of the land
   */
  void cover(
      NightPlan night, Optics optics, double[] groundFromCamera, Smear smear, float[] electrons) {
    int width = night.camera().widthPx();
    int height = night.camera().heightPx();
    float[] skyShare = new float[width * height];
    float[] ground = new float[width * height];
    Arrays.fill(skyShare, 1);
    IntStream.range(0, (height + BLOCK_PX - 1) / BLOCK_PX)
        .parallel()
        .map(row -> row * BLOCK_PX)
        .forEach(
            top -> {
              for (int left = 0; left < width; left += BLOCK_PX) {
                if (lowest(optics, groundFromCamera, left, top) < plan.highestDeg() + 0.5) {
                  drawBlock(night, optics, groundFromCamera, left, top, skyShare, ground);
                }
              }
            });
    float[] smearedShare = smear.applied(skyShare, width, height, 1);
    float[] smearedGround = smear.applied(ground, width, height, 0);
    for (int i = 0; i < width * height; i++) {
      electrons[i] = electrons[i] * smearedShare[i] + smearedGround[i];
    }
  }

  private void drawBlock(
      NightPlan night,
      Optics optics,
      double[] groundFromCamera,
      int left,
      int top,
      float[] skyShare,
      float[] ground) {
    int width = night.camera().widthPx();
    double pixelDeg = Math.toDegrees(1 / night.pixelsPerRadian());
    double zenith = optics.zenithSkyElectrons();
    for (int y = top; y < Math.min(night.camera().heightPx(), top + BLOCK_PX); y++) {
      for (int x = left; x < Math.min(width, left + BLOCK_PX); x++) {
        double[] camera = optics.image().direction(x, y);
        double[] place = Turn.apply(groundFromCamera, camera);
        double azimuth = Math.toDegrees(Math.atan2(place[0], place[1]));
        double altitude = SkyLight.altitudeDeg(place);
        double share = skyShare(azimuth, altitude, pixelDeg);
        skyShare[y * width + x] = (float) share;
        if (share < 1) {
          double gathered = optics.vignetting(x, y) * Math.pow(camera[2], 3);
          double brightness = zenith * surfaceBrightness(azimuth, altitude);
          ground[y * width + x] = (float) ((1 - share) * brightness * gathered);
        }
      }
    }
  }

  /** Lowest altitude of a block's corners, degrees. */
  private static double lowest(Optics optics, double[] groundFromCamera, int left, int top) {
    double lowest = 90;
    for (int corner = 0; corner < 4; corner++) {
      double x = left + (corner % 2) * BLOCK_PX;
      double y = top + (corner / 2) * BLOCK_PX;
      double[] place = Turn.apply(groundFromCamera, optics.image().direction(x, y));
      lowest = Math.min(lowest, SkyLight.altitudeDeg(place));
    }
    return lowest;
  }
}
