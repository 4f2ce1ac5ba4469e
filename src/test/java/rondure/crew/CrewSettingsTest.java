package rondure.crew;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;

class CrewSettingsTest {
  /** Native memory of one LibRaw decode: 8 bytes of image and 2 of mosaic per pixel. */
  private static final double NATIVE_BYTES_PER_PIXEL = 10;

  /** Resident memory of a worker beside heap and decoder, measured on OpenJDK 17: 86 MiB. */
  private static final double MACHINE_MIB = 120;

  private static final double MIB = 1024 * 1024;

  @Test
  void aWorkerForTheUsual24MegapixelsFitsIntoOneGigabyte() {
    double heapMiB = CrewSettings.heapMiBFor(CrewSettings.defaults().megapixels());
    double nativeMiB = 24e6 * NATIVE_BYTES_PER_PIXEL / MIB;
    assertTrue((heapMiB + nativeMiB + MACHINE_MIB) * MIB < 1e9);
    assertEquals(512, CrewSettings.heapMiBFor(24));
  }

  @Property
  void theHeapHoldsFourFloatPlanesOfAnyFrameUpToTheLargest(
      @ForAll @DoubleRange(max = CrewSettings.MEGAPIXELS_MAX) double megapixels) {
    double planesMiB = 4 * Float.BYTES * megapixels * 1e6 / MIB;
    assertTrue(CrewSettings.heapMiBFor(megapixels) >= planesMiB + 100);
  }

  @Test
  void anAbsurdSizeInAHeaderGetsNoMoreThanTheLargestFrame() {
    int largest = CrewSettings.heapMiBFor(CrewSettings.MEGAPIXELS_MAX);
    assertEquals(largest, CrewSettings.heapMiBFor(4.6e12));
    CrewSettings settings = CrewSettings.defaults();
    assertEquals(new TimeLimit(560, 46), settings.limitFor(4.6e12));
    assertEquals(108, settings.limitFor(24).seconds());
  }

  /** So that no file holds up the night for longer than 10 s, unless it is larger than most. */
  @Test
  void aDecoderThatLoopsOnAFrameOf24MegapixelsIsEndedWithinTenSeconds() {
    assertTrue(CrewSettings.defaults().limitFor(24).processorSeconds() < 10);
  }

  @Test
  void nonsenseIsRefused() {
    CrewSettings usual = CrewSettings.defaults();
    assertThrows(IllegalArgumentException.class, () -> usual.withWorkers(0));
    assertThrows(
        IllegalArgumentException.class,
        () -> new CrewSettings(1, Double.NaN, 60, 1, "x", usual.javaExecutable()));
    assertThrows(
        IllegalArgumentException.class,
        () -> new CrewSettings(1, 24, 0, 1, "x", usual.javaExecutable()));
  }
}
