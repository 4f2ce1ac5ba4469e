package rondure.report.sidecar;

import com.adobe.internal.xmp.XMPConst;
import com.adobe.internal.xmp.XMPException;
import com.adobe.internal.xmp.XMPMeta;
import com.adobe.internal.xmp.properties.XMPPropertyInfo;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Iterator;
import java.util.List;

/** All that a sidecar holds beside our marks, so that before and after can be compared. */
final class OtherProperties {
  private OtherProperties() {}

  /** A line for every property, element and qualifier that is not ours, and people's keywords. */
  static List<String> of(XMPMeta xmp) throws XMPException {
    List<String> lines = new ArrayList<>();
    Iterator<?> all = xmp.iterator();
    String root = "";
    String schema = "";
    while (all.hasNext()) {
      XMPPropertyInfo info = (XMPPropertyInfo) all.next();
      if (info.getOptions().isSchemaNode()) {
        schema = info.getNamespace();
        continue;
      }
      root = isTop(info.getPath()) ? info.getPath() : root;
      if (!XmpMerge.isOurBusiness(schema, root)) {
        lines.add(line(schema, info));
      }
    }
    Collections.sort(lines);
    KeywordMerge.items(xmp).stream()
        .filter(keyword -> !Keywords.isOurs(keyword))
        .forEach(keyword -> lines.add(XMPConst.NS_DC + " keyword " + keyword));
    return lines;
  }

  private static boolean isTop(String path) {
    return path.indexOf('/') < 0 && path.indexOf('[') < 0;
  }

  private static String line(String schema, XMPPropertyInfo info) {
    return String.join(
        "\u0000",
        schema,
        info.getPath(),
        String.valueOf(info.getNamespace()),
        String.valueOf(info.getValue()),
        info.getOptions().getOptionsString());
  }
}
