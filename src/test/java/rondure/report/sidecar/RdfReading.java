package rondure.report.sidecar;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import javax.xml.parsers.DocumentBuilderFactory;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.Node;

/**
 * Reads a sidecar with the Java library's XML parser alone and holds it to the XMP Specification,
 * Part 1 (ISO 16684-1:2012; sections quoted from memory): section 7.4, one rdf:RDF whose
 * rdf:Description elements share one rdf:about; section 7.5, a simple property is an element or an
 * attribute; 7.7, an array is one rdf:Bag, rdf:Seq or rdf:Alt of rdf:li; section 8.3, dc:subject is
 * an unordered array of text; section 8.4, xmp:Rating is -1 or from 0 to 5.
 */
final class RdfReading {
  static final String RDF = "http://www.w3.org/1999/02/22-rdf-syntax-ns#";
  static final String XMP = "http://ns.adobe.com/xap/1.0/";
  static final String DC = "http://purl.org/dc/elements/1.1/";

  private final List<Element> descriptions = new ArrayList<>();

  private RdfReading(Document document) {
    Element root = document.getDocumentElement();
    assertEquals("adobe:ns:meta/", root.getNamespaceURI());
    assertEquals("xmpmeta", root.getLocalName());
    List<Element> inside = children(root);
    assertEquals(1, inside.size());
    assertEquals(RDF + "RDF", name(inside.get(0)));
    for (Element description : children(inside.get(0))) {
      assertEquals(RDF + "Description", name(description));
      assertTrue(description.hasAttributeNS(RDF, "about"), "rdf:about is missing");
      assertEquals("", description.getAttributeNS(RDF, "about"));
      descriptions.add(description);
    }
  }

  static RdfReading of(Path sidecar) throws Exception {
    return of(Files.readString(sidecar));
  }

  static RdfReading of(String text) throws Exception {
    assertTrue(text.startsWith("<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n<x:xmpmeta"), text);
    DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
    factory.setNamespaceAware(true);
    factory.setFeature("http://apache.org/xml/features/disallow-doctype-decl", true);
    byte[] bytes = text.getBytes(StandardCharsets.UTF_8);
    return new RdfReading(factory.newDocumentBuilder().parse(new ByteArrayInputStream(bytes)));
  }

  /** The rating, held to the range that the specification gives. */
  Optional<Double> rating() {
    Optional<Double> rating = text(XMP, "Rating").map(Double::parseDouble);
    rating.ifPresent(value -> assertTrue(value == -1 || value >= 0 && value <= 5, "" + value));
    return rating;
  }

  /** The keywords; there may be none, but then no empty array either. */
  List<String> keywords() {
    List<Element> subjects = elements(DC, "subject");
    assertTrue(subjects.size() <= 1, "dc:subject stands more than once");
    if (subjects.isEmpty()) {
      return List.of();
    }
    List<Element> array = children(subjects.get(0));
    assertEquals(1, array.size());
    assertEquals(RDF + "Bag", name(array.get(0)));
    List<String> items = new ArrayList<>();
    for (Element item : children(array.get(0))) {
      assertEquals(RDF + "li", name(item));
      assertEquals(List.of(), children(item));
      items.add(item.getTextContent());
    }
    return items;
  }

  /** A simple property, as an attribute or an element. */
  Optional<String> text(String namespace, String name) {
    List<String> values = new ArrayList<>();
    for (Element description : descriptions) {
      if (description.hasAttributeNS(namespace, name)) {
        values.add(description.getAttributeNS(namespace, name));
      }
    }
    elements(namespace, name).forEach(element -> values.add(element.getTextContent()));
    assertTrue(values.size() <= 1, name + " stands more than once");
    return values.stream().findFirst();
  }

  List<Element> elements(String namespace, String name) {
    return descriptions.stream()
        .flatMap(description -> children(description).stream())
        .filter(element -> name(element).equals(namespace + name))
        .toList();
  }

  static List<Element> children(Element parent) {
    List<Element> children = new ArrayList<>();
    for (Node at = parent.getFirstChild(); at != null; at = at.getNextSibling()) {
      if (at instanceof Element element) {
        children.add(element);
      }
    }
    return children;
  }

  private static String name(Element element) {
    return element.getNamespaceURI() + element.getLocalName();
  }
}
