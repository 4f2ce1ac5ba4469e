package rondure.report.sidecar;

import com.adobe.internal.xmp.XMPConst;
import com.adobe.internal.xmp.XMPException;
import com.adobe.internal.xmp.XMPMeta;
import com.adobe.internal.xmp.options.PropertyOptions;
import com.adobe.internal.xmp.properties.XMPProperty;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;

/**
 * Puts our keywords behind those of people in {@code dc:subject}, an unordered array of text (ISO
 * 16684-1, Dublin Core namespace), in the place of those of an earlier run.
 */
final class KeywordMerge {
  private final XMPMeta xmp;
  private final List<String> changes;

  /**
   * @param changes where to say what is new
   */
  KeywordMerge(XMPMeta xmp, List<String> changes) {
    this.xmp = xmp;
    this.changes = changes;
  }

  void merge(List<String> keywords) throws XMPException, SidecarProblem {
    List<String> ours = items(xmp).stream().filter(Keywords::isOurs).toList();
    if (ours.size() == keywords.size() && new HashSet<>(ours).equals(new HashSet<>(keywords))) {
      return;
    }
    requireBag();
    for (int i = count(xmp); i >= 1; i--) {
      if (Keywords.isOurs(item(xmp, i))) {
        xmp.deleteArrayItem(XMPConst.NS_DC, XmpMerge.SUBJECT, i);
      }
    }
    for (String keyword : keywords) {
      xmp.appendArrayItem(
          XMPConst.NS_DC, XmpMerge.SUBJECT, new PropertyOptions().setArray(true), keyword, null);
    }
    if (count(xmp) == 0) {
      xmp.deleteProperty(XMPConst.NS_DC, XmpMerge.SUBJECT);
    }
    say("new keywords ", keywords.stream().filter(word -> !ours.contains(word)).toList());
    say("no more ", ours.stream().filter(word -> !keywords.contains(word)).toList());
  }

  private void say(String what, List<String> words) {
    if (!words.isEmpty()) {
      changes.add(what + String.join(", ", words));
    }
  }

  /** Text of old files, or an ordered array, becomes the bag that it should be. */
  private void requireBag() throws XMPException, SidecarProblem {
    XMPProperty there = xmp.getProperty(XMPConst.NS_DC, XmpMerge.SUBJECT);
    if (there == null || there.getOptions().isArray() && !there.getOptions().isArrayOrdered()) {
      return;
    }
    List<String> items = items(xmp);
    if (there.getOptions().isStruct() || isQualified(there)) {
      throw new SidecarProblem("its keywords are no plain list");
    }
    xmp.deleteProperty(XMPConst.NS_DC, XmpMerge.SUBJECT);
    PropertyOptions bag = new PropertyOptions().setArray(true);
    for (String item : items) {
      xmp.appendArrayItem(XMPConst.NS_DC, XmpMerge.SUBJECT, bag, item, null);
    }
    changes.add("the list of keywords becomes an unordered one");
  }

  private boolean isQualified(XMPProperty there) throws XMPException {
    if (!there.getOptions().isArray()) {
      return there.getOptions().getHasQualifiers();
    }
    for (int i = 1; i <= count(xmp); i++) {
      PropertyOptions options = xmp.getArrayItem(XMPConst.NS_DC, XmpMerge.SUBJECT, i).getOptions();
      if (options.getHasQualifiers() || options.isCompositeProperty()) {
        return true;
      }
    }
    return false;
  }

  /** The keywords as they stand; a single text counts as one. */
  static List<String> items(XMPMeta xmp) throws XMPException {
    XMPProperty there = xmp.getProperty(XMPConst.NS_DC, XmpMerge.SUBJECT);
    if (there == null) {
      return List.of();
    }
    if (!there.getOptions().isArray()) {
      return there.getValue() == null ? List.of() : List.of(there.getValue());
    }
    List<String> items = new ArrayList<>();
    for (int i = 1; i <= count(xmp); i++) {
      items.add(item(xmp, i));
    }
    return items;
  }

  private static int count(XMPMeta xmp) throws XMPException {
    return xmp.doesPropertyExist(XMPConst.NS_DC, XmpMerge.SUBJECT)
        ? xmp.countArrayItems(XMPConst.NS_DC, XmpMerge.SUBJECT)
        : 0;
  }

  private static String item(XMPMeta xmp, int index) throws XMPException {
    String value = xmp.getArrayItem(XMPConst.NS_DC, XmpMerge.SUBJECT, index).getValue();
    return value == null ? "" : value;
  }
}
