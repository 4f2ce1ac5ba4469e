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
    assertEquals("U+05E9", Glyphs.printable("ש"), "no letters in the wrong order");
    assertEquals("a b", Glyphs.printable("a\u2003b"));
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
