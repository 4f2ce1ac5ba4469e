package rondure.report.layout;

import com.openhtmltopdf.outputdevice.helper.BaseRendererBuilder.FontStyle;
import com.openhtmltopdf.pdfboxout.PDFontSupplier;
import com.openhtmltopdf.pdfboxout.PdfBoxRenderer;
import com.openhtmltopdf.pdfboxout.PdfRendererBuilder;
import com.openhtmltopdf.pdfboxout.PdfRendererBuilder.PdfAConformance;
import java.awt.color.ColorSpace;
import java.awt.color.ICC_Profile;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import org.apache.fontbox.ttf.TTFParser;
import org.apache.fontbox.ttf.TrueTypeFont;
import org.apache.pdfbox.io.MemoryUsageSetting;
import org.apache.pdfbox.io.RandomAccessReadBuffer;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.pdmodel.font.PDType0Font;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;
import rondure.base.WorkFolder;
import rondure.report.picture.ReportFonts;

/** Lays a filled page out as a tagged PDF (PDF/UA-1 and PDF/A-2a). */
public final class PdfLayout {
  private static final long BYTES_IN_MEMORY = 64L << 20;

  private PdfLayout() {}

  /**
   * Writes the PDF.
   *
   * @param page the filled page
   * @param folder where style sheets come from
   * @param pictures what the page may show
   * @param facts what the PDF says about itself
   * @param out where the PDF goes; stays open
   * @throws TemplateProblem when the page is not well formed or asks for what it may not have
   */
  public static void write(
      FilledPage page,
      TemplateFolder folder,
      Pictures pictures,
      DocumentFacts facts,
      OutputStream out)
      throws IOException {
    Silence.keep();
    Document source = Xhtml.document(page.file(), page.xhtml());
    Glyphs.clean(source);
    checkPictures(page.file(), source, pictures);
    PageResources resources = new PageResources(folder, pictures);
    MemoryUsageSetting memory =
        MemoryUsageSetting.setupMixed(BYTES_IN_MEMORY).setTempDir(WorkFolder.ofProgram().toFile());
    PDDocument document = new PDDocument(memory.streamCache);
    PdfRendererBuilder builder = new PdfRendererBuilder();
    builder.usePDDocument(document);
    builder.withW3cDocument(source, "template:" + page.file());
    builder.usePdfUaAccessibility(true);
    builder.usePdfAConformance(PdfAConformance.PDFA_2_A);
    builder.useColorProfile(ICC_Profile.getInstance(ColorSpace.CS_sRGB).getData());
    builder.withProducer(facts.producer());
    builder.useObjectDrawerFactory(pictures);
    builder.useUnicodeLineBreaker(new LineBreaks());
    addFonts(builder, document);
    resources.guard(builder);
    StyleFaults faults = new StyleFaults(page.file());
    builder.withDiagnosticConsumer(faults);
    try (document;
        PdfBoxRenderer renderer = builder.buildPdfRenderer()) {
      renderer.createPDFWithoutClosing();
      resources.checkNothingRefused();
      faults.checkNone();
      NoteFields.add(renderer, document);
      facts.apply(document, page.xhtml().hashCode());
      document.save(out);
    }
  }

  /**
   * A page ready to be laid out.
   *
   * @param file name of the template it came from
   * @param xhtml its text
   */
  public record FilledPage(String file, String xhtml) {}

  private static void addFonts(PdfRendererBuilder builder, PDDocument document) throws IOException {
    for (ReportFonts.Face face : ReportFonts.Face.values()) {
      builder.useFont(
          new PDFontSupplier(embedded(face, document)),
          face.family(),
          face.bold() ? 700 : 400,
          face.italic() ? FontStyle.ITALIC : FontStyle.NORMAL,
          true);
    }
  }

  /**
   * The font without substitution of glyphs: a letter is drawn as lines are measured, and looking
   * for what to substitute would take a third of the time of writing.
   */
  private static PDFont embedded(ReportFonts.Face face, PDDocument document) throws IOException {
    TrueTypeFont font;
    try (InputStream stream = face.open()) {
      font = new TTFParser().parse(new RandomAccessReadBuffer(stream));
    }
    font.setEnableGsub(false);
    return PDType0Font.load(document, font, true);
  }

  private static void checkPictures(String file, Document source, Pictures pictures)
      throws TemplateProblem {
    NodeList objects = source.getElementsByTagName("object");
    for (int i = 0; i < objects.getLength(); i++) {
      Element object = (Element) objects.item(i);
      if (!pictures.isReplacedObject(object) || !pictures.hasDrawing(object.getAttribute("data"))) {
        throw new TemplateProblem(
            file,
            0,
            "found an <object> with data \""
                + object.getAttribute("data")
                + "\"; expected type \""
                + Pictures.TYPE
                + "\" and the name of a picture of this report.");
      }
    }
  }
}
