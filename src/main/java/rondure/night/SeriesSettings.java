package rondure.night;

/**
 * What makes frames a focus test series.
 *
 * @param leastFrames [5] fewest frames of a series that is recognised
 * @param mostFrames [60] most of them
 * @param leastSteps [4] fewest steps that are seen on both sides together: a knock makes one, a
 *     knock and another back two
 * @param mostRepeats [5] most frames at one position: a longer stay is a level of the night
 * @param mostMinutes [45] longest series: focus that creeps takes hours
 * @param leastRise [0.15] least growth of the second moment at both ends, a share of the least
 * @param stepSigmas [3] how far a step goes beyond the level before it, standard errors
 * @param smearShare [0.25] most change of the stretch beside the growth: focus widens stars alike
 *     in all directions, a shake does not
 * @param mostOdds [0.5] how likely shake or haze may be in the soft frames, on the average
 * @param mostUneven [0.3] largest scatter of the steps, a share of a step, at which they still
 *     count as even
 */
record SeriesSettings(
    int leastFrames,
    int mostFrames,
    int leastSteps,
    int mostRepeats,
    double mostMinutes,
    double leastRise,
    double stepSigmas,
    double smearShare,
    double mostOdds,
    double mostUneven) {

  static SeriesSettings defaults() {
    return new SeriesSettings(5, 60, 4, 5, 45, 0.15, 3, 0.25, 0.5, 0.3);
  }
}
