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

  private ScenePages() {}

  static List<SceneView> views(
      ReportContext context, TemplateEngine templates, Set<String> fullEntries)
      throws TemplateProblem {
    EntryMaker maker = new EntryMaker(context);
    Standings standings = Standings.of(context.book());
    Map<String, Integer> positions = context.positions();
    List<SceneView> views = new ArrayList<>();
    for (Scene scene : context.book().scenes()) {
      List<String> entries = new ArrayList<>();
      List<PageView.Bookmark> bookmarks = new ArrayList<>();
      List<SceneView.FrameRow> rows = new ArrayList<>();
      for (NightFrame frame : Ranking.bestFirst(context.book(), scene)) {
        if (fullEntries.contains(frame.file()) && frame.measurement().isPresent()) {
          EntryView entry = maker.entry(frame, scene, positions.get(frame.file()));
          entries.add(templates.fill("entry.html", entry));
          bookmarks.add(new PageView.Bookmark(entry.file(), "#" + entry.id(), List.of()));
        } else {
          rows.add(row(context, frame));
        }
      }
      if (!entries.isEmpty() || !rows.isEmpty()) {
        views.add(
            new SceneView(
                "scene-" + scene.number(),
                title(context, scene),
                facts(context, scene, entries.size() + rows.size()),
                sentences(context, standings, scene),
                entries,
                bookmarks,
                rows));
      }
    }
    return views;
  }

  private static List<String> sentences(ReportContext context, Standings standings, Scene scene) {
    List<String> sentences = new ArrayList<>(SceneWords.sentences(scene, context.words()));
    List<String> bests = standings.bestOfAlike(scene).stream().map(NightFrame::file).toList();
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
