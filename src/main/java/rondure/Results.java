package rondure;

import java.io.IOException;
import java.util.List;
import rondure.night.NightBook;
import rondure.report.FramesCsv;
import rondure.report.KeepList;
import rondure.report.NightJson;
import rondure.report.OutputFolder;
import rondure.report.PdfReport;
import rondure.report.ReportSettings;
import rondure.report.RunLog;
import rondure.report.StarTable;
import rondure.report.sidecar.Sidecars;

/**
 * Writes all results of a run and moves them into place together; then what goes next to the
 * pictures, and the log once more when there is more to tell.
 */
final class Results {
  private Results() {}

  static void write(NightBook book, Settings settings, Sidecars sidecars, OutputFolder output)
      throws IOException {
    ReportSettings report = settings.report();
    output.write("report.pdf", out -> PdfReport.write(book, report, out));
    output.write(
        "night.json",
        out -> NightJson.write(book, report.softwareVersion(), report.settingRows(), out));
    output.write("frames.csv", out -> FramesCsv.write(book, out));
    output.write("keep.txt", out -> KeepList.write(book, out));
    if (settings.starTable()) {
      output.write("stars.csv.gz", out -> StarTable.write(book, out));
    }
    sidecars.writeInto(output);
    List<String> before = sidecars.summary().logLines();
    writeLog(book, report, before, output);
    output.publish();
    sidecars.writeBeside();
    List<String> told = sidecars.summary().logLines();
    if (!told.equals(before)) {
      writeLog(book, report, told, output);
      output.publish();
    }
  }

  private static void writeLog(
      NightBook book, ReportSettings report, List<String> told, OutputFolder output)
      throws IOException {
    output.write("run.log", out -> RunLog.write(book, report.softwareVersion(), told, out));
  }
}
