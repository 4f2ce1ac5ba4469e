package rondure.report.sidecar;

import com.adobe.internal.xmp.XMPConst;
import com.adobe.internal.xmp.XMPException;
import com.adobe.internal.xmp.XMPMeta;
import com.adobe.internal.xmp.XMPMetaFactory;
import com.adobe.internal.xmp.options.ParseOptions;
import com.adobe.internal.xmp.options.SerializeOptions;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Merges a frame's marks into a sidecar and leaves everything else in it as it was.
 *
 * <p>The text follows "External Storage of Metadata" of the XMP Specification (September 2005): a
 * whole XML document with its declaration. Beside {@code xmp:Rating} stands our own record of it,
 * {@code rondure:Rating}, by which the next run tells a rating of ours from one of a person.
 */
final class XmpMerge {
  /** Where our own record stands; a name that nobody else has, and no address. */
  static final String OURS = "urn:uuid:0b6d6d2e-5f0a-4c1c-9d57-3a2f8c1e7b64#";

  private static final String OUR_PREFIX = "rondure";
  private static final String DECLARATION = "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n";

  /** Which version of the library wrote it; it depends on how the program was packed. */
  private static final String TOOLKIT = " x:xmptk=\"[^\"]*\"";

  private XmpMerge() {}

  /**
   * The sidecar with the marks.
   *
   * @param existing the text that is there
   * @param marks what to say of the frame; empty takes back what we said of it
   * @param replaceRatings whether somebody else's rating gives way to ours
   * @throws SidecarProblem when the text cannot be merged without loss
   */
  static Merged merge(Optional<String> existing, Optional<FrameMarks> marks, boolean replaceRatings)
      throws SidecarProblem {
    if (existing.isPresent()) {
      XmlGuard.check(existing.get());
    }
    synchronized (XmpMerge.class) {
      try {
        return merged(existing, marks, replaceRatings);
      } catch (XMPException e) {
        throw new SidecarProblem("its XMP cannot be understood", e);
      }
    }
  }

  private static Merged merged(
      Optional<String> existing, Optional<FrameMarks> marks, boolean replaceRatings)
      throws XMPException, SidecarProblem {
    XMPMeta xmp = existing.isPresent() ? parsed(existing.get()) : created();
    List<String> others = OtherProperties.of(xmp);
    List<String> changes = new ArrayList<>();
    List<String> remarks = new ArrayList<>();
    new RatingMerge(xmp, changes, remarks).merge(marks.map(FrameMarks::rating), replaceRatings);
    new KeywordMerge(xmp, changes).merge(marks.map(FrameMarks::keywords).orElse(List.of()));
    String text = DECLARATION + serialised(xmp);
    requireSame(others, text);
    return new Merged(text, changes, remarks);
  }

  private static XMPMeta created() throws XMPException {
    forget();
    return XMPMetaFactory.create();
  }

  private static XMPMeta parsed(String text) throws XMPException {
    forget();
    return XMPMetaFactory.parseFromString(
        text, new ParseOptions().setDisallowDoctype(true).setOmitNormalization(true));
  }

  /** The library keeps every prefix it ever saw; files must not depend on those read before. */
  private static void forget() throws XMPException {
    XMPMetaFactory.reset();
    XMPMetaFactory.getSchemaRegistry().registerNamespace(OURS, OUR_PREFIX);
  }

  /** Sorted, so that reading and writing it once more gives the same text. */
  private static String serialised(XMPMeta xmp) throws XMPException {
    SerializeOptions options =
        new SerializeOptions()
            .setOmitPacketWrapper(true)
            .setSort(true)
            .setIndent("  ")
            .setNewline("\n");
    String text = XMPMetaFactory.serializeToString(xmp, options).stripTrailing() + "\n";
    return text.replaceFirst(TOOLKIT, "");
  }

  /** Reads our own text again: what is not ours has to be what it was. */
  private static void requireSame(List<String> others, String text)
      throws XMPException, SidecarProblem {
    XmlGuard.check(text);
    if (!OtherProperties.of(parsed(text)).equals(others)) {
      throw new SidecarProblem("something in it would not have been kept");
    }
  }

  /** A property's text; empty when it is not there. */
  static Optional<String> text(XMPMeta xmp, String namespace, String name) throws XMPException {
    return xmp.doesPropertyExist(namespace, name)
        ? Optional.ofNullable(xmp.getPropertyString(namespace, name))
        : Optional.empty();
  }

  /** The name of the rating in the XMP basic namespace. */
  static final String RATING = "Rating";

  /** The name of the keywords in the Dublin Core namespace. */
  static final String SUBJECT = "subject";

  /** True for a property that the merge may change. */
  static boolean isOurBusiness(String namespace, String path) {
    String name = path.substring(path.indexOf(':') + 1);
    return namespace.equals(OURS)
        || namespace.equals(XMPConst.NS_XMP) && name.equals(RATING)
        || namespace.equals(XMPConst.NS_DC) && name.equals(SUBJECT);
  }
}
