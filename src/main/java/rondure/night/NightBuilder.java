package rondure.night;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.IntStream;
import rondure.blur.Attribution;
import rondure.blur.SceneReference;
import rondure.intake.CaptureTime;

/** Builds the book of a night from its measured exposures. */
public final class NightBuilder {
  private final NightInput input;
  private final NightSettings settings;
  private final SceneJudge judge;

  private NightBuilder(NightInput input, NightSettings settings, Attribution attribution) {
    this.input = input;
    this.settings = settings;
    this.judge = new SceneJudge(settings, attribution);
  }

  /**
   * A pure function: the same exposures, in any order, give the same book.
   *
   * @param attribution judges what softened each measured frame
   */
  public static NightBook build(NightInput input, NightSettings settings, Attribution attribution) {
    return new NightBuilder(input, settings, attribution).build();
  }

  private NightBook build() {
    List<Shot> shots = Shots.inOrder(input.exposures());
    UsualSizes sizes = new UsualSizes(shots);
    FirstLook firstLook = new FirstLook(settings, sizes);
    List<Optional<Ruling>> rulings = shots.stream().map(firstLook::at).toList();
    Map<SceneKey, List<Integer>> members = scenes(shots, rulings);
    NightFrame[] frames = new NightFrame[shots.size()];
    for (int i = 0; i < frames.length; i++) {
      frames[i] = outside(shots.get(i), rulings.get(i));
    }
    List<Scene> scenes = new ArrayList<>();
    List<SceneJudge.Judgement> judgements = new ArrayList<>();
    Map<Integer, Integer> statics = new HashMap<>();
    members.forEach(
        (key, places) -> {
          int number = scenes.size() + 1;
          SceneJudge.Judgement judgement = judge.judge(places.stream().map(shots::get).toList());
          for (int i = 0; i < places.size(); i++) {
            frames[places.get(i)] = inside(judgement.frames().get(i), number, key.nightIndex());
          }
          scenes.add(scene(number, key, places, judgement));
          judgements.add(judgement);
          statics.put(number, judgement.statics().spots().size());
        });
    List<FocusSeries> series = AllSeries.of(List.of(frames), scenes, input.namedSeries());
    Set<Integer> tests = AllSeries.members(series);
    tests.forEach(place -> frames[place] = frames[place].asFocusTest());
    List<NightFrame> all = List.of(frames);
    List<String> notes = new ArrayList<>(input.notes());
    notes.addAll(new Remarks(settings, sizes).on(all, shots, scenes, judgements));
    return new NightBook(
        input.inputName(),
        summaries(all, scenes),
        scenes,
        all,
        input.ignoredCounts(),
        statics,
        Events.of(all, scenes, tests, settings.events()),
        series,
        notes);
  }

  /** Places of the frames of each scene, scenes in order of their first frame. */
  private Map<SceneKey, List<Integer>> scenes(List<Shot> shots, List<Optional<Ruling>> rulings) {
    List<Integer> places =
        IntStream.range(0, shots.size()).filter(i -> rulings.get(i).isEmpty()).boxed().toList();
    List<Shot> ofTheNight = places.stream().map(shots::get).toList();
    List<Integer> nights = NightSplitter.nights(ofTheNight, settings.nightGapHours());
    Map<SceneKey, List<Integer>> members = new LinkedHashMap<>();
    for (int i = 0; i < places.size(); i++) {
      SceneKey key = SceneKey.of(ofTheNight.get(i), nights.get(i));
      members.computeIfAbsent(key, k -> new ArrayList<>()).add(places.get(i));
    }
    return members;
  }

  private static Scene scene(
      int number, SceneKey key, List<Integer> places, SceneJudge.Judgement judgement) {
    return new Scene(
        number,
        key.nightIndex(),
        key.cameraName(),
        key.focalLengthMm(),
        places,
        judgement.reference().map(SceneReference::sharpestFwhmPx),
        judgement.solution());
  }

  private static NightFrame outside(Shot shot, Optional<Ruling> ruling) {
    return new NightFrame(
        shot.exposure().file(),
        shot.exposure().copies(),
        shot.cameraName(),
        Optional.empty(),
        Optional.empty(),
        shot.facts(),
        ruling.map(Ruling::status).orElse(FrameStatus.TOO_FEW_STARS),
        ruling.map(Ruling::reason),
        shot.trailPx(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        shot.exposure().measurement());
  }

  private static NightFrame inside(SceneJudge.JudgedShot judged, int scene, int night) {
    Shot shot = judged.shot();
    return new NightFrame(
        shot.exposure().file(),
        shot.exposure().copies(),
        shot.cameraName(),
        Optional.of(scene),
        Optional.of(night),
        shot.facts(),
        judged.ruling().map(Ruling::status).orElse(FrameStatus.MEASURED),
        judged.ruling().map(Ruling::reason),
        judged.trailPx(),
        judged.shape(),
        judged.verdict(),
        judged.budget(),
        judged.course(),
        judged.usefulness(),
        judged.graded(),
        Optional.of(judged.measurement()));
  }

  private static List<NightSummary> summaries(List<NightFrame> frames, List<Scene> scenes) {
    int last = scenes.stream().mapToInt(Scene::nightIndex).max().orElse(0);
    List<NightSummary> nights = new ArrayList<>();
    for (int index = 1; index <= last; index++) {
      int night = index;
      List<NightFrame> own =
          frames.stream().filter(f -> f.nightIndex().equals(Optional.of(night))).toList();
      List<CaptureTime> times =
          own.stream().flatMap(f -> f.facts().captureTime().stream()).toList();
      nights.add(
          new NightSummary(
              night,
              times.isEmpty() ? Optional.empty() : Optional.of(times.get(0)),
              times.isEmpty() ? Optional.empty() : Optional.of(times.get(times.size() - 1)),
              scenes.stream().filter(s -> s.nightIndex() == night).map(Scene::number).toList(),
              own.size(),
              (int) own.stream().filter(f -> f.status() == FrameStatus.MEASURED).count(),
              (int) own.stream().filter(f -> f.grade().equals(Optional.of(Grade.KEEP))).count()));
    }
    return nights;
  }
}
