package rondure.report.layout;

import com.openhtmltopdf.pdfboxout.PagePosition;
import com.openhtmltopdf.pdfboxout.PdfBoxAccessibilityHelper;
import com.openhtmltopdf.pdfboxout.PdfBoxRenderer;
import com.openhtmltopdf.render.Box;
import java.io.IOException;
import java.io.InputStream;
import java.util.Comparator;
import java.util.List;
import java.util.regex.Pattern;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSInteger;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDResources;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDObjectReference;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDStructureElement;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDStructureTreeRoot;
import org.apache.pdfbox.pdmodel.documentinterchange.taggedpdf.StandardStructureTypes;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.pdmodel.font.PDTrueTypeFont;
import org.apache.pdfbox.pdmodel.font.encoding.WinAnsiEncoding;
import org.apache.pdfbox.pdmodel.interactive.annotation.PDAnnotationWidget;
import org.apache.pdfbox.pdmodel.interactive.annotation.PDAppearanceDictionary;
import org.apache.pdfbox.pdmodel.interactive.annotation.PDAppearanceStream;
import org.apache.pdfbox.pdmodel.interactive.form.PDAcroForm;
import org.apache.pdfbox.pdmodel.interactive.form.PDTextField;
import rondure.report.picture.ReportFonts;

/**
 * Fields a person can write notes into: every element whose id starts with "note-" becomes one, its
 * title the field's spoken name. Tagged as Form with an object reference (ISO 14289-1, 7.18.4).
 */
final class NoteFields {
  private static final Pattern NOTE = Pattern.compile("^note-");
  private static final String FONT_NAME = "Notes";
  private final PDDocument document;
  private final PDAcroForm form;

  private NoteFields(PDDocument document) throws IOException {
    this.document = document;
    this.form = new PDAcroForm(document);
    PDResources resources = new PDResources();
    try (InputStream file = ReportFonts.Face.SANS_REGULAR.open()) {
      PDFont font = PDTrueTypeFont.load(document, file, WinAnsiEncoding.INSTANCE);
      resources.put(COSName.getPDFName(FONT_NAME), font);
    }
    form.setDefaultResources(resources);
    form.setDefaultAppearance("/" + FONT_NAME + " 9 Tf 0 g");
  }

  static void add(PdfBoxRenderer renderer, PDDocument document) throws IOException {
    List<PagePosition<Box>> places =
        renderer.findPagePositionsByID(NOTE).stream()
            .sorted(
                Comparator.comparingInt((PagePosition<Box> place) -> place.getPageNo())
                    .thenComparing(PagePosition::getId))
            .toList();
    if (places.isEmpty()) {
      return;
    }
    NoteFields fields = new NoteFields(document);
    for (PagePosition<Box> place : places) {
      fields.add(place);
    }
    document.getDocumentCatalog().setAcroForm(fields.form);
  }

  private void add(PagePosition<Box> place) throws IOException {
    PDPage page = document.getPage(place.getPageNo());
    PDTextField field = new PDTextField(form);
    field.setPartialName(place.getId());
    field.setAlternateFieldName(place.getElement().getElement().getAttribute("title"));
    field.setMultiline(true);
    field.setDefaultAppearance("/" + FONT_NAME + " 9 Tf 0 g");
    PDAnnotationWidget widget = field.getWidgets().get(0);
    widget.setRectangle(
        new PDRectangle(place.getX(), place.getY(), place.getWidth(), place.getHeight()));
    widget.setAppearance(empty(widget.getRectangle()));
    widget.setPage(page);
    widget.setPrinted(true);
    page.getAnnotations().add(widget);
    page.getCOSObject().setName(COSName.getPDFName("Tabs"), "S");
    form.getFields().add(field);
    tag(place, page, widget);
  }

  /** What an unwritten field looks like: nothing, which PDF/A wants said (ISO 19005-2, 6.3.3). */
  private PDAppearanceDictionary empty(PDRectangle place) {
    PDAppearanceStream nothing = new PDAppearanceStream(document);
    nothing.setBBox(new PDRectangle(place.getWidth(), place.getHeight()));
    nothing.setResources(new PDResources());
    PDAppearanceDictionary appearance = new PDAppearanceDictionary();
    appearance.setNormalAppearance(nothing);
    return appearance;
  }

  private void tag(PagePosition<Box> place, PDPage page, PDAnnotationWidget widget) {
    PDStructureElement element =
        PdfBoxAccessibilityHelper.getStructualElementForBox(place.getElement());
    PDStructureTreeRoot root = document.getDocumentCatalog().getStructureTreeRoot();
    if (element == null || root == null) {
      return;
    }
    element.setStructureType(StandardStructureTypes.FORM);
    element.setPage(page);
    PDObjectReference reference = new PDObjectReference();
    reference.setReferencedObject(widget);
    element.appendKid(reference);
    int key = root.getParentTreeNextKey();
    COSDictionary tree = root.getParentTree().getCOSObject();
    COSArray numbers = tree.getCOSArray(COSName.NUMS);
    numbers.add(COSInteger.get(key));
    numbers.add(element.getCOSObject());
    root.setParentTreeNextKey(key + 1);
    widget.setStructParent(key);
  }
}
