package rondure.report;

import java.io.IOException;
import java.io.OutputStream;
import java.io.OutputStreamWriter;
import java.io.Writer;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.util.stream.Collectors;
import java.util.stream.DoubleStream;
import java.util.zip.GZIPOutputStream;
import rondure.night.NightBook;
import rondure.night.NightFrame;
import rondure.stars.Star;

/** Writes stars.csv.gz: every measured star of every frame, in stored pixel coordinates. */
public final class StarTable {
  private static final String HEADINGS =
      "file,x_px,y_px,flux_counts,snr,mxx_px2,mxy_px2,myy_px2,mxx_error_px2,mxy_error_px2,"
          + "myy_error_px2,fwhm_major_px,fwhm_minor_px,skew_x_px,skew_y_px,wing_ratio,"
          + "peak_of_white\r\n";

  private StarTable() {}

  /** Writes the table; leaves the stream open. */
  public static void write(NightBook book, OutputStream out) throws IOException {
    GZIPOutputStream packed = new GZIPOutputStream(out);
    Writer rows = new OutputStreamWriter(packed, StandardCharsets.UTF_8);
    rows.write(HEADINGS);
    for (NightFrame frame : book.frames()) {
      if (frame.measurement().isPresent()) {
        String file = '"' + FramesCsv.inert(frame.file()).replace("\"", "\"\"") + '"';
        for (Star star : frame.measurement().get().field().stars()) {
          rows.write(file + "," + row(star) + "\r\n");
        }
      }
    }
    rows.flush();
    packed.finish();
  }

  private static String row(Star star) {
    return DoubleStream.of(
            star.xPx(),
            star.yPx(),
            star.fluxCounts(),
            star.snr(),
            star.moments().xxPx2(),
            star.moments().xyPx2(),
            star.moments().yyPx2(),
            star.xxErrorPx2(),
            star.xyErrorPx2(),
            star.yyErrorPx2(),
            star.fwhmMajorPx(),
            star.fwhmMinorPx(),
            star.skewXPx(),
            star.skewYPx(),
            star.wingRatio(),
            star.peakFraction())
        .mapToObj(value -> Rounded.of(value).map(BigDecimal::toPlainString).orElse(""))
        .collect(Collectors.joining(","));
  }
}
