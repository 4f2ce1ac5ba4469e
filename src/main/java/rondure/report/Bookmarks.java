package rondure.report;

import java.util.ArrayList;
import java.util.List;
import rondure.report.layout.Wording;

/** Gathers the lines of the viewer's outline in the order of the pages. */
final class Bookmarks {
  private final Wording words;
  private final List<PageView.Bookmark> lines = new ArrayList<>();

  Bookmarks(Wording words) {
    this.words = words;
  }

  /** A part of the report, where it is there. */
  Bookmarks part(String key, boolean isThere) {
    if (isThere) {
      add(key, key);
    }
    return this;
  }

  /** The tables, named by what they hold. */
  Bookmarks tables(TablesView tables) {
    if (!tables.isEmpty()) {
      add(tables.onlyCopies() ? "copies" : "tables", "tables");
    }
    return this;
  }

  private void add(String key, String id) {
    lines.add(new PageView.Bookmark(words.say("bookmark." + key), "#" + id, List.of()));
  }

  /** Each scene with its entries. */
  Bookmarks scenes(List<SceneView> scenes) {
    for (SceneView scene : scenes) {
      lines.add(new PageView.Bookmark(scene.title(), "#" + scene.id(), scene.bookmarks()));
    }
    return this;
  }

  List<PageView.Bookmark> inOrder() {
    return List.copyOf(lines);
  }
}
