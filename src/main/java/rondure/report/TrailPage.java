package rondure.report;

import java.util.List;
import java.util.Optional;

/** "How long may you expose?": tables of trails, and under them the chart of the largest scene. */
final class TrailPage {
  private static final double HEAD = 84;
  private static final double TABLE_HEAD = 95;
  private static final double TABLE_ROW = 22.3;
  private static final double CAPTION = 32;
  private static final long LEAST_HIGH = 300;
  private static final long MOST_HIGH = 560;

  /** On a page after the tables: half of it. */
  private static final long ALONE_HIGH = 480;

  private final ReportContext context;
  private final List<SceneFigures> tabled;

  /**
   * @param tabled the scenes that have a table
   */
  TrailPage(ReportContext context, List<SceneFigures> tabled) {
    this.context = context;
    this.tabled = tabled;
  }

  /**
   * Empty where no scene has a table.
   *
   * @param isPageBeforeFull whether it begins a page
   * @param usedPx of its page by what stands before it
   */
  Optional<CourseView.Exposure> view(boolean isPageBeforeFull, double usedPx) {
    if (tabled.isEmpty()) {
      return Optional.empty();
    }
    TrailTables maker = new TrailTables(context);
    List<CourseView.TrailTable> tables = tabled.stream().map(maker::table).toList();
    return Optional.of(
        new CourseView.Exposure(
            tables, TrailCharts.of(context, tabled, height(tables, usedPx)), isPageBeforeFull));
  }

  /** What the tables leave of the page; where that is too little it stands on the next. */
  private long height(List<CourseView.TrailTable> tables, double usedPx) {
    GlanceRoom room = new GlanceRoom(context);
    room.take(usedPx);
    room.take(HEAD + CAPTION);
    room.takeHeading();
    for (CourseView.TrailTable table : tables) {
      room.take(TABLE_HEAD + TABLE_ROW * (1 + table.rows().size()));
      room.takeWidePoints(table.sentences());
    }
    long left = (long) room.left();
    return left < LEAST_HIGH ? ALONE_HIGH : Math.min(MOST_HIGH, left);
  }
}
