package rondure.report;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.function.UnaryOperator;
import rondure.base.Orientation;
import rondure.intake.ImageFormat;
import rondure.intake.ShotFacts;
import rondure.night.FrameStatus;
import rondure.night.NightBook;
import rondure.night.NightFrame;
import rondure.report.FrameFixture.Kind;

/** Nights that are all of one kind, or that have names nobody expects. */
final class OddBooks {
  private static final int FRAMES = 5;

  /** Spaces, emoji, right-to-left with overrides, no place to break, markup, a formula. */
  static final List<String> NAMES =
      List.of(
          "  two  spaces and a tab\t.tif",
          "🌌👨‍👩‍👧‍👦 family.tif",
          "\u202Egpj.exe\u202C שביל החלב.tif",
          "x".repeat(200) + ".tif",
          "<b>&amp;</b><script>alert(1)</script>{{facts}}.tif",
          "=cmd|' /C calc'!A0.tif",
          "line\nend.tif",
          "half \uD83C pair.tif");

  private OddBooks() {}

  /** Each by what it is. */
  static Map<String, NightBook> all() {
    Map<String, NightBook> books = new LinkedHashMap<>();
    books.put("one frame", BookFixture.night(1));
    books.put("all sharp", of(Kind.SHARP, frame -> frame));
    books.put("all undecided", of(Kind.UNDECIDED, frame -> frame));
    books.put("portrait", of(Kind.TRAILED, OddBooks::upright));
    books.put("no EXIF", of(Kind.DEFOCUSED, OddBooks::bare));
    books.put("all unreadable", of(Kind.SHARP, OddBooks::unreadable));
    books.put("odd names", oddNames());
    books.put("everything happens", TalkativeBook.night());
    return books;
  }

  private static NightBook of(Kind kind, UnaryOperator<NightFrame> change) {
    List<NightFrame> frames = new ArrayList<>();
    NightBook plain = BookFixture.night(FRAMES);
    Random random = new Random(kind.ordinal());
    for (NightFrame frame : plain.frames()) {
      FrameFixture made = new FrameFixture(kind, frame.facts(), random);
      NightFrame told = BookFixture.withVerdict(frame, made.verdict(frame.trailPredictedPx()));
      boolean keep = kind == Kind.SHARP;
      frames.add(
          change.apply(
              BookFixture.with(
                  told,
                  told.verdict(),
                  Optional.of(BookFixture.graded(keep)),
                  told.measurement())));
    }
    return BookFixture.book("Hollow Ridge", frames);
  }

  private static NightBook oddNames() {
    List<NightFrame> frames = new ArrayList<>();
    List<NightFrame> plain = BookFixture.night(NAMES.size()).frames();
    for (int i = 0; i < NAMES.size(); i++) {
      frames.add(named(plain.get(i), NAMES.get(i), plain.get(i).facts()));
    }
    return BookFixture.book("\u202E<night>" + "y".repeat(90), frames);
  }

  private static NightFrame upright(NightFrame frame) {
    ShotFacts facts = frame.facts();
    return named(
        frame,
        frame.file(),
        new ShotFacts(
            facts.format(),
            facts.widthPx(),
            facts.heightPx(),
            Orientation.ROTATED_90_CW,
            facts.captureTime(),
            facts.exposureSeconds(),
            facts.fNumber(),
            facts.iso(),
            facts.focalLengthMm(),
            facts.focalLength35Mm(),
            facts.pixelPitchMicrons(),
            facts.ambientTemperatureC(),
            facts.cameraModel(),
            facts.lensModel(),
            false));
  }

  private static NightFrame bare(NightFrame frame) {
    return named(frame, frame.file(), ShotFacts.unknown(ImageFormat.PNG));
  }

  private static NightFrame named(NightFrame frame, String file, ShotFacts facts) {
    return new NightFrame(
        file,
        frame.copies(),
        frame.cameraName(),
        frame.sceneNumber(),
        frame.nightIndex(),
        facts,
        frame.status(),
        frame.reason(),
        facts.exposureSeconds().flatMap(known -> frame.trailPredictedPx()),
        frame.shape(),
        frame.verdict(),
        frame.budget(),
        frame.course(),
        frame.usefulness(),
        frame.graded(),
        frame.measurement());
  }

  private static NightFrame unreadable(NightFrame frame) {
    return new NightFrame(
        frame.file(),
        List.of(),
        frame.cameraName(),
        Optional.empty(),
        Optional.empty(),
        ShotFacts.unknown(ImageFormat.TIFF),
        FrameStatus.UNREADABLE,
        Optional.of("The file ends after 8 bytes; copy it again from the card."),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty());
  }
}
