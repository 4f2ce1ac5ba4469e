package rondure.evaluation;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import rondure.base.Orientation;
import rondure.blur.Attribution;
import rondure.crew.FrameMeasurement;
import rondure.crew.Outcome;
import rondure.intake.ShotFacts;
import rondure.night.MeasuredExposure;
import rondure.night.NightBook;
import rondure.night.NightBuilder;
import rondure.night.NightFrame;
import rondure.night.NightInput;
import rondure.night.NightSettings;

/** How much of a night the program is shown. */
enum View {
  /** All frames. */
  WHOLE(Integer.MAX_VALUE, true),
  /** Three frames in a row at a time. */
  THREES(3, true),
  /** Each frame alone. */
  LONE(1, true),
  /** All frames; files say nothing. */
  NO_EXIF(Integer.MAX_VALUE, false),
  /** Each frame alone; files say nothing. */
  LONE_NO_EXIF(1, false);

  private final int group;
  private final boolean exif;

  View(int group, boolean exif) {
    this.group = group;
    this.exif = exif;
  }

  /** Judges a night in this view; what is left of the last group too small for it is left out. */
  List<Scored> score(MeasuredNight night, Attribution attribution) {
    List<Scored> scored = new ArrayList<>();
    int size = Math.min(group, night.frames().size());
    for (int first = 0; first + size <= night.frames().size(); first += size) {
      List<MeasuredExposure> exposures = new ArrayList<>();
      for (int i = first; i < first + size; i++) {
        exposures.add(exposure(i, night.frames().get(i)));
      }
      NightBook book =
          NightBuilder.build(
              new NightInput("night", exposures, Map.of(), List.of()),
              NightSettings.defaults(),
              attribution);
      for (NightFrame frame : book.frames()) {
        int place = Integer.parseInt(frame.file().substring(6, 9));
        List<FrameAnswer> shown = exif ? night.answers().subList(first, first + size) : List.of();
        scored.add(Scored.of(night, place, frame, shown));
      }
    }
    return scored;
  }

  private MeasuredExposure exposure(int place, FrameMeasurement measured) {
    ShotFacts facts = exif ? measured.facts() : bare(measured.facts());
    FrameMeasurement shown =
        new FrameMeasurement(facts, measured.linearity(), measured.field(), measured.thumbnail());
    String file = String.format(Locale.ROOT, "frame-%03d", place);
    return new MeasuredExposure(file, List.of(), facts, new Outcome.Done<>(shown));
  }

  private static ShotFacts bare(ShotFacts facts) {
    ShotFacts unknown = ShotFacts.unknown(facts.format());
    return new ShotFacts(
        unknown.format(),
        facts.widthPx(),
        facts.heightPx(),
        Orientation.NORMAL,
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        false);
  }
}
