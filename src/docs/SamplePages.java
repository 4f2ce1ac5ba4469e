import java.awt.image.BufferedImage;
import java.io.File;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import javax.imageio.ImageIO;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.rendering.ImageType;
import org.apache.pdfbox.rendering.PDFRenderer;
import org.apache.pdfbox.text.PDFTextStripper;

/**
 * Draws two pages of a report as PNG: its first, and the first that holds some words. Started by
 * sample.sh; arguments: report, folder for the pictures, words.
 */
class SamplePages {
  private static final float DOTS_PER_POINT = 1.25f;

  public static void main(String[] arguments) throws IOException {
    Path folder = Path.of(arguments[1]);
    try (PDDocument report = Loader.loadPDF(Files.readAllBytes(Path.of(arguments[0])))) {
      draw(report, 0, folder.resolve("page-glance.png").toFile());
      draw(report, pageWith(report, arguments[2]), folder.resolve("page-entry.png").toFile());
    }
  }

  private static int pageWith(PDDocument report, String words) throws IOException {
    for (int page = 1; page <= report.getNumberOfPages(); page++) {
      PDFTextStripper text = new PDFTextStripper();
      text.setStartPage(page);
      text.setEndPage(page);
      if (text.getText(report).contains(words)) {
        return page - 1;
      }
    }
    throw new IOException("No page holds the words \"" + words + "\".");
  }

  private static void draw(PDDocument report, int page, File file) throws IOException {
    BufferedImage drawn =
        new PDFRenderer(report).renderImage(page, DOTS_PER_POINT, ImageType.RGB);
    ImageIO.write(drawn, "png", file);
  }
}
