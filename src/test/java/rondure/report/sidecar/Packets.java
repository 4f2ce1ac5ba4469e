package rondure.report.sidecar;

/** Sidecars as other programs leave them. */
final class Packets {
  private Packets() {}

  /**
   * What stands in the description besides {@code attributes} and {@code elements} is namespaces.
   */
  static String of(String attributes, String elements) {
    return "<?xpacket begin='\uFEFF' id='W5M0MpCehiHzreSzNTczkc9d'?>\n"
        + "<x:xmpmeta xmlns:x='adobe:ns:meta/' x:xmptk='somebody'>\n<rdf:RDF"
        + " xmlns:rdf='http://www.w3.org/1999/02/22-rdf-syntax-ns#'>\n<rdf:Description"
        + " rdf:about='' xmlns:xap='http://ns.adobe.com/xap/1.0/'"
        + " xmlns:dc='http://purl.org/dc/elements/1.1/' xmlns:far='https://far.example/away#' "
        + attributes
        + ">\n"
        + elements
        + "\n</rdf:Description>\n</rdf:RDF>\n</x:xmpmeta>\n<?xpacket end='w'?>";
  }

  static String rated(String rating) {
    return of("xap:Rating='" + rating + "'", "");
  }

  /** A sidecar with every form a property of a foreign namespace may have. */
  static String rich() {
    return of(
        "xap:Rating='3' far:plain='a &amp; b' far:empty=''",
        """
        <dc:subject><rdf:Bag><rdf:li>hut</rdf:li><rdf:li xml:lang='de'>Milchstra\u00DFe</rdf:li>\
        <rdf:li>Rondure look closer</rdf:li><rdf:li>Rondure island</rdf:li></rdf:Bag></dc:subject>
        <dc:title><rdf:Alt><rdf:li xml:lang='x-default'>Ridge</rdf:li></rdf:Alt></dc:title>
        <far:steps><rdf:Seq><rdf:li rdf:parseType='Resource'><far:name>curve</far:name>\
        <far:points><rdf:Seq><rdf:li>0, 0</rdf:li><rdf:li>255, 255</rdf:li></rdf:Seq></far:points>\
        </rdf:li></rdf:Seq></far:steps>
        <far:settings far:depth='2'/>
        <far:page rdf:resource='https://far.example/page'/>
        <far:note>two
        lines</far:note>""");
  }
}
