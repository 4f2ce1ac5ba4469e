package rondure.night;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import rondure.blur.SceneReference;
import rondure.intake.Linearity;
import rondure.sky.StaticReport;
import rondure.stars.StarField;

/** Remarks on a set in plain words: what is missing, what was assumed, what looks odd. */
final class Remarks {
  private static final int FIRST_DAYLIGHT_HOUR = 9;
  private static final int LAST_DAYLIGHT_HOUR = 15;

  private final NightSettings settings;
  private final UsualSizes sizes;
  private final List<String> notes = new ArrayList<>();

  Remarks(NightSettings settings, UsualSizes sizes) {
    this.settings = settings;
    this.sizes = sizes;
  }

  /**
   * @param frames the frames of the book
   * @param shots the same exposures in the same order
   * @param gears with their scenes
   */
  List<String> on(List<NightFrame> frames, List<Shot> shots, List<Gear.Divided> gears) {
    List<NightFrame> ofTheNight = frames.stream().filter(f -> f.nightIndex().isPresent()).toList();
    for (Gear.Divided one : gears) {
      one.gear().judgement().fault().ifPresent(fault -> notes.add(fault.remark(one.name())));
    }
    missingFacts(ofTheNight);
    assumedLinear(ofTheNight);
    sizes(ofTheNight);
    clocks(ofTheNight, shots);
    for (Gear.Divided one : gears) {
      softness(one);
      statics(one.name(), one.gear().judgement().statics().finding());
    }
    return List.copyOf(notes);
  }

  private void missingFacts(List<NightFrame> frames) {
    boolean some = frames.stream().anyMatch(f -> f.facts().captureTime().isPresent());
    count(
        frames,
        f -> f.facts().captureTime().isEmpty(),
        some
            ? "%s no capture time: placed last, in the order of their file names."
            : "%s no capture time; the order is that of the file names.");
    count(
        frames,
        f -> f.facts().exposureSeconds().isEmpty(),
        "%s no exposure time: the trail cannot be predicted, so trailing and tripod cannot be told"
            + " apart (give --exposure).");
    count(
        frames,
        f -> f.facts().exposureSeconds().isPresent() && f.trailPredictedPx().isEmpty(),
        "%s no focal length, or no pixel pitch: the trail cannot be predicted and widths have no"
            + " angle on the sky (give --focal-length and --pixel-pitch).");
  }

  private void assumedLinear(List<NightFrame> frames) {
    count(
        frames,
        f -> linearity(f) == Linearity.ASSUMED,
        "%s no colour profile and was taken as linear light; if it was exported with a tone curve,"
            + " stars come out 10 to 36 %% too wide.");
    count(
        frames,
        f -> linearity(f) == Linearity.DEVELOPED,
        "%s 8 bits a colour: widths are approximate, good for comparing frames of one set.");
  }

  private static Linearity linearity(NightFrame frame) {
    return frame.measurement().orElseThrow().linearity();
  }

  private void sizes(List<NightFrame> frames) {
    count(
        frames,
        this::isSmaller,
        "%s fewer pixels than its camera's other frames: resized or cropped, so full-size"
            + " sharpness cannot be judged from it.");
    List<String> cameras = frames.stream().map(NightFrame::cameraName).distinct().sorted().toList();
    if (cameras.size() > 1) {
      notes.add(
          cameras.size()
              + " cameras took part ("
              + String.join(", ", cameras)
              + "); frames are compared within each camera, lens and focal length only.");
    }
  }

  private boolean isSmaller(NightFrame frame) {
    StarField field = frame.measurement().orElseThrow().field();
    return sizes.isSmaller(frame.cameraName(), field.widthPx(), field.heightPx());
  }

  private void clocks(List<NightFrame> frames, List<Shot> shots) {
    count(
        frames,
        f -> f.status() == FrameStatus.MEASURED && isByDay(f),
        "%s stars but a clock time in the middle of the day: the camera's clock seems wrong (shift"
            + " it with --clock-shift).");
    notes.addAll(ClockRemarks.on(shots));
    notes.addAll(OrderRemarks.on(shots));
  }

  private static boolean isByDay(NightFrame frame) {
    return frame
        .facts()
        .captureTime()
        .map(time -> time.local().getHour())
        .filter(hour -> hour >= FIRST_DAYLIGHT_HOUR && hour < LAST_DAYLIGHT_HOUR)
        .isPresent();
  }

  /** Width across any smear counts: a scene of long trails may still be in focus. */
  private void softness(Gear.Divided one) {
    one.gear()
        .judgement()
        .reference()
        .map(SceneReference::coreFwhmPx)
        .filter(px -> px > settings.softFwhmPx())
        .ifPresent(
            px ->
                notes.add(
                    String.format(
                        Locale.ROOT,
                        "%s soft throughout: even the stars of the sharpest frames are %.1f px"
                            + " wide across any smear. %s",
                        one.name() + (one.isOne() ? " is" : " are"),
                        px,
                        px > settings.widestCorePx()
                            ? "Frames that are out of focus are not kept there."
                            : "\"Keep\" means sharp for this camera and lens there only.")));
  }

  private void statics(String scene, StaticReport.Finding finding) {
    if (finding == StaticReport.Finding.NOTHING_FOLLOWS_THE_SKY) {
      notes.add(
          scene
              + ": every point of light stays on the sensor, so nothing in it follows the sky; its"
              + " frames are not judged.");
    } else if (finding == StaticReport.Finding.SKY_STAYS) {
      notes.add(
          scene
              + ": the stars hardly move over the sensor: a tracking mount, the pole in the frame,"
              + " or frames in quick succession. Lights on the ground could not be told from stars"
              + " by their motion.");
    }
  }

  /** Adds the sentence when some frames fit; %s becomes "3 frames have" or "x.jpg has". */
  private void count(List<NightFrame> frames, Predicate<NightFrame> fits, String sentence) {
    List<NightFrame> found = frames.stream().filter(fits).collect(Collectors.toList());
    if (found.isEmpty()) {
      return;
    }
    String who =
        found.size() == frames.size() && found.size() > 1
            ? "All " + found.size() + " frames have"
            : found.size() == 1 ? found.get(0).file() + " has" : found.size() + " frames have";
    String fitted = found.size() == 1 ? sentence : plural(sentence);
    notes.add(String.format(Locale.ROOT, fitted, who));
  }

  private static String plural(String sentence) {
    return sentence
        .replace("and was taken", "and were taken")
        .replace("if it was exported", "if they were exported")
        .replace("than its camera's", "than their camera's")
        .replace("judged from it.", "judged from them.");
  }
}
