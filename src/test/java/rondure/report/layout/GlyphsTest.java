package rondure.report.layout;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.junit.jupiter.api.Test;
import rondure.report.picture.ReportFonts;

class GlyphsTest {
  @Test
  void whatTheFontHasStaysAsItIs() {
    assertEquals("Straße-Ночь_Ω ½.tif", Glyphs.printable("Straße-Ночь_Ω ½.tif"));
    assertEquals("é", Glyphs.printable("e\u0301"), "composed first");
  }

  @Test
  void whatWouldNotPrintIsSpelledOut() {
    assertEquals("U+1F30C", Glyphs.printable("🌌"));
    assertEquals("U+2713", Glyphs.printable("✓"));
    assertEquals("aU+202Egpj.exe", Glyphs.printable("a\u202Egpj.exe"), "no hidden reversal");
    assertEquals("U+0645", Glyphs.printable("م"), "the bundled fonts have no Arabic");
    assertEquals("U+661F", Glyphs.printable("星"), "nor Chinese");
    assertEquals("a b", Glyphs.printable("a\u2003b"));
  }

  /** Unicode Annex 9: Hebrew letters run from right to left, numbers and Latin words do not. */
  @Test
  void hebrewNamesReadFromTheRight() {
    String night = "\u05DC\u05D9\u05DC\u05D4";
    String turned = "\u05D4\u05DC\u05D9\u05DC";
    assertEquals(night, Glyphs.printable(night));
    assertEquals("12 " + turned, Glyphs.visual(night + " 12"));
    assertEquals("a " + turned + ".tif", Glyphs.visual("a " + night + ".tif"));
    assertEquals("night.tif", Glyphs.visual("night.tif"));
  }

  @Property
  void everyCharacterLeftCanBeDrawn(@ForAll String text) {
    String printed = Glyphs.printable(text);
    assertTrue(
        printed
            .codePoints()
            .allMatch(c -> c == 0xA0 || ReportFonts.Face.SANS_REGULAR.font().canDisplay(c)));
  }
}
