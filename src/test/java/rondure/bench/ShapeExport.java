package rondure.bench;

import java.io.BufferedOutputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import rondure.base.FrameProblem;
import rondure.base.PixelPlane;
import rondure.intake.DecodedFrame;
import rondure.intake.FactsReader;
import rondure.intake.FrameDecoder;
import rondure.intake.Linearity;
import rondure.intake.ShotFacts;
import rondure.stars.PixelContext;
import rondure.stars.Star;
import rondure.stars.StarField;
import rondure.stars.StarMeter;
import rondure.stars.StarSettings;

/**
 * Measures one picture and writes what another library needs to measure it again: {@code
 * NAME.stars.csv} and the decoded plane as {@code NAME.plane.fits} (32-bit floats, NaN where there
 * is no value). Arguments: picture, folder to write into. See src/test/python/compare_shapes.py.
 */
public final class ShapeExport {
  private static final int FITS_BLOCK = 2880;

  private ShapeExport() {}

  /** Measures and writes; arguments: picture, folder. */
  public static void main(String[] arguments) throws IOException, FrameProblem {
    Path picture = Path.of(arguments[0]);
    Path folder = Files.createDirectories(Path.of(arguments[1]));
    DecodedFrame frame = decode(picture);
    String name = picture.getFileName().toString();
    writeStars(measure(frame), folder.resolve(name + ".stars.csv"));
    writePlane(frame.plane(), folder.resolve(name + ".plane.fits"));
  }

  /** The stars of one picture. */
  static StarField measure(Path picture) throws IOException, FrameProblem {
    return measure(decode(picture));
  }

  private static DecodedFrame decode(Path picture) throws IOException, FrameProblem {
    ShotFacts facts = FactsReader.read(picture);
    return FrameDecoder.decode(picture, facts.format(), facts.orientation());
  }

  /** The stars of one plane. */
  static StarField measure(DecodedFrame frame) {
    PixelContext context =
        new PixelContext(
            frame.whiteLevelCounts(),
            frame.codeStepCounts(),
            frame.linearity() == Linearity.DEVELOPED);
    return StarMeter.measure(frame.plane(), context, StarSettings.defaults());
  }

  private static void writeStars(StarField field, Path file) throws IOException {
    try (PrintWriter out = new PrintWriter(Files.newBufferedWriter(file))) {
      out.println("x,y,flux,snr,mxx,mxy,myy,fwhm_major,fwhm_minor");
      for (Star star : field.stars()) {
        out.printf(
            Locale.ROOT,
            "%.4f,%.4f,%.6g,%.3f,%.5f,%.5f,%.5f,%.4f,%.4f%n",
            star.xPx(),
            star.yPx(),
            star.fluxCounts(),
            star.snr(),
            star.moments().xxPx2(),
            star.moments().xyPx2(),
            star.moments().yyPx2(),
            star.fwhmMajorPx(),
            star.fwhmMinorPx());
      }
      out.println("# refused " + field.refused());
    }
  }

  private static void writePlane(PixelPlane plane, Path file) throws IOException {
    String header =
        card("SIMPLE", "T")
            + card("BITPIX", "-32")
            + card("NAXIS", "2")
            + card("NAXIS1", "" + plane.widthPx())
            + card("NAXIS2", "" + plane.heightPx())
            + String.format("%-80s", "END");
    try (DataOutputStream out =
        new DataOutputStream(new BufferedOutputStream(Files.newOutputStream(file)))) {
      out.write(padded(header, ' '));
      for (float sample : plane.samples()) {
        out.writeFloat(sample);
      }
      long bytes = 4L * plane.samples().length;
      out.write(new byte[(int) ((FITS_BLOCK - bytes % FITS_BLOCK) % FITS_BLOCK)]);
    }
  }

  private static String card(String key, String value) {
    return String.format("%-80s", String.format("%-8s= %20s", key, value));
  }

  private static byte[] padded(String header, char with) {
    int length = (header.length() + FITS_BLOCK - 1) / FITS_BLOCK * FITS_BLOCK;
    String filled = header + String.valueOf(with).repeat(length - header.length());
    return filled.getBytes(StandardCharsets.US_ASCII);
  }
}
