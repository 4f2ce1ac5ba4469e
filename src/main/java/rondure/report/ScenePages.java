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
  private ScenePages() {}

  static List<SceneView> views(
      ReportContext context, TemplateEngine templates, Set<String> fullEntries)
      throws TemplateProblem {
    EntryMaker maker = new EntryMaker(context);
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
                title(context.words(), scene),
                facts(context, scene, entries.size() + rows.size()),
                SceneWords.sentences(scene, context.words()),
                entries,
                bookmarks,
                rows));
      }
    }
    return views;
  }

  private static String title(Wording words, Scene scene) {
    return words.say("scene.title", "number", Integer.toString(scene.number()));
  }

  private static String facts(ReportContext context, Scene scene, int measured) {
    Wording words = context.words();
    List<String> parts = new ArrayList<>();
    parts.add(scene.cameraName());
    scene.focalLengthMm().ifPresent(length -> parts.add(Figures.plain(1, length) + " mm"));
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
