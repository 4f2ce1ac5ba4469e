package rondure.night;

/**
 * What makes frames a focus test series.
 *
 * @param leastFrames [5] fewest frames of a series that is recognised
 * @param mostFrames [40] most of them
 * @param leastPositions [4] fewest positions of the focus: three always lie on a parabola
 * @param mostMinutes [45] longest series: focus that creeps takes hours
 * @param leastRise [0.15] least growth of the second moment at both ends, a share of the least
 * @param riseSigmas [6] the same in standard errors
 * @param stepSigmas [3] least median step between neighbouring positions, standard errors: a creep
 *     has many small ones
 * @param smearShare [0.25] most change of the stretch beside the growth: focus widens stars alike
 *     in all directions, a shake does not
 * @param mostUneven [0.35] largest scatter of the steps, a share of a step, at which they still
 *     count as even
 */
record SeriesSettings(
    int leastFrames,
    int mostFrames,
    int leastPositions,
    double mostMinutes,
    double leastRise,
    double riseSigmas,
    double stepSigmas,
    double smearShare,
    double mostUneven) {

  static SeriesSettings defaults() {
    return new SeriesSettings(5, 40, 4, 45, 0.15, 6, 3, 0.25, 0.35);
  }
}
