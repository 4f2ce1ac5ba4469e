package rondure.report.layout;

import com.openhtmltopdf.extend.FSTextBreaker;
import com.openhtmltopdf.layout.UrlAwareLineBreakIterator;
import java.text.BreakIterator;
import java.util.Locale;

/** Where a line may end: as the layout has it, but never inside "b/a", "f/2.8" or "60 %". */
final class LineBreaks implements FSTextBreaker {
  private final FSTextBreaker usual =
      new UrlAwareLineBreakIterator(BreakIterator.getLineInstance(Locale.ENGLISH));
  private String text = "";

  @Override
  public void setText(String newText) {
    text = newText;
    usual.setText(newText);
  }

  /** The next place, or {@link BreakIterator#DONE}. */
  @Override
  public int next() {
    int place = usual.next();
    while (place != BreakIterator.DONE && insideSymbol(place)) {
      place = usual.next();
    }
    return place;
  }

  private boolean insideSymbol(int place) {
    boolean percent = place < text.length() && text.charAt(place) == '%';
    return percent
        || afterLoneLetter(place)
        || afterLoneLetter(place - 1)
        || decimalPoint(place - 1);
  }

  private boolean decimalPoint(int at) {
    return at > 0
        && at < text.length() - 1
        && text.charAt(at) == '.'
        && Character.isDigit(text.charAt(at - 1))
        && Character.isDigit(text.charAt(at + 1));
  }

  /** A slash that follows a lone letter. */
  private boolean afterLoneLetter(int slash) {
    return slash > 0
        && slash < text.length() - 1
        && text.charAt(slash) == '/'
        && Character.isLetter(text.charAt(slash - 1))
        && (slash == 1 || !Character.isLetterOrDigit(text.charAt(slash - 2)))
        && Character.isLetterOrDigit(text.charAt(slash + 1));
  }
}
