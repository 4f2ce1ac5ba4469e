package rondure.sim;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;

/** The picture of one exposure while it is being painted. */
final class Canvas {
  private static final double LISTED_FROM_SNR = 5;
  private static final double OUTSIDE_PX = 40;

  private final NightPlan plan;
  private final Exposure exposure;
  private final Passage passage;
  private final Optics optics;
  private final SkyLight sky;
  private final LensBlur blur;
  private final Landscape landscape;
  private final double[] groundFromCamera;
  private final List<StarCore.Part> core;
  private final double haloPx2;
  private final double outsideHalo;
  private final float[] electrons;
  private final Brush brush;
  private final PaintedStar.Path moved;
  private final PaintedStar.Path calm;
  private final List<PaintedStar> stars = new ArrayList<>();
  private final List<PaintedStar> lights = new ArrayList<>();

  /** Lays down the light of one point that moves: see {@link LightPainter#paint}. */
  private interface Brush {
    void paint(double[] x, double[] y, int count, Rays rays, LightPainter.Electrons flux);
  }

  /** A canvas to paint on. */
  static Canvas painted(NightPlan plan, Exposure exposure, Passage passage) {
    return new Canvas(plan, exposure, passage, true);
  }

  /** A canvas that only follows the stars and lights, for the truth about them. */
  static Canvas traced(NightPlan plan, Exposure exposure, Passage passage) {
    return new Canvas(plan, exposure, passage, false);
  }

  private Canvas(NightPlan plan, Exposure exposure, Passage passage, boolean paints) {
    this.plan = plan;
    this.landscape = new Landscape(plan);
    this.exposure = exposure;
    this.passage = passage;
    this.optics = new Optics(plan, exposure);
    this.sky = new SkyLight(plan, exposure);
    this.blur = new LensBlur(plan, exposure);
    this.groundFromCamera = Turn.transposed(passage.groundAtMid());
    List<StarCore.Part> clear = StarCore.of(plan.lens());
    this.core = dewed(clear);
    this.haloPx2 = StarCore.variancePx2(core) - StarCore.variancePx2(clear);
    this.outsideHalo = outsideHalo();
    int width = plan.camera().widthPx();
    int height = plan.camera().heightPx();
    this.electrons = new float[paints ? width * height : 0];
    this.brush =
        paints
            ? new LightPainter(width, height, electrons, core)::paint
            : (x, y, count, rays, flux) -> {};
    this.moved = new PaintedStar.Path(optics.image(), passage.steps());
    this.calm = new PaintedStar.Path(optics.image(), passage.steps());
  }

  private List<StarCore.Part> dewed(List<StarCore.Part> clear) {
    List<StarCore.Part> parts = clear;
    for (NightEvent event : plan.events()) {
      double grown = SkyLight.grown(event, exposure.number());
      if (event instanceof NightEvent.Dew dew && grown > 0) {
        parts = StarCore.withHalo(parts, dew.haloShare() * grown, dew.haloFwhmPx());
      }
    }
    return parts;
  }

  /** Share of a star's light that no dew spreads into a halo. */
  private double outsideHalo() {
    double left = 1;
    for (NightEvent event : plan.events()) {
      if (event instanceof NightEvent.Dew dew) {
        left *= 1 - dew.haloShare() * SkyLight.grown(event, exposure.number());
      }
    }
    return left;
  }

  void paintStars(List<StarCatalogue.CatalogueStar> catalogue) {
    double corner = plan.camera().cornerRadiusPx() + 2 * OUTSIDE_PX;
    double widest = Math.atan(corner / plan.pixelsPerRadian() * 1.3);
    double turned = 2 * Math.PI * exposure.openSeconds() / SkyTurn.SIDEREAL_DAY_SECONDS;
    double lowestCosine = Math.cos(Math.min(Math.PI, widest + turned));
    double[] forward = Arrays.copyOfRange(passage.skyAtMid(), 6, 9);
    for (StarCatalogue.CatalogueStar star : catalogue) {
      double cosine = forward[0] * star.x() + forward[1] * star.y() + forward[2] * star.z();
      if (cosine > lowestCosine) {
        paintStar(star);
      }
    }
  }

  private void paintStar(StarCatalogue.CatalogueStar star) {
    double[] direction = star.direction();
    if (!moved.follow(passage.sky(), direction)
        || !moved.touches(plan.camera(), OUTSIDE_PX)
        || !calm.follow(passage.calmSky(), direction)) {
      return;
    }
    double x = moved.meanX();
    double y = moved.meanY();
    double[] ground = Turn.apply(groundFromCamera, Turn.apply(passage.skyAtMid(), direction));
    if (ground[2] < -0.05) {
      return;
    }
    double passed = sky.transparency(ground) * sky.clearAir(ground) * optics.vignetting(x, y);
    double light = optics.starElectrons(star.magnitude()) * passed;
    Rays rays = blur.at(x, y);
    double[] tint = {star.colourFactor(0), 1, star.colourFactor(2)};
    Mosaic mosaic = plan.camera().mosaic();
    brush.paint(
        moved.x,
        moved.y,
        passage.steps(),
        rays,
        (px, py) -> light * tint[mosaic.channelAt(px, py)]);
    stars.add(PaintedStar.of(star.number(), moved, calm, rays, light));
  }

  void paintSky() {
    SkyMesh.add(plan, optics, sky, groundFromCamera, electrons);
  }

  void paintLand() {
    if (plan.foreground().horizonDeg() <= -90) {
      return;
    }
    double[] centre =
        Turn.apply(
            groundFromCamera,
            optics.image().direction(plan.camera().centreX(), plan.camera().centreY()));
    moved.follow(passage.ground(), centre);
    double[] shiftX = new double[passage.steps()];
    double[] shiftY = new double[passage.steps()];
    for (int i = 0; i < passage.steps(); i++) {
      shiftX[i] = moved.x[i] - plan.camera().centreX();
      shiftY[i] = moved.y[i] - plan.camera().centreY();
    }
    double lensPx2 = StarCore.variancePx2(core) - haloPx2 + blur.focusPx2();
    Smear smear = new Smear(shiftX, shiftY, lensPx2);
    landscape.cover(plan, optics, groundFromCamera, smear, electrons);
  }

  void paintLights() {
    List<GroundLight> lamps = plan.foreground().lights();
    for (int i = 0; i < lamps.size(); i++) {
      double[] direction = SkyTurn.ground(lamps.get(i).azimuthDeg(), lamps.get(i).altitudeDeg());
      if (moved.follow(passage.ground(), direction) && moved.touches(plan.camera(), OUTSIDE_PX)) {
        double x = moved.meanX();
        double y = moved.meanY();
        double light = optics.starElectrons(lamps.get(i).magnitude()) * optics.vignetting(x, y);
        Rays rays = blur.at(x, y);
        brush.paint(moved.x, moved.y, passage.steps(), rays, (px, py) -> light);
        Arrays.fill(calm.x, x);
        Arrays.fill(calm.y, y);
        lights.add(PaintedStar.of(i, moved, calm, rays, light));
      }
    }
  }

  void paintAircraft() {
    for (NightEvent event : plan.events()) {
      if (event instanceof NightEvent.Aircraft plane && plane.frame() == exposure.number()) {
        double dx = plane.toXPx() - plane.fromXPx();
        double dy = plane.toYPx() - plane.fromYPx();
        int steps = 2 + (int) (4 * Math.hypot(dx, dy));
        double[] x =
            IntStream.range(0, steps)
                .mapToDouble(i -> plane.fromXPx() + dx * i / (steps - 1))
                .toArray();
        double[] y =
            IntStream.range(0, steps)
                .mapToDouble(i -> plane.fromYPx() + dy * i / (steps - 1))
                .toArray();
        double light = optics.starElectrons(plane.magnitude());
        Rays rays = blur.at((plane.fromXPx() + plane.toXPx()) / 2, plane.fromYPx() + dy / 2);
        brush.paint(x, y, steps, rays, (px, py) -> 0.7 * light);
        for (int i = steps / 12; i < steps; i += Math.max(1, steps / 6)) {
          double[] flashX = {x[i]};
          double[] flashY = {y[i]};
          brush.paint(flashX, flashY, 1, rays, (px, py) -> 0.05 * light);
        }
      }
    }
  }

  /** Light in every pixel, electrons; its own array, not a copy. */
  float[] electrons() {
    return electrons;
  }

  void applyFilters() {
    CameraPlan camera = plan.camera();
    for (int y = 0; y < camera.heightPx(); y++) {
      for (int x = 0; x < camera.widthPx(); x++) {
        electrons[y * camera.widthPx() + x] *=
            (float) camera.throughput().of(camera.mosaic().channelAt(x, y));
      }
    }
  }

  FrameTruth truth() {
    TruthWriter writer = new TruthWriter(plan, exposure, blur.focusPx2(), core, haloPx2);
    List<PaintedStar> inSky = stars.stream().filter(this::showsSky).toList();
    double[] starLight = inSky.stream().mapToDouble(s -> outsideHalo * transparency(s)).toArray();
    return writer.frame(
        inSky, lights, starLight, this::noiseElectrons, passage.skyAtMid(), LISTED_FROM_SNR);
  }

  private double[] ground(PaintedStar star) {
    return Turn.apply(groundFromCamera, optics.image().direction(star.xPx(), star.yPx()));
  }

  private double transparency(PaintedStar star) {
    return sky.transparency(ground(star));
  }

  private boolean showsSky(PaintedStar star) {
    double[] ground = ground(star);
    double azimuth = Math.toDegrees(Math.atan2(ground[0], ground[1]));
    return star.xPx() > -0.5
        && star.xPx() < plan.camera().widthPx() - 0.5
        && star.yPx() > -0.5
        && star.yPx() < plan.camera().heightPx() - 0.5
        && landscape.skyShare(azimuth, SkyLight.altitudeDeg(ground), 0.1) > 0.99;
  }

  /** Noise of one pixel of empty sky at a star, electrons. */
  private double noiseElectrons(PaintedStar star) {
    double[] ground = ground(star);
    double skyElectrons =
        optics.zenithSkyElectrons()
            * sky.brightness(ground)
            * optics.vignetting(star.xPx(), star.yPx())
            * plan.camera().throughput().green();
    double read = plan.camera().readNoiseElectrons();
    double step = plan.camera().electronsPerCount(exposure.iso());
    return Math.sqrt(skyElectrons + read * read + step * step / 12);
  }
}
