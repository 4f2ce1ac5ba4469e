package rondure;

import java.io.IOException;
import rondure.night.NightBook;
import rondure.report.FramesCsv;
import rondure.report.KeepList;
import rondure.report.NightJson;
import rondure.report.OutputFolder;
import rondure.report.PdfReport;
import rondure.report.ReportSettings;
import rondure.report.RunLog;
import rondure.report.StarTable;

/** Writes all results of a run, then moves them into place together. */
final class Results {
  private Results() {}

  static void write(NightBook book, Settings settings, OutputFolder output) throws IOException {
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
    output.write("run.log", out -> RunLog.write(book, report.softwareVersion(), out));
    output.publish();
  }
}
