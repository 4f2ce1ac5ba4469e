package rondure.report;

import java.util.List;
import rondure.night.NightFrame;
import rondure.report.picture.Mark;

/** Makes the view of the tables: not measured, left out, copies. */
final class TablesPage {
  private TablesPage() {}

  static TablesView view(ReportContext context) {
    return new TablesView(
        rows(context, Mark.NOT_MEASURABLE), rows(context, Mark.LEFT_OUT), copies(context));
  }

  private static List<TablesView.Row> rows(ReportContext context, Mark mark) {
    return context.book().frames().stream()
        .filter(frame -> Mark.of(frame) == mark)
        .map(
            frame ->
                new TablesView.Row(
                    frame.file(),
                    context.words().say("status." + frame.status()),
                    frame.reason().orElse("")))
        .toList();
  }

  private static List<TablesView.CopyRow> copies(ReportContext context) {
    return context.book().frames().stream()
        .filter(frame -> !frame.copies().isEmpty())
        .map(TablesPage::copyRow)
        .toList();
  }

  private static TablesView.CopyRow copyRow(NightFrame frame) {
    return new TablesView.CopyRow(frame.file(), String.join(", ", frame.copies()));
  }
}
