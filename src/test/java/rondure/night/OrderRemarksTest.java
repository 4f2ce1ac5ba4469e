package rondure.night;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

/**
 * The clock decides the order; where names, folders or zones tell another one, that is said. Names
 * of cameras' folders and files: three and four digits (JEITA CP-3461, DCF; from memory).
 */
class OrderRemarksTest {

  /** One frame a minute with these names, in this order by the clock. */
  private static NightBook night(String... files) {
    List<MeasuredExposure> exposures = new ArrayList<>();
    for (int i = 0; i < files.length; i++) {
      exposures.add(Exposures.at(files[i], Exposures.EVENING.plusMinutes(i)).make());
    }
    java.util.Collections.shuffle(exposures, new Random(3));
    NightBook book = Exposures.book(exposures);
    assertEquals(Arrays.asList(files), book.frames().stream().map(NightFrame::file).toList());
    return book;
  }

  private static List<String> remarks(NightBook book) {
    return book.notes().stream()
        .filter(note -> note.contains("disagree") || note.contains("alternate"))
        .toList();
  }

  @Test
  void growingNumbersNeedNoRemark() {
    assertEquals(List.of(), remarks(night("IMG_0008.tif", "IMG_0009.tif", "IMG_0011.tif")));
    assertEquals(List.of(), remarks(night("b/x1.tif", "b/x2.tif", "a/y1.tif", "a/x1.tif")));
  }

  /** 9999 is followed by 0001, in the same folder or in the camera's next. */
  @Test
  void aCounterThatStartsAgainNeedsNoRemark() {
    assertEquals(
        List.of(), remarks(night("IMG_9998.tif", "IMG_9999.tif", "IMG_0001.tif", "IMG_0002.tif")));
    assertEquals(
        List.of(), remarks(night("DCIM/100NIGHT/IMG_9999.tif", "DCIM/101NIGHT/IMG_0001.tif")));
  }

  /** A clock set back by an hour after two of five frames. */
  @Test
  void aClockThatWasSetBackIsSaid() {
    List<String> notes =
        remarks(
            night("IMG_0003.tif", "IMG_0004.tif", "IMG_0005.tif", "IMG_0001.tif", "IMG_0002.tif"));
    assertEquals(1, notes.size());
    assertTrue(notes.get(0).contains("for 2 of 5 frames"), notes.get(0));
    assertTrue(notes.get(0).contains("(IMG_0005.tif comes before IMG_0001.tif by"), notes.get(0));
  }

  @Test
  void foldersOfTheCameraInTheWrongOrderAreSaid() {
    List<String> notes = remarks(night("101NIGHT/IMG_0001.tif", "100NIGHT/IMG_0100.tif"));
    assertEquals(1, notes.size(), notes.toString());
    assertTrue(notes.get(0).contains("for 1 of 2 frames"), notes.get(0));
  }

  @Test
  void foldersThatAlternateAreSaid() {
    List<String> notes = remarks(night("a/x1.tif", "b/y1.tif", "a/x2.tif"));
    assertEquals(1, notes.size(), notes.toString());
    assertTrue(notes.get(0).contains("\"a/\" and \"b/\" alternate"), notes.get(0));
  }

  /** Against the obvious: every way to leave frames out. */
  @Test
  void theLongestGrowingPartIsTheLongestOfAll() {
    Random random = new Random(11);
    for (int n = 0; n < 200; n++) {
      long[] numbers = random.longs(1 + random.nextInt(9), 0, 7).toArray();
      int best = 0;
      for (int chosen = 0; chosen < 1 << numbers.length; chosen++) {
        long last = -1;
        boolean grows = true;
        for (int i = 0; i < numbers.length; i++) {
          if ((chosen >> i & 1) == 1) {
            grows &= numbers[i] >= last;
            last = numbers[i];
          }
        }
        best = grows ? Math.max(best, Integer.bitCount(chosen)) : best;
      }
      assertEquals(best, OrderRemarks.longestGrowing(numbers));
    }
  }
}
