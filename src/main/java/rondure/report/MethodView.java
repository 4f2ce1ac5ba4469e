package rondure.report;

import java.util.List;

/**
 * How this was measured.
 *
 * @param settings all settings used
 * @param removed lights and hot pixels that were removed, by scene
 * @param remarks all remarks on the set
 * @param version of the program
 */
record MethodView(
    List<ShownSetting> settings, List<String> removed, List<String> remarks, String version) {

  static MethodView of(ReportContext context) {
    List<String> removed =
        context.book().staticDetections().entrySet().stream()
            .filter(entry -> entry.getValue() > 0)
            .sorted(java.util.Map.Entry.comparingByKey())
            .map(
                entry ->
                    context
                        .words()
                        .say(
                            "method.removed",
                            "scene",
                            Integer.toString(entry.getKey()),
                            "count",
                            Integer.toString(entry.getValue())))
            .toList();
    return new MethodView(
        context.settings().settingRows(),
        removed,
        context.book().notes(),
        context.settings().softwareVersion());
  }
}
