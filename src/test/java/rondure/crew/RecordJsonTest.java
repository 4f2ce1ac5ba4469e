package rondure.crew;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.junit.jupiter.api.Test;
import rondure.base.Stamp;
import rondure.intake.Fact;
import rondure.intake.ImageFormat;
import rondure.intake.ShotFacts;
import rondure.stars.AverageStar;
import rondure.stars.StarField;
import rondure.stars.StarSettings;

class RecordJsonTest {

  @Property(tries = 100)
  void aMeasurementComesBackBitForBit(@ForAll Random random) throws IOException {
    FrameMeasurement sent = new RandomRecords(random).measurement(1 + random.nextInt(30));
    Answer answer = thereAndBack(Answer.done(7, sent, Optional.of("ab")), Answer.class);
    FrameMeasurement back = answer.measurement().orElseThrow();

    assertEquals(7, answer.id());
    assertEquals(Optional.of("ab"), answer.contentDigest());
    assertEquals(sent.facts(), back.facts());
    assertEquals(sent.linearity(), back.linearity());
    assertArrayEquals(sent.thumbnail().bytes(), back.thumbnail().bytes());
    assertSameField(sent.field(), back.field());
  }

  @Property(tries = 100)
  void aRequestComesBackEqual(@ForAll Random random) throws IOException {
    ShotFacts facts = new RandomRecords(random).facts();
    StarSettings settings = new StarSettings(64, 3 + random.nextDouble(), 18, 400, 0, 40, 1, 2.5);
    Request sent =
        new Request(
            random.nextLong(),
            Request.Work.MEASURE,
            "file:///a%FFb",
            Optional.of(facts),
            Optional.of(settings));
    assertEquals(sent, thereAndBack(sent, Request.class));
  }

  @Test
  void aValueThatIsNotFiniteIsRefusedWithItsPlace() {
    ShotFacts known = ShotFacts.unknown(ImageFormat.RAW);
    for (double bad : List.of(Double.NaN, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY)) {
      ShotFacts facts =
          new ShotFacts(
              known.format(),
              1,
              1,
              known.orientation(),
              known.captureTime(),
              Optional.of(new Fact<>(bad, Fact.Source.FILE)),
              known.fNumber(),
              known.iso(),
              known.focalLengthMm(),
              known.focalLength35Mm(),
              known.pixelPitchMicrons(),
              known.ambientTemperatureC(),
              known.cameraModel(),
              known.lensModel(),
              false);
      IOException refusal =
          assertThrows(IOException.class, () -> RecordJson.write(Answer.done(1, facts)));
      assertTrue(refusal.getMessage().contains("exposureSeconds"), refusal.getMessage());
    }
  }

  private static <T> T thereAndBack(T value, Class<T> type) throws IOException {
    return RecordJson.read(RecordJson.write(value), type);
  }

  private static void assertSameField(StarField sent, StarField back) {
    assertEquals(withoutPictures(sent), withoutPictures(back));
    assertEquals(sent.averageStars().size(), back.averageStars().size());
    for (int i = 0; i < sent.averageStars().size(); i++) {
      AverageStar star = sent.averageStars().get(i);
      AverageStar other = back.averageStars().get(i);
      assertEquals(star.zone(), other.zone());
      assertEquals(star.starCount(), other.starCount());
      assertEquals(star.samplesPerPx(), other.samplesPerPx());
      assertArrayEquals(bits(star.stamp()), bits(other.stamp()));
    }
  }

  private static StarField withoutPictures(StarField field) {
    return new StarField(
        field.widthPx(),
        field.heightPx(),
        field.stars(),
        field.others(),
        field.refused(),
        field.sky(),
        field.mask(),
        List.of(),
        field.groundLights());
  }

  private static int[] bits(Stamp stamp) {
    int side = stamp.sidePx();
    int[] bits = new int[side * side];
    for (int i = 0; i < bits.length; i++) {
      bits[i] = Float.floatToIntBits(stamp.at(i % side, i / side));
    }
    return bits;
  }
}
