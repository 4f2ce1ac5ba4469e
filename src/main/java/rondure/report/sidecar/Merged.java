package rondure.report.sidecar;

import java.util.List;

/**
 * A sidecar after our marks were merged into it.
 *
 * @param text the whole file
 * @param changes what is new in it, in words; empty when it said all of this before
 * @param remarks what was left as it was, in words
 */
record Merged(String text, List<String> changes, List<String> remarks) {
  Merged {
    changes = List.copyOf(changes);
    remarks = List.copyOf(remarks);
  }

  boolean isChange() {
    return !changes.isEmpty();
  }
}
