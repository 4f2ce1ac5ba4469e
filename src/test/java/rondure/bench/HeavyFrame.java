package rondure.bench;

import java.io.BufferedOutputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.net.URISyntaxException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import rondure.sim.NightSimulator;
import rondure.sim.OutputFormat;
import rondure.sim.Recipe;
import rondure.sim.SimFrame;

/**
 * One simulated frame of 24 megapixels, written twice with the same counts: as an uncompressed
 * Bayer DNG of grey light, {@code heavy.dng}, and as 16-bit FITS, {@code heavy.fits}. So a library
 * that knows no mosaic can measure the very pixels of the DNG.
 */
public final class HeavyFrame {
  private static final int FITS_BLOCK = 2880;
  private static final int FITS_ZERO = 32768;

  private HeavyFrame() {}

  /** Renders both files; argument: the folder. */
  public static void main(String[] arguments) throws IOException {
    write(Files.createDirectories(Path.of(arguments[0])));
  }

  /** Renders both files into a folder that exists. */
  public static void write(Path folder) throws IOException {
    SimFrame frame = new NightSimulator(Recipe.read(recipe())).render(1);
    try (OutputStream out = open(folder.resolve("heavy.dng"))) {
      OutputFormat.DNG.write(frame, out);
    }
    try (DataOutputStream out = new DataOutputStream(open(folder.resolve("heavy.fits")))) {
      writeFits(frame, out);
    }
  }

  private static Path recipe() throws IOException {
    try {
      return Path.of(HeavyFrame.class.getResource("/bench/frame24.json").toURI());
    } catch (URISyntaxException e) {
      throw new IOException(e);
    }
  }

  private static OutputStream open(Path file) throws IOException {
    return new BufferedOutputStream(Files.newOutputStream(file), 1 << 16);
  }

  private static void writeFits(SimFrame frame, DataOutputStream out) throws IOException {
    String header =
        card("SIMPLE", "T")
            + card("BITPIX", "16")
            + card("NAXIS", "2")
            + card("NAXIS1", "" + frame.widthPx())
            + card("NAXIS2", "" + frame.heightPx())
            + card("BZERO", "" + FITS_ZERO)
            + card("ROWORDER", "'TOP-DOWN'")
            + String.format("%-80s", "END");
    out.write(String.format("%-" + FITS_BLOCK + "s", header).getBytes(StandardCharsets.US_ASCII));
    for (int y = 0; y < frame.heightPx(); y++) {
      for (int x = 0; x < frame.widthPx(); x++) {
        out.writeShort(frame.at(x, y) - FITS_ZERO);
      }
    }
    long bytes = 2L * frame.widthPx() * frame.heightPx();
    out.write(new byte[(int) ((FITS_BLOCK - bytes % FITS_BLOCK) % FITS_BLOCK)]);
  }

  private static String card(String key, String value) {
    return String.format("%-80s", String.format("%-8s= %20s", key, value));
  }
}
