package rondure.report;

import java.io.*;
import java.nio.file.*;
import java.util.*;
import rondure.night.*;
import rondure.report.ReportSettings.*;

class LookTmp {
  public static void main(String[] a) throws IOException {
    for (int n : java.util.Arrays.stream(a).skip(1).mapToInt(Integer::parseInt).toArray()) {
      NightBook b = BookFixture.night(n);
      for (PageSize p : PageSize.values()) {
        try (OutputStream o = Files.newOutputStream(Path.of(a[0], "f" + n + p + ".pdf"))) {
          PdfReport.write(
              b,
              new ReportSettings(
                  p,
                  Voice.STUDENT,
                  Optional.empty(),
                  n > 100 ? Entries.NONE : Entries.AUTO,
                  4,
                  "0.1.0",
                  List.of()),
              o);
        }
      }
    }
  }
}
