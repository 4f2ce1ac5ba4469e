package rondure.report;

import java.util.List;

/**
 * Names of frames that stand close together: what all have in common is left out.
 *
 * @param from characters to leave out at the start
 * @param suffix to leave out at the end
 */
record FrameNames(int from, String suffix) {
  private static final int LONGEST = 12;

  /** Of files with paths. */
  static FrameNames of(List<String> files) {
    String first = files.get(0);
    int start = files.stream().mapToInt(file -> common(first, file)).min().orElse(0);
    while (start > 0 && Character.isDigit(first.charAt(start - 1))) {
      start--;
    }
    int dot = first.lastIndexOf('.');
    String end = dot > start ? first.substring(dot) : "";
    boolean shared = files.stream().allMatch(file -> file.endsWith(end));
    boolean one = files.stream().distinct().count() == 1;
    return new FrameNames(one ? 0 : start, shared ? end : "");
  }

  private static int common(String one, String other) {
    int length = Math.min(one.length(), other.length());
    for (int i = 0; i < length; i++) {
      if (one.charAt(i) != other.charAt(i)) {
        return i;
      }
    }
    return length;
  }

  /** The part of a name that tells it from the others. */
  String brief(String file) {
    String rest = file.substring(from, file.length() - suffix.length());
    return Figures.shortened(rest.isEmpty() ? file : rest, LONGEST);
  }
}
