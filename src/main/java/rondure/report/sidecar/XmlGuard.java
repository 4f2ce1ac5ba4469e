package rondure.report.sidecar;

import java.io.IOException;
import java.io.StringReader;
import org.xml.sax.Attributes;
import org.xml.sax.InputSource;
import org.xml.sax.SAXException;
import rondure.base.XmlBounds;

/**
 * Looks at a sidecar's XML before anything builds a tree of it: within {@link XmlBounds}, one RDF
 * in an optional wrapper and nothing beside it.
 */
final class XmlGuard extends XmlBounds {
  /** Properties of the picture itself. */
  static final int MOST_PROPERTIES = 5_000;

  private static final String RDF = "http://www.w3.org/1999/02/22-rdf-syntax-ns#";
  private static final String WRAPPER = "adobe:ns:meta/";

  private int properties;
  private int rdfDepth;
  private boolean rdfSeen;

  private XmlGuard() {}

  /**
   * @throws SidecarProblem when the text is no XMP that can be merged without loss or danger
   */
  static void check(String text) throws SidecarProblem {
    if (text.isBlank()) {
      throw new SidecarProblem("it is empty");
    }
    XmlGuard guard = new XmlGuard();
    try {
      guard.read(new InputSource(new StringReader(text)));
    } catch (Exceeded | Refused refused) {
      throw new SidecarProblem(refused.getMessage(), refused);
    } catch (SAXException | IOException broken) {
      boolean typed = text.contains("<!DOCTYPE");
      throw new SidecarProblem(
          typed
              ? "it declares a document type, which XMP never does"
              : "it is no XML that can be read",
          broken);
    }
    if (!guard.rdfSeen) {
      throw new SidecarProblem("it is no XMP");
    }
  }

  @Override
  public void startElement(String uri, String name, String spelled, Attributes attributes)
      throws SAXException {
    super.startElement(uri, name, spelled, attributes);
    countProperties(attributes.getLength());
    if (rdfDepth > 0) {
      return;
    }
    if (uri.equals(RDF) && name.equals("RDF") && !rdfSeen) {
      rdfDepth = depth();
      rdfSeen = true;
    } else if (depth() > 1 || !uri.equals(WRAPPER)) {
      throw new Refused("it is no XMP, or holds more than XMP");
    }
  }

  private void countProperties(int attributes) throws Exceeded {
    if (rdfDepth > 0 && depth() == rdfDepth + 1) {
      properties += attributes;
    } else if (rdfDepth > 0 && depth() == rdfDepth + 2) {
      properties++;
    }
    if (properties > MOST_PROPERTIES) {
      throw new Exceeded();
    }
  }

  @Override
  public void endElement(String uri, String name, String spelled) {
    if (depth() == rdfDepth) {
      rdfDepth = 0;
    }
    super.endElement(uri, name, spelled);
  }

  private static final class Refused extends SAXException {
    private static final long serialVersionUID = 1L;

    Refused(String reason) {
      super(reason);
    }
  }
}
