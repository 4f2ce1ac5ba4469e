package rondure.report;

import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSBase;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.cos.COSNumber;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDResources;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDStructureElement;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDStructureNode;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.pdmodel.graphics.PDXObject;
import org.apache.pdfbox.pdmodel.graphics.form.PDFormXObject;
import org.apache.pdfbox.pdmodel.graphics.image.PDImageXObject;
import org.apache.pdfbox.rendering.PDFRenderer;
import org.apache.pdfbox.text.PDFTextStripper;
import rondure.night.NightBook;

/** A written report, opened again to be looked into. */
final class PdfPages implements AutoCloseable {
  private final byte[] bytes;
  private final PDDocument document;

  /**
   * A picture as the tags describe it.
   *
   * @param alt its spoken description
   * @param page counted from 0
   * @param box left, bottom, right, top in points
   */
  record Figure(String alt, int page, List<Float> box) {}

  private PdfPages(byte[] bytes) throws IOException {
    this.bytes = bytes;
    this.document = Loader.loadPDF(bytes);
  }

  static PdfPages of(NightBook book, ReportSettings settings) throws IOException {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    PdfReport.write(book, settings, out);
    return new PdfPages(out.toByteArray());
  }

  static PdfPages of(NightBook book) throws IOException {
    return of(book, ReportSettings.defaults("0.1.0", List.of()));
  }

  byte[] bytes() {
    return bytes;
  }

  PDDocument document() {
    return document;
  }

  /** All text in reading order, white space of any length as one space. */
  String text() throws IOException {
    return new PDFTextStripper().getText(document).replaceAll("\\s+", " ");
  }

  /** The text without any white space, for names that were broken over lines. */
  String joinedText() throws IOException {
    return text().replace(" ", "");
  }

  Set<PDFont> fonts() throws IOException {
    Set<PDFont> fonts = Collections.newSetFromMap(new IdentityHashMap<>());
    for (PDResources resources : allResources()) {
      for (COSName name : resources.getFontNames()) {
        fonts.add(resources.getFont(name));
      }
    }
    return fonts;
  }

  /** Distinct raster images anywhere on the pages. */
  Set<COSBase> images() throws IOException {
    Set<COSBase> images = Collections.newSetFromMap(new IdentityHashMap<>());
    for (PDResources resources : allResources()) {
      for (COSName name : resources.getXObjectNames()) {
        PDXObject object = resources.getXObject(name);
        if (object instanceof PDImageXObject) {
          images.add(object.getCOSObject());
        }
      }
    }
    return images;
  }

  private List<PDResources> allResources() throws IOException {
    List<PDResources> found = new ArrayList<>();
    for (PDPage page : document.getPages()) {
      collect(page.getResources(), found, 0);
    }
    return found;
  }

  private static void collect(PDResources resources, List<PDResources> found, int depth)
      throws IOException {
    if (resources == null || depth > 8) {
      return;
    }
    found.add(resources);
    for (COSName name : resources.getXObjectNames()) {
      if (resources.getXObject(name) instanceof PDFormXObject form) {
        collect(form.getResources(), found, depth + 1);
      }
    }
  }

  /** Every tagged picture with its place. */
  List<Figure> figures() {
    Map<COSDictionary, Integer> pages = new HashMap<>();
    int number = 0;
    for (PDPage page : document.getPages()) {
      pages.put(page.getCOSObject(), number++);
    }
    List<Figure> figures = new ArrayList<>();
    collectFigures(document.getDocumentCatalog().getStructureTreeRoot(), pages, figures);
    return figures;
  }

  private static void collectFigures(
      PDStructureNode node, Map<COSDictionary, Integer> pages, List<Figure> figures) {
    for (Object kid : node.getKids()) {
      if (!(kid instanceof PDStructureElement element)) {
        continue;
      }
      if (element.getStructureType().equals("Figure")) {
        COSDictionary attributes =
            (COSDictionary) element.getCOSObject().getDictionaryObject(COSName.A);
        COSArray box = attributes.getCOSArray(COSName.BBOX);
        List<Float> corners = new ArrayList<>();
        box.forEach(value -> corners.add(((COSNumber) value).floatValue()));
        figures.add(
            new Figure(
                String.valueOf(element.getAlternateDescription()),
                pages.get(element.getPage().getCOSObject()),
                corners));
      }
      collectFigures(element, pages, figures);
    }
  }

  /** Share of the pixels inside the figure that are not paper. */
  double ink(Figure figure, BufferedImage page, float dotsPerPoint) {
    List<Float> box = figure.box();
    int left = Math.max(0, Math.round(box.get(0) * dotsPerPoint));
    int right = Math.min(page.getWidth(), Math.round(box.get(2) * dotsPerPoint));
    int top = Math.max(0, page.getHeight() - Math.round(box.get(3) * dotsPerPoint));
    int bottom =
        Math.min(page.getHeight(), page.getHeight() - Math.round(box.get(1) * dotsPerPoint));
    int inked = 0;
    int all = 0;
    for (int y = top; y < bottom; y++) {
      for (int x = left; x < right; x++) {
        int grey = page.getRGB(x, y) & 0xFF;
        inked += grey < 235 ? 1 : 0;
        all++;
      }
    }
    return all == 0 ? 0 : (double) inked / all;
  }

  BufferedImage rendered(int page, float dotsPerPoint) throws IOException {
    return new PDFRenderer(document).renderImage(page, dotsPerPoint);
  }

  @Override
  public void close() throws IOException {
    document.close();
  }
}
