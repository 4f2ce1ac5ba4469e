package rondure.report.sidecar;

import java.io.IOException;
import java.io.StringReader;
import javax.xml.XMLConstants;
import javax.xml.parsers.ParserConfigurationException;
import javax.xml.parsers.SAXParserFactory;
import org.xml.sax.Attributes;
import org.xml.sax.InputSource;
import org.xml.sax.SAXException;
import org.xml.sax.SAXParseException;
import org.xml.sax.helpers.DefaultHandler;

/**
 * Looks at a sidecar's XML before anything builds a tree of it: one RDF in an optional wrapper and
 * nothing beside it, no document type, no depth or number of elements that only an attack has.
 */
final class XmlGuard extends DefaultHandler {
  static final int DEEPEST = 100;

  /** Elements and attributes in all; brush strokes come in lists of thousands. */
  static final int MOST_PARTS = 200_000;

  /** Properties of the picture itself. */
  static final int MOST_PROPERTIES = 5_000;

  /** Reading compares each part with those beside it: this is a list of some 20,000 items. */
  static final long MOST_COMPARISONS = 200_000_000;

  private static final String RDF = "http://www.w3.org/1999/02/22-rdf-syntax-ns#";
  private static final String WRAPPER = "adobe:ns:meta/";
  private static final String NO_DOCTYPE = "http://apache.org/xml/features/disallow-doctype-decl";

  private int depth;
  private int parts;
  private int properties;
  private long comparisons;
  private final int[] beside = new int[DEEPEST + 1];
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
      SAXParserFactory factory = SAXParserFactory.newInstance();
      factory.setNamespaceAware(true);
      factory.setFeature(XMLConstants.FEATURE_SECURE_PROCESSING, true);
      factory.setFeature(NO_DOCTYPE, true);
      factory.newSAXParser().parse(new InputSource(new StringReader(text)), guard);
    } catch (Refused refused) {
      throw new SidecarProblem(refused.getMessage(), refused);
    } catch (SAXException | IOException broken) {
      boolean typed = text.contains("<!DOCTYPE");
      throw new SidecarProblem(
          typed
              ? "it declares a document type, which XMP never does"
              : "it is no XML that can be read",
          broken);
    } catch (ParserConfigurationException impossible) {
      throw new IllegalStateException(impossible);
    }
    if (!guard.rdfSeen) {
      throw new SidecarProblem("it is no XMP");
    }
  }

  @Override
  public void startElement(String uri, String name, String spelled, Attributes attributes)
      throws SAXException {
    depth++;
    if (depth > DEEPEST || isTooMuch(attributes.getLength())) {
      throw new Refused("its XML is deeper or longer than any sidecar's");
    }
    if (rdfDepth > 0) {
      return;
    }
    if (uri.equals(RDF) && name.equals("RDF") && !rdfSeen) {
      rdfDepth = depth;
      rdfSeen = true;
    } else if (depth > 1 || !uri.equals(WRAPPER)) {
      throw new Refused("it is no XMP, or holds more than XMP");
    }
  }

  /** Counts an element that begins. */
  private boolean isTooMuch(int attributes) {
    int siblings = ++beside[depth - 1];
    beside[depth] = attributes;
    parts += 1 + attributes;
    comparisons += siblings + (long) attributes * attributes / 2;
    if (rdfDepth > 0 && depth == rdfDepth + 1) {
      properties += attributes;
    } else if (rdfDepth > 0 && depth == rdfDepth + 2) {
      properties++;
    }
    return parts > MOST_PARTS || properties > MOST_PROPERTIES || comparisons > MOST_COMPARISONS;
  }

  @Override
  public void endElement(String uri, String name, String spelled) {
    if (depth == rdfDepth) {
      rdfDepth = 0;
    }
    depth--;
  }

  /** Trouble is thrown, never printed. */
  @Override
  public void fatalError(SAXParseException trouble) throws SAXException {
    throw trouble;
  }

  private static final class Refused extends SAXException {
    private static final long serialVersionUID = 1L;

    Refused(String reason) {
      super(reason);
    }
  }
}
