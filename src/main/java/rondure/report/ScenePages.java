package rondure.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import rondure.night.FrameShape;
import rondure.night.NightFrame;
import rondure.night.Scene;
import rondure.report.layout.TemplateEngine;
import rondure.report.layout.TemplateProblem;
import rondure.report.layout.Wording;
import rondure.report.picture.Mark;

/** Makes the views of the scenes: full entries and table rows. */
final class ScenePages {
  /** Of more groups of frames alike not every best is named. */
  private static final int MOST_BESTS = 6;

  private static final int MOST_OF_A_NAME = 22;

  /** So many rows fill the half page that an odd last entry leaves. */
  private static final int MOST_ROWS_OF_HALF_A_PAGE = 24;

  private final ReportContext context;
  private final TemplateEngine templates;
  private final Set<String> fullEntries;
  private final EntryMaker maker;
  private final Standings standings;
  private final Map<String, Integer> positions;

  private ScenePages(ReportContext context, TemplateEngine templates, Set<String> fullEntries) {
    this.context = context;
    this.templates = templates;
    this.fullEntries = fullEntries;
    this.maker = new EntryMaker(context);
    this.standings = Standings.of(context.book());
    this.positions = context.positions();
  }

  static List<SceneView> views(
      ReportContext context, TemplateEngine templates, Set<String> fullEntries)
      throws TemplateProblem {
    ScenePages pages = new ScenePages(context, templates, fullEntries);
    List<Scene> shown =
        context.book().scenes().stream()
            .filter(scene -> !Ranking.bestFirst(context.book(), scene).isEmpty())
            .toList();
    List<SceneView> views = new ArrayList<>();
    for (Scene scene : shown) {
      views.add(pages.view(scene, views.isEmpty(), views.size() + 1 == shown.size()));
    }
    return views;
  }

  private boolean isFull(NightFrame frame) {
    return fullEntries.contains(frame.file()) && frame.measurement().isPresent();
  }

  private SceneView view(Scene scene, boolean first, boolean last) throws TemplateProblem {
    List<NightFrame> frames = Ranking.bestFirst(context.book(), scene);
    List<EntryView> entries =
        frames.parallelStream()
            .filter(this::isFull)
            .map(frame -> maker.entry(frame, scene, positions.get(frame.file())))
            .toList();
    List<String> filled = new ArrayList<>();
    for (EntryView entry : entries) {
      filled.add(templates.fill("entry.html", entry));
    }
    boolean others = entries.size() < frames.size();
    return new SceneView(
        "scene-" + scene.number(),
        title(context, scene),
        facts(context, scene, frames.size()),
        sentences(context, standings, scene),
        entries.stream()
            .filter(entry -> entries.size() > 1)
            .map(entry -> indexItem(context, entry))
            .toList(),
        first,
        first && !entries.isEmpty(),
        filled,
        entries.stream()
            .map(one -> new PageView.Bookmark(one.file(), "#" + one.id(), List.of()))
            .toList(),
        context.words().say(others ? "scene.others" : "scene.inNumbers"),
        frames.stream()
            .filter(frame -> others ? !isFull(frame) : last && fillsHalfAPage(entries.size()))
            .map(frame -> row(context, frame))
            .toList());
  }

  /** The first entry stands below the heading of its scene, the others two to a page. */
  private static boolean fillsHalfAPage(int entries) {
    return entries % 2 == 0 && entries <= MOST_ROWS_OF_HALF_A_PAGE;
  }

  private static SceneView.IndexItem indexItem(ReportContext context, EntryView entry) {
    return new SceneView.IndexItem(
        entry.mark(),
        Figures.shortened(entry.file(), MOST_OF_A_NAME),
        "#" + entry.id(),
        context.words().say("scene.toEntry", "file", entry.file()),
        entry.grade());
  }

  private static List<String> sentences(ReportContext context, Standings standings, Scene scene) {
    List<String> sentences = new ArrayList<>(SceneWords.sentences(scene, context.words()));
    List<String> bests =
        standings.bestOfAlike(scene).stream()
            .filter(Ranking::isKeep)
            .map(NightFrame::file)
            .toList();
    if (!bests.isEmpty()) {
      List<String> named = bests.subList(0, Math.min(MOST_BESTS, bests.size()));
      sentences.add(
          context
              .words()
              .say(
                  bests.size() > named.size() ? "scene.alikeMany" : "scene.alike",
                  "files",
                  String.join(", ", named.stream().map(f -> Figures.shortened(f, 40)).toList()),
                  "groups",
                  Integer.toString(bests.size())));
    }
    return sentences;
  }

  private static String title(ReportContext context, Scene scene) {
    return context
        .words()
        .say(
            "scene.title",
            "name",
            SceneName.of(context.book(), scene),
            "number",
            Integer.toString(scene.number()));
  }

  private static String facts(ReportContext context, Scene scene, int measured) {
    Wording words = context.words();
    List<String> parts = new ArrayList<>();
    parts.add(scene.cameraName());
    parts.add(words.count("count.measured", measured));
    scene
        .sharpestFwhmPx()
        .ifPresent(width -> parts.add(words.say("scene.sharpest", "width", Figures.px(width))));
    return String.join("  ·  ", parts);
  }

  private static SceneView.FrameRow row(ReportContext context, NightFrame frame) {
    FrameShape shape = frame.shape().orElseThrow();
    Mark mark = Mark.of(frame);
    return new SceneView.FrameRow(
        context.mark(mark),
        frame.file(),
        context.markName(mark),
        Figures.px(shape.fwhmPx()),
        Figures.fixed(2, shape.roundness()),
        frame.trailPredictedPx().map(Figures::px).orElse("–"),
        frame.facts().captureTime().map(taken -> Figures.clock(taken.local())).orElse("–"),
        frame.grade().map(grade -> context.words().say("grade." + grade)).orElse(""));
  }
}
