package rondure.stars;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.stream.Stream;
import rondure.base.PixelPlane;

/**
 * Finds the stars of a frame: sky background, sky region, sources above the noise.
 *
 * <p>A pure function of the plane. Steps: background on a mesh; significance at doubling widths;
 * connected footprints; distinct peaks; rough measures; sky region; what speaks against a source.
 */
public final class StarFinder {
  /** Candidates kept, and as many refused ones at most. */
  private static final int CANDIDATES_MAX = 4000;

  private static final int FEWEST_MASK_CELLS = 12;
  private static final int FINEST_MASK_PX = 16;

  private StarFinder() {}

  /**
   * Finds the sources of a plane.
   *
   * @param plane linear counts above black; NaN pixels are left out
   * @param context white level and code steps of the plane
   * @param settings mesh size and detection threshold
   * @return background, sky region and candidates, brightest first; of those without a refusal and
   *     of those with one the 4000 brightest each
   */
  public static Found find(PixelPlane plane, PixelContext context, StarSettings settings) {
    BackgroundMesh background = BackgroundMesh.measure(plane, context, settings.meshPx());
    ScaleSpace space = new ScaleSpace(new WhitenedRows(plane, background));
    FootprintRuns footprints = FootprintRuns.trace(space, settings.detectionSnr());
    SourceMeter meter = new SourceMeter(plane, background, space);
    List<Source> sources = SourceList.of(footprints, space, meter, settings.detectionSnr());
    int maskPx = maskMeshPx(plane, settings.meshPx());
    BackgroundMesh cells =
        maskPx == settings.meshPx() ? background : BackgroundMesh.measure(plane, context, maskPx);
    SkyMask mask = SkyRegion.find(cells, sources, context, maskPx);
    SkyState sky = SkyRegion.state(cells, mask, context);
    Predicate<Source> ground = source -> isCloud(source) || !mask.isSky(source.xPx(), source.yPx());
    Verdicts verdicts =
        new Verdicts(
            HotPixelRule.of(sources),
            ground,
            ClipLevel.of(sources, context),
            LostWings.leastPeakCounts(background, context));
    return new Found(background, mask, sky, candidates(sources, verdicts));
  }

  /** The background's mesh, halved for small frames so that their horizon is not a staircase. */
  private static int maskMeshPx(PixelPlane plane, int meshPx) {
    int shorter = Math.min(plane.widthPx(), plane.heightPx());
    int side = meshPx;
    while (side >= 2 * FINEST_MASK_PX && shorter / side < FEWEST_MASK_CELLS) {
      side /= 2;
    }
    return side;
  }

  /** Wider than any star or trail across its length. */
  private static boolean isCloud(Source source) {
    return source.moments().minorPx2() > StarEvidence.WIDEST_MINOR_PX2;
  }

  private static List<Candidate> candidates(List<Source> sources, Verdicts verdicts) {
    List<Candidate> free = new ArrayList<>();
    List<Candidate> refused = new ArrayList<>();
    for (Source source : sources) {
      Optional<Refusal> refusal = verdicts.of(source);
      (refusal.isEmpty() ? free : refused).add(candidate(source, refusal));
    }
    Comparator<Candidate> brightestFirst =
        Comparator.comparingDouble(Candidate::fluxCounts).reversed();
    return Stream.of(free, refused)
        .flatMap(list -> list.stream().sorted(brightestFirst).limit(CANDIDATES_MAX))
        .sorted(brightestFirst)
        .toList();
  }

  /** What the frame as a whole says about each of its sources. */
  private record Verdicts(
      HotPixelRule hotPixels, Predicate<Source> ground, double clipLevel, double leastPeak) {

    /** The first reason that holds: sensor before ground before sky. */
    Optional<Refusal> of(Source source) {
      if (hotPixels.isHot(source.spread())) {
        return Optional.of(Refusal.HOT_PIXEL);
      }
      if (ground.test(source)) {
        return Optional.of(Refusal.NOT_SKY);
      }
      if (source.peakValueCounts() >= clipLevel) {
        return Optional.of(Refusal.SATURATED);
      }
      if (source.touchesEdge()) {
        return Optional.of(Refusal.EDGE);
      }
      return source.peakCounts() < leastPeak ? Optional.of(Refusal.TOO_FAINT) : Optional.empty();
    }
  }

  private static Candidate candidate(Source source, Optional<Refusal> refusal) {
    return new Candidate(
        source.xPx(),
        source.yPx(),
        source.peakXPx(),
        source.peakYPx(),
        source.peakCounts(),
        source.fluxCounts(),
        source.filterSnr(),
        source.moments(),
        refusal);
  }
}
