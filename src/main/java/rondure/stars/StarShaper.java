package rondure.stars;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import rondure.base.Moments;
import rondure.base.PixelPlane;

/**
 * Decides for every candidate of one frame: a shape, or the reason why there is none.
 *
 * <p>Bright isolated pilots tell what the frame's stars look like and which profile suits them;
 * then each candidate, brightest first, is tested and fitted. Used once, by one thread.
 */
final class StarShaper {
  private static final int PILOTS_MAX = 60;
  private static final int CHOOSING_MAX = 24;
  private static final double SATURATED_FROM = 0.9;
  private static final double CROWDING_FLUX = 0.12;
  private static final double CROWDING_SIGMAS = 2.4 * 2.1;
  private static final double CHOOSING_SNR = 50;

  private final Found found;
  private final PixelPlane plane;
  private final PixelContext context;
  private final StarSettings settings;
  private final List<Candidate> candidates;
  private final Neighbours neighbours;
  private final StarFitting fitting;
  private final Map<Refusal, Integer> refused = new EnumMap<>(Refusal.class);
  private final List<Detection> others = new ArrayList<>();
  private final List<MeasuredShape> shapes = new ArrayList<>();
  private final List<MeasuredShape> lights = new ArrayList<>();
  private double gain;

  /** What became of the candidates. */
  record Shaped(
      List<MeasuredShape> shapes,
      List<MeasuredShape> lights,
      List<Detection> others,
      Map<Refusal, Integer> refused,
      Typical typical) {}

  StarShaper(Found found, PixelPlane plane, PixelContext context, StarSettings settings) {
    this.found = found;
    this.plane = plane;
    this.context = context;
    this.settings = settings;
    this.candidates =
        found.candidates().stream()
            .sorted(Comparator.comparingDouble(Candidate::fluxCounts).reversed())
            .toList();
    this.neighbours = new Neighbours(candidates.stream().map(StarShaper::placed).toList());
    this.fitting = new StarFitting(plane, found.background(), neighbours);
  }

  /**
   * Shapes of the brightest stars. Once {@code shapeStarsMax} stars have a shape, the fainter
   * candidates are not looked at: they are in neither list, and not counted as refused.
   */
  Shaped shape() {
    List<Pilot> pilots = pilots();
    ProfileChoice.Common common = chooseProfile(pilots);
    Typical typical = typical(pilots, common);
    gain = gain(common.fits());
    for (Candidate candidate : candidates) {
      if (shapes.size() >= settings.shapeStarsMax()) {
        break;
      }
      Optional<Refusal> early = refusalBeforeFit(candidate, typical);
      if (early.isPresent()) {
        refuse(candidate, early.get());
        measureLight(candidate, early.get(), typical, common);
      } else {
        measure(candidate, typical, common);
      }
    }
    return new Shaped(shapes, lights, others, refused, typical);
  }

  /** A bright star with its Gaussian fit. */
  private record Pilot(Candidate candidate, Placed start, ShapeFit fit) {}

  private List<Pilot> pilots() {
    Typical unknown = Typical.of(List.of());
    List<Pilot> pilots = new ArrayList<>();
    for (Candidate candidate : candidates) {
      if (pilots.size() >= PILOTS_MAX) {
        break;
      }
      if (refusalBeforeFit(candidate, unknown).isEmpty()) {
        Placed start = start(candidate, unknown);
        StarFitting.Attempt attempt =
            fitting.settle(candidate, start, noise(candidate, 0), ShapeFamilies.GAUSSIAN);
        boolean usable = attempt.fit().map(fit -> isUsable(fit, candidate)).orElse(false);
        if (usable && !isSaturated(attempt.fit().get())) {
          pilots.add(new Pilot(candidate, start, attempt.fit().get()));
        }
      }
    }
    return pilots;
  }

  /** Sizes under the profile that was chosen; without enough stars for that, under the Gaussian. */
  private static Typical typical(List<Pilot> pilots, ProfileChoice.Common common) {
    List<Moments> chosen =
        common.fits().stream().filter(ShapeFit::settled).map(ShapeFit::moments).toList();
    return chosen.size() >= 5
        ? Typical.of(chosen)
        : Typical.of(pilots.stream().map(pilot -> pilot.fit().moments()).toList());
  }

  private ProfileChoice.Common chooseProfile(List<Pilot> pilots) {
    List<ProfileChoice.Fitting> fittings = new ArrayList<>();
    List<ShapeFit> gaussians = new ArrayList<>();
    for (Pilot pilot : pilots.subList(0, Math.min(CHOOSING_MAX, pilots.size()))) {
      FitPixels own = new FitPixels();
      Placed centre = ProfileChoice.startOf(pilot.fit());
      PixelNoise noise = noise(pilot.candidate(), 0);
      if (fitting.cut(own, pilot.candidate(), centre)) {
        ProfileChoice.Fitting with = (index, start) -> fitting.tryOut(own, noise, index, start);
        fittings.add(with);
        gaussians.add(with.with(ShapeFamilies.GAUSSIAN, centre));
      }
    }
    return ProfileChoice.forFrame(fittings, gaussians);
  }

  private void measure(Candidate candidate, Typical typical, ProfileChoice.Common common) {
    Result result = fit(candidate, typical, common);
    result.shape().ifPresentOrElse(shapes::add, () -> refuse(candidate, result.whyNot()));
  }

  /** A lamp on the ground gets a shape as a star does, when it looks like one. */
  private void measureLight(
      Candidate candidate, Refusal reason, Typical typical, ProfileChoice.Common common) {
    boolean room = lights.size() < settings.groundLightsMax();
    boolean worthwhile =
        reason == Refusal.NOT_SKY
            && room
            && LampRule.mayBe(candidate, found.mask(), neighbours, settings.shapeSnr())
            && reasonAgainst(candidate, typical).isEmpty();
    if (worthwhile) {
      fit(candidate, typical, common)
          .shape()
          .filter(shape -> LampRule.isOne(shape, typical))
          .ifPresent(lights::add);
    }
  }

  /** A shape, or why there is none. */
  private record Result(Optional<MeasuredShape> shape, Refusal whyNot) {}

  private Result fit(Candidate candidate, Typical typical, ProfileChoice.Common common) {
    PixelNoise noise = noise(candidate, gain);
    int likely = profileNear(candidate, common.profileIndex());
    Placed start = start(candidate, typical);
    StarFitting.Attempt attempt = fitting.settle(candidate, start, noise, likely);
    if (attempt.fit().isPresent() && !attempt.fit().get().settled()) {
      likely = ShapeFamilies.GAUSSIAN;
      attempt = fitting.settle(candidate, start, noise, likely);
    }
    if (attempt.fit().isEmpty()) {
      return new Result(Optional.empty(), attempt.whyNot());
    }
    ProfileChoice.Chosen chosen = new ProfileChoice.Chosen(likely, attempt.fit().get());
    if (snrOf(chosen.fit(), noise.gain()) > CHOOSING_SNR
        && ProfileChoice.isWorthClimbing(chosen.fit())) {
      chosen = fitting.climb(candidate, chosen, noise);
    }
    Optional<Refusal> late = refusalAfterFit(candidate, chosen.fit(), typical, noise);
    if (late.isPresent()) {
      return new Result(Optional.empty(), late.get());
    }
    return new Result(
        Optional.of(
            new MeasuredShape(
                candidate,
                chosen.fit(),
                chosen.profileIndex(),
                noise.skyCounts(),
                Tails.of(fitting.pixels(), chosen.fit()))),
        Refusal.NOT_SETTLED);
  }

  /** The profile of the nearest star whose own light chose one; the frame's when there is none. */
  private int profileNear(Candidate candidate, int common) {
    double nearest = Double.POSITIVE_INFINITY;
    int chosen = common;
    for (MeasuredShape shape : shapes) {
      double distance =
          Math.hypot(shape.fit().xPx() - candidate.xPx(), shape.fit().yPx() - candidate.yPx());
      if (distance < nearest && snrOf(shape.fit(), 0) > CHOOSING_SNR) {
        nearest = distance;
        chosen = shape.profileIndex();
      }
    }
    return chosen;
  }

  private Optional<Refusal> refusalBeforeFit(Candidate candidate, Typical typical) {
    if (candidate.refusal().isPresent()) {
      return candidate.refusal();
    }
    if (!found.mask().isSky(candidate.xPx(), candidate.yPx())) {
      return Optional.of(Refusal.NOT_SKY);
    }
    return reasonAgainst(candidate, typical);
  }

  /** What speaks against a candidate wherever it is. */
  private Optional<Refusal> reasonAgainst(Candidate candidate, Typical typical) {
    if (plane.at(candidate.peakXPx(), candidate.peakYPx()) > saturation()) {
      return Optional.of(Refusal.SATURATED);
    }
    if (typical.isStreak(candidate.isophotal())) {
      return Optional.of(Refusal.STREAK);
    }
    if (candidate.filterSnr() < settings.shapeSnr() / 2) {
      return Optional.of(Refusal.TOO_FAINT);
    }
    Placed room =
        new Placed(
            candidate.xPx(),
            candidate.yPx(),
            candidate.fluxCounts(),
            typical.roomFor(candidate.isophotal()));
    boolean crowded = !neighbours.near(candidate, room, CROWDING_SIGMAS, CROWDING_FLUX).isEmpty();
    return crowded ? Optional.of(Refusal.CROWDED) : Optional.empty();
  }

  private Optional<Refusal> refusalAfterFit(
      Candidate candidate, ShapeFit fit, Typical typical, PixelNoise noise) {
    if (isSaturated(fit)) {
      return Optional.of(Refusal.SATURATED);
    }
    if (HotPixels.isHot(fitting.pixels(), fit, plane.lattice(), typical, noise.skyCounts())) {
      return Optional.of(Refusal.HOT_PIXEL);
    }
    if (!isUsable(fit, candidate)) {
      return Optional.of(Refusal.NOT_SETTLED);
    }
    if (typical.isStreak(fit.moments())) {
      return Optional.of(Refusal.STREAK);
    }
    return snrOf(fit, noise.gain()) < settings.shapeSnr()
        ? Optional.of(Refusal.TOO_FAINT)
        : Optional.empty();
  }

  /** At rest, near where it was found, and unlike the model by less than 30 % of its signal. */
  private boolean isUsable(ShapeFit fit, Candidate candidate) {
    double noise = noiseAt(candidate);
    ShapeFit.Residual residual = fit.residual();
    double misfit = residual.squares() - residual.pixelCount() * noise * noise;
    double moved = Math.hypot(fit.xPx() - candidate.xPx(), fit.yPx() - candidate.yPx());
    return fit.settled()
        && moved < 1.5 + 1.5 * Math.sqrt(fit.moments().majorPx2())
        && misfit < 0.3 * residual.signalSquares();
  }

  private boolean isSaturated(ShapeFit fit) {
    Placed star = ProfileChoice.startOf(fit);
    FitPixels pixels = fitting.pixels();
    for (int i = 0; i < pixels.count(); i++) {
      float counts = plane.at((int) pixels.x(i), (int) pixels.y(i));
      if (counts > saturation() && star.distanceInSigmas(pixels.x(i), pixels.y(i)) < 3) {
        return true;
      }
    }
    return false;
  }

  private double saturation() {
    return SATURATED_FROM * context.whiteLevelCounts();
  }

  /** Flux over its error from the sky's noise and the star's photons. */
  static double snrOf(ShapeFit fit, double gain) {
    double variance = fit.errors().fluxSky() + gain * fit.errors().fluxStar();
    return variance > 0 ? Math.max(0, fit.fluxCounts()) / Math.sqrt(variance) : 0;
  }

  /**
   * Photon noise; none in developed pictures, whose noise follows no photon statistics any more.
   */
  private double gain(List<ShapeFit> fits) {
    return context.developed() ? 0 : Gain.of(fits, found.sky());
  }

  private PixelNoise noise(Candidate candidate, double perCount) {
    return new PixelNoise(noiseAt(candidate), perCount);
  }

  private double noiseAt(Candidate candidate) {
    double measured = found.background().noiseAt(candidate.peakXPx(), candidate.peakYPx());
    double floor = Math.max(context.codeStepCounts() / 2, 1e-9 * context.whiteLevelCounts());
    return measured > floor ? measured : floor;
  }

  private void refuse(Candidate candidate, Refusal reason) {
    refused.merge(reason, 1, Integer::sum);
    if (others.size() < settings.otherStarsMax()) {
      others.add(new Detection(candidate.xPx(), candidate.yPx(), candidate.fluxCounts(), reason));
    }
  }

  private static Placed start(Candidate candidate, Typical typical) {
    Moments moments = typical.startFor(candidate);
    return new Placed(candidate.xPx(), candidate.yPx(), candidate.fluxCounts(), moments);
  }

  private static Placed placed(Candidate candidate) {
    Moments rough = candidate.isophotal();
    Moments floored = rough.plus(Moments.round(Math.max(0, 0.2 - rough.minorPx2())));
    return new Placed(candidate.xPx(), candidate.yPx(), candidate.fluxCounts(), floored);
  }
}
