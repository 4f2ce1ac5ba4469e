package rondure.night;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.IntStream;
import rondure.blur.Attribution;
import rondure.intake.CaptureTime;
import rondure.stars.StarField;

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
    List<Gear> gears = new ArrayList<>();
    members(shots, rulings)
        .forEach(
            (key, places) -> {
              List<Shot> own = places.stream().map(shots::get).toList();
              gears.add(new Gear(key, places, judge.judge(own)));
            });
    NightFrame[] frames = new NightFrame[shots.size()];
    for (int i = 0; i < frames.length; i++) {
      frames[i] = outside(shots.get(i), rulings.get(i));
    }
    Map<Integer, Integer> statics = new HashMap<>();
    List<Gear.Divided> divided = Gear.divided(gears);
    for (Gear.Divided one : divided) {
      for (Scene scene : one.scenes()) {
        scene.frames().forEach(place -> frames[place] = inside(one.gear(), place, scene, sizes));
      }
      int removed = one.gear().judgement().statics().spots().size();
      statics.put(one.whole().number(), removed);
    }
    List<Scene> scenes =
        divided.stream()
            .flatMap(one -> one.scenes().stream())
            .sorted(Comparator.comparingInt(Scene::number))
            .toList();
    List<FocusSeries> series = AllSeries.of(List.of(frames), scenes, input.namedSeries());
    Set<Integer> tests = AllSeries.members(series);
    tests.forEach(place -> frames[place] = frames[place].asFocusTest());
    List<NightFrame> all = List.of(frames);
    List<String> notes = new ArrayList<>(input.notes());
    notes.addAll(new Remarks(settings, sizes).on(all, shots, divided));
    return new NightBook(
        input.inputName(),
        summaries(all, scenes),
        scenes,
        all,
        input.leftOut(),
        statics,
        Events.of(all, divided, tests, settings.events()),
        series,
        notes);
  }

  /** Places of the frames that are explained together, in order of their first frames. */
  private Map<SceneKey, List<Integer>> members(List<Shot> shots, List<Optional<Ruling>> rulings) {
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

  /** Full-size sharpness cannot be judged from a copy with fewer pixels than its camera makes. */
  private Optional<Usefulness> usefulness(SceneJudge.JudgedShot judged, UsualSizes sizes) {
    StarField field = judged.measurement().field();
    boolean smaller =
        sizes.isSmaller(judged.shot().cameraName(), field.widthPx(), field.heightPx());
    int longSidePx = Math.max(field.widthPx(), field.heightPx());
    return smaller
        ? judged.usefulness().map(u -> u.ofSmallerCopy(longSidePx, settings.grades().uses()))
        : judged.usefulness();
  }

  private NightFrame inside(Gear gear, int place, Scene scene, UsualSizes sizes) {
    int own = Collections.binarySearch(gear.places(), place);
    SceneJudge.JudgedShot judged = gear.judgement().frames().get(own);
    Shot shot = judged.shot();
    return new NightFrame(
        shot.exposure().file(),
        shot.exposure().copies(),
        shot.cameraName(),
        Optional.of(scene.number()),
        Optional.of(scene.nightIndex()),
        shot.facts(),
        judged.ruling().map(Ruling::status).orElse(FrameStatus.MEASURED),
        judged.ruling().map(Ruling::reason),
        judged.trailPx(),
        judged.shape(),
        judged.verdict(),
        judged.budget(),
        judged.course(),
        usefulness(judged, sizes),
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
