package rondure.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import rondure.base.Orientation;
import rondure.blur.SceneBudget;
import rondure.intake.ShotFacts;
import rondure.night.Scene;
import rondure.report.layout.Wording;

/** Makes the view of "This lens and sensor": the softness that every frame of a lens shares. */
final class LensPage {
  private static final int MOST_BLOCKS = 6;
  private static final int SCENES_NAMED = 8;

  /** What widens the stars shown by more than this is worth saying. */
  private static final double WORTH_SAYING = 1.1;

  private final ReportContext context;
  private final Wording words;

  private LensPage(ReportContext context) {
    this.context = context;
    this.words = context.words();
  }

  /** A set-up of which nothing can be said has no block. */
  static LensView view(ReportContext context) {
    LensPage page = new LensPage(context);
    List<LensSetup> setups = LensSetup.of(context.book());
    List<LensView.Block> blocks = new ArrayList<>();
    for (LensSetup setup : setups.subList(0, Math.min(MOST_BLOCKS, setups.size()))) {
      LensView.Block block = page.block(setup, blocks.size());
      if (!(block.stars().isEmpty() && block.field().isEmpty() && block.geometry().isEmpty())) {
        blocks.add(block);
      }
    }
    int left = setups.size() - MOST_BLOCKS;
    List<String> more = left > 0 ? List.of(context.words().count("count.setup", left)) : List.of();
    return new LensView(blocks, more);
  }

  private LensView.Block block(LensSetup setup, int number) {
    LensSample sample = LensSample.of(setup);
    Orientation orientation = sample.frame().facts().orientation();
    LensPictures pictures = new LensPictures(context, setup, sample.frame(), number);
    Optional<SceneBudget.Shared> shared = setup.shared();
    Optional<LensModel> lens =
        shared.map(known -> LensModel.of(known, setup.widthPx(), setup.heightPx()));
    Optional<LensCore> core =
        lens.map(one -> new LensCore(setup, one, shared.orElseThrow().core(), words));
    Optional<LensFindings> findings =
        lens.map(
            one ->
                new LensFindings(
                    one, sample.frame().measurement().orElseThrow().field(), orientation, words));
    Optional<LensStops> stops = lens.map(one -> new LensStops(setup, one, words));
    return new LensView.Block(
        heading(setup),
        facts(setup),
        pictures.stars(),
        from(sample, lens),
        core.map(one -> pictures.ladder(one.ladder())).stream().toList(),
        core.map(LensCore::sentences).orElseGet(() -> List.of(noBudget(setup))),
        lens.map(pictures::field).stream().toList(),
        words.say("lens.fieldNote"),
        findings.map(LensFindings::all).orElse(List.of()),
        findings.map(one -> one.cautions(shared.orElseThrow().lenses())).orElse(List.of()),
        stops.map(LensStops::rows).orElse(List.of()),
        stops.map(LensStops::sentences).orElse(List.of()),
        new LensGeometry(setup, words).sentences());
  }

  private String noBudget(LensSetup setup) {
    return words.say(setup.frames().size() == 1 ? "lens.noBudget.lone" : "lens.noBudget");
  }

  /** Many lenses tell their focal length in their name. */
  private static String heading(LensSetup setup) {
    List<String> parts = new ArrayList<>(List.of(setup.scene().cameraName()));
    Optional<String> lens = setup.frames().get(0).facts().lens().map(String::strip);
    lens.ifPresent(parts::add);
    setup
        .scene()
        .focalLengthMm()
        .map(mm -> Figures.plain(1, mm))
        .filter(mm -> lens.filter(name -> name.matches(".*\\b" + mm + " ?mm.*")).isEmpty())
        .ifPresent(mm -> parts.add(mm + " mm"));
    return String.join(", ", parts);
  }

  private String facts(LensSetup setup) {
    List<String> parts = new ArrayList<>();
    parts.add(words.count("count.measured", setup.frames().size()));
    parts.add(scenes(setup));
    setup
        .figures()
        .usual(ShotFacts::pixelPitchMicrons)
        .map(pitch -> words.say("lens.pitch", "pitch", Figures.plain(2, pitch)))
        .ifPresent(parts::add);
    parts.add(
        setup
            .widestFNumber()
            .map(f -> words.say("lens.used", "fNumber", Figures.plain(1, f)))
            .orElseGet(() -> words.say("lens.noAperture")));
    if (!setup.widestFNumber().equals(setup.narrowestFNumber())) {
      double narrowest = setup.narrowestFNumber().orElseThrow();
      parts.add(words.say("lens.apertures", "narrowest", Figures.plain(1, narrowest)));
    }
    return String.join("  ·  ", parts);
  }

  private String scenes(LensSetup setup) {
    List<Scene> scenes = setup.scenes();
    String numbers =
        scenes.stream()
            .limit(SCENES_NAMED)
            .map(scene -> Integer.toString(scene.number()))
            .collect(Collectors.joining(", "));
    String key = scenes.size() == 1 ? "one" : scenes.size() > SCENES_NAMED ? "many" : "some";
    return words.say(
        "lens.scenes." + key, "numbers", numbers, "count", Integer.toString(scenes.size()));
  }

  private String from(LensSample sample, Optional<LensModel> lens) {
    String file = Figures.shortened(sample.frame().file(), 60);
    if (sample.addedPx2().isEmpty()) {
      return words.say("lens.from.width", "file", file);
    }
    double added = sample.addedPx2().get();
    String from = words.say("lens.from.budget", "file", file, "px2", Figures.fixed(2, added));
    boolean much = lens.filter(one -> one.widening(added) >= WORTH_SAYING).isPresent();
    return much ? from + " " + words.say("lens.from.much") : from;
  }
}
