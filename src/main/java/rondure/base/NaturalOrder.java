package rondure.base;

import java.util.Comparator;

/** Orders file names as people do: runs of digits by their value, the rest by letter. */
public final class NaturalOrder {
  public static final Comparator<String> OF_NAMES = NaturalOrder::compare;

  private NaturalOrder() {}

  private static int compare(String one, String two) {
    int i = 0;
    int k = 0;
    while (i < one.length() && k < two.length()) {
      if (isDigit(one.charAt(i)) && isDigit(two.charAt(k))) {
        int endOne = endOfDigits(one, i);
        int endTwo = endOfDigits(two, k);
        int difference = compareDigits(one.substring(i, endOne), two.substring(k, endTwo));
        if (difference != 0) {
          return difference;
        }
        i = endOne;
        k = endTwo;
      } else {
        char a = Character.toLowerCase(one.charAt(i++));
        char b = Character.toLowerCase(two.charAt(k++));
        if (a != b) {
          return Character.compare(a, b);
        }
      }
    }
    int rest = Integer.compare(one.length() - i, two.length() - k);
    return rest != 0 ? rest : one.compareTo(two);
  }

  private static int compareDigits(String one, String two) {
    String a = one.replaceFirst("^0+(?=.)", "");
    String b = two.replaceFirst("^0+(?=.)", "");
    return a.length() != b.length() ? Integer.compare(a.length(), b.length()) : a.compareTo(b);
  }

  private static int endOfDigits(String name, int start) {
    int end = start;
    while (end < name.length() && isDigit(name.charAt(end))) {
      end++;
    }
    return end;
  }

  private static boolean isDigit(char c) {
    return c >= '0' && c <= '9';
  }
}
