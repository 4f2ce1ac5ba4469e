package rondure.report.layout;

import java.io.IOException;
import java.io.StringReader;
import javax.xml.XMLConstants;
import javax.xml.parsers.DocumentBuilder;
import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.parsers.ParserConfigurationException;
import org.w3c.dom.Document;
import org.xml.sax.ErrorHandler;
import org.xml.sax.InputSource;
import org.xml.sax.SAXException;
import org.xml.sax.SAXParseException;

/** Reads XHTML without document types, so without entities that could read other files. */
final class Xhtml {
  private Xhtml() {}

  /**
   * Refuses a template that is not well formed by itself.
   *
   * @param file for the message
   * @param text the template with its tags blanked
   */
  static void checkFragment(String file, String text) throws TemplateProblem {
    parse(file, "<template>" + text + "</template>");
  }

  /** The filled page as a document. */
  static Document document(String file, String text) throws TemplateProblem {
    return parse(file, text);
  }

  private static Document parse(String file, String text) throws TemplateProblem {
    try {
      DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
      factory.setFeature(XMLConstants.FEATURE_SECURE_PROCESSING, true);
      factory.setFeature("http://apache.org/xml/features/disallow-doctype-decl", true);
      DocumentBuilder builder = factory.newDocumentBuilder();
      builder.setErrorHandler(new Silent());
      return builder.parse(new InputSource(new StringReader(text)));
    } catch (SAXParseException e) {
      throw new TemplateProblem(
          file,
          e.getLineNumber(),
          e.getMessage()
              + " Expected well-formed XHTML: every element closed, attributes in quotes,"
              + " characters by number (&#160;), no DOCTYPE.");
    } catch (SAXException | IOException e) {
      throw new TemplateProblem(file, 0, "cannot be read as XHTML: " + e.getMessage());
    } catch (ParserConfigurationException e) {
      throw new IllegalStateException("the XML parser lacks a safety feature", e);
    }
  }

  /** Errors are thrown, never printed. */
  private static final class Silent implements ErrorHandler {
    @Override
    public void warning(SAXParseException e) {
      // Not a reason to stop.
    }

    @Override
    public void error(SAXParseException e) throws SAXParseException {
      throw e;
    }

    @Override
    public void fatalError(SAXParseException e) throws SAXParseException {
      throw e;
    }
  }
}
