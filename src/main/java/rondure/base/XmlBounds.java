package rondure.base;

import java.io.IOException;
import javax.xml.XMLConstants;
import javax.xml.parsers.ParserConfigurationException;
import javax.xml.parsers.SAXParserFactory;
import org.xml.sax.Attributes;
import org.xml.sax.InputSource;
import org.xml.sax.SAXException;
import org.xml.sax.SAXParseException;
import org.xml.sax.helpers.DefaultHandler;

/**
 * Looks at XMP's XML before anything builds a tree of it: no document type, so that no entity is
 * ever looked up or unfolded, and no depth or number of elements that only an attack has.
 */
public class XmlBounds extends DefaultHandler {
  public static final int DEEPEST = 100;

  /** Elements and attributes in all; brush strokes come in lists of thousands. */
  public static final int MOST_PARTS = 200_000;

  /** Reading compares each part with those beside it: this is a list of some 20,000 items. */
  public static final long MOST_COMPARISONS = 200_000_000;

  private static final String NO_DOCTYPE = "http://apache.org/xml/features/disallow-doctype-decl";

  private final int[] beside = new int[DEEPEST + 1];
  private int depth;
  private int parts;
  private long comparisons;

  protected XmlBounds() {}

  /** The XML has more depth or parts than is read. */
  public static final class Exceeded extends SAXException {
    private static final long serialVersionUID = 1L;

    public Exceeded() {
      super("its XML is deeper or longer than any sidecar's");
    }
  }

  /**
   * Reads a document to its end.
   *
   * @throws Exceeded when it is out of bounds
   * @throws SAXException when it is no XML, or has a document type
   */
  public static void check(InputSource document) throws SAXException, IOException {
    new XmlBounds().read(document);
  }

  /** As {@link #check}, with this handler looking on. */
  protected final void read(InputSource document) throws SAXException, IOException {
    try {
      SAXParserFactory factory = SAXParserFactory.newInstance();
      factory.setNamespaceAware(true);
      factory.setFeature(XMLConstants.FEATURE_SECURE_PROCESSING, true);
      factory.setFeature(NO_DOCTYPE, true);
      factory.newSAXParser().parse(document, this);
    } catch (ParserConfigurationException impossible) {
      throw new IllegalStateException(impossible);
    }
  }

  /** Elements that are open, the present one included. */
  protected final int depth() {
    return depth;
  }

  @Override
  public void startElement(String uri, String name, String spelled, Attributes attributes)
      throws SAXException {
    depth++;
    if (depth > DEEPEST) {
      throw new Exceeded();
    }
    int siblings = ++beside[depth - 1];
    int count = attributes.getLength();
    beside[depth] = count;
    parts += 1 + count;
    comparisons += siblings + (long) count * count / 2;
    if (parts > MOST_PARTS || comparisons > MOST_COMPARISONS) {
      throw new Exceeded();
    }
  }

  @Override
  public void endElement(String uri, String name, String spelled) {
    depth--;
  }

  /** Trouble is thrown, never printed. */
  @Override
  public final void fatalError(SAXParseException trouble) throws SAXException {
    throw trouble;
  }
}
