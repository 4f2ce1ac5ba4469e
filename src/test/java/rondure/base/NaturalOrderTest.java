package rondure.base;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;

class NaturalOrderTest {
  private static final Comparator<String> ORDER = NaturalOrder.OF_NAMES;

  @Provide
  Arbitrary<String> names() {
    return Arbitraries.strings().withChars("aAbB019_ ./\u00e9\ud83c\udf0c").ofMaxLength(8);
  }

  @Test
  void numbersCountByValueAndLettersWithoutCase() {
    List<String> names =
        new ArrayList<>(List.of("IMG_10", "img_2", "IMG_1", "IMG_01", "IMG_2b", "IMG_2", "DSC_99"));
    names.sort(ORDER);
    assertEquals(List.of("DSC_99", "IMG_01", "IMG_1", "IMG_2", "img_2", "IMG_2b", "IMG_10"), names);
  }

  @Test
  void numbersBeyondAnyIntegerTypeStillCount() {
    String nines = "9".repeat(60);
    assertTrue(ORDER.compare("a" + nines, "a1" + "0".repeat(60)) < 0);
  }

  @Property
  void itIsATotalOrder(
      @ForAll("names") String one, @ForAll("names") String two, @ForAll("names") String three) {
    assertEquals(Integer.signum(ORDER.compare(one, two)), -Integer.signum(ORDER.compare(two, one)));
    assertEquals(one.equals(two), ORDER.compare(one, two) == 0);
    if (ORDER.compare(one, two) <= 0 && ORDER.compare(two, three) <= 0) {
      assertTrue(ORDER.compare(one, three) <= 0);
    }
  }

  @Property
  void framesCountUp(
      @ForAll @IntRange(max = 100_000) int one, @ForAll @IntRange(max = 100_000) int two) {
    int order = ORDER.compare("IMG_" + one + ".jpg", "img_" + two + ".JPG");
    assertTrue(one == two || Integer.signum(order) == Integer.compare(one, two));
  }

  @Property
  void sortingDoesNotDependOnTheStart(@ForAll List<String> names) {
    List<String> shuffled = new ArrayList<>(names);
    Collections.reverse(shuffled);
    shuffled.sort(ORDER);
    names.stream().sorted(ORDER).forEach(name -> assertEquals(name, shuffled.remove(0)));
  }
}
