package rondure.report.sidecar;

import com.adobe.internal.xmp.XMPConst;
import com.adobe.internal.xmp.XMPException;
import com.adobe.internal.xmp.XMPMeta;
import java.util.List;
import java.util.Optional;

/**
 * Sets {@code xmp:Rating} where nobody else did. Of its values (ISO 16684-1, XMP basic namespace:
 * -1 rejected, 0 or missing unrated, up to 5) only "unrated" and our own of an earlier run give
 * way.
 */
final class RatingMerge {
  private final XMPMeta xmp;
  private final List<String> changes;
  private final List<String> remarks;

  /**
   * @param changes where to say what is new
   * @param remarks where to say what stayed
   */
  RatingMerge(XMPMeta xmp, List<String> changes, List<String> remarks) {
    this.xmp = xmp;
    this.changes = changes;
    this.remarks = remarks;
  }

  void merge(Optional<Integer> rating, boolean replace) throws XMPException {
    Optional<String> there = XmpMerge.text(xmp, XMPConst.NS_XMP, XmpMerge.RATING);
    Optional<String> record = XmpMerge.text(xmp, XmpMerge.OURS, XmpMerge.RATING);
    boolean ours = there.isPresent() && record.isPresent() && same(there.get(), record.get());
    boolean free = there.isEmpty() || same(there.get(), "0") || there.get().isBlank();
    if (rating.isPresent() && (free || ours || replace)) {
      set(rating.get(), there, record);
    } else if (rating.isPresent()) {
      remarks.add("rating " + there.orElseThrow() + " stays");
      record.ifPresent(old -> forget());
    } else if (record.isPresent()) {
      takeBack(ours, there);
    }
  }

  private void set(int rating, Optional<String> there, Optional<String> record)
      throws XMPException {
    String text = Integer.toString(rating);
    boolean said = there.isPresent() && same(there.get(), text);
    if (said && record.isPresent() && same(record.get(), text)) {
      return;
    }
    if (!said) {
      xmp.setProperty(XMPConst.NS_XMP, XmpMerge.RATING, text);
    }
    xmp.setProperty(XmpMerge.OURS, XmpMerge.RATING, text);
    changes.add(
        said
            ? "rating " + text + " counts as ours"
            : "rating " + there.map(old -> old + " becomes ").orElse("") + text);
  }

  private void takeBack(boolean ours, Optional<String> there) {
    if (ours) {
      xmp.deleteProperty(XMPConst.NS_XMP, XmpMerge.RATING);
      changes.add("rating " + there.orElseThrow() + " taken back");
    }
    forget();
  }

  /** A person gave another rating: it is theirs from now on. */
  private void forget() {
    xmp.deleteProperty(XmpMerge.OURS, XmpMerge.RATING);
    changes.add("our record of a rating goes");
  }

  /** True for the same number; XMP allows a rating to be spelled 4.0. */
  private static boolean same(String one, String two) {
    try {
      return Double.parseDouble(one.strip()) == Double.parseDouble(two.strip());
    } catch (NumberFormatException e) {
      return false;
    }
  }
}
