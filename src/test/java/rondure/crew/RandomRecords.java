package rondure.crew;

import java.time.LocalDateTime;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Random;
import java.util.function.Supplier;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import rondure.base.JpegPicture;
import rondure.base.Moments;
import rondure.base.Orientation;
import rondure.base.Stamp;
import rondure.intake.CaptureTime;
import rondure.intake.Fact;
import rondure.intake.ImageFormat;
import rondure.intake.Linearity;
import rondure.intake.ShotFacts;
import rondure.stars.AverageStar;
import rondure.stars.Detection;
import rondure.stars.Refusal;
import rondure.stars.SkyMask;
import rondure.stars.SkyState;
import rondure.stars.Star;
import rondure.stars.StarField;
import rondure.stars.Surroundings;

/** Measurements filled with random values: any finite doubles, missing facts, odd letters. */
public final class RandomRecords {
  private final Random random;

  public RandomRecords(Random random) {
    this.random = random;
  }

  /** A measurement with this many stars, as many other detections, and four average stars. */
  public FrameMeasurement measurement(int starCount) {
    return new FrameMeasurement(
        facts(), any(Linearity.values()), field(starCount), new JpegPicture(bytes()));
  }

  public ShotFacts facts() {
    return new ShotFacts(
        any(ImageFormat.values()),
        random.nextInt(20_000),
        random.nextInt(20_000),
        any(Orientation.values()),
        maybe(this::time),
        maybe(this::fact),
        maybe(this::fact),
        maybe(this::fact),
        maybe(this::fact),
        maybe(this::fact),
        maybe(this::fact),
        maybe(this::fact),
        maybe(this::name),
        maybe(this::name),
        random.nextBoolean());
  }

  private Fact<String> name() {
    return new Fact<>(text(), any(Fact.Source.values()));
  }

  private StarField field(int starCount) {
    Map<Refusal, Integer> refused = new EnumMap<>(Refusal.class);
    Stream.of(Refusal.values())
        .filter(r -> random.nextBoolean())
        .forEach(r -> refused.put(r, random.nextInt()));
    return new StarField(
        random.nextInt(20_000),
        random.nextInt(20_000),
        list(starCount, this::star),
        list(starCount, () -> new Detection(finite(), finite(), finite(), any(Refusal.values()))),
        refused,
        new SkyState(finite(), finite(), finite(), finite(), finite()),
        new SkyMask(1 + random.nextInt(256), list(random.nextInt(40), () -> "01101")),
        list(4, this::averageStar),
        list(starCount / 4, this::star),
        new Surroundings(random.nextInt(60), list(9, this::ring)));
  }

  private Surroundings.Ring ring() {
    double from = random.nextDouble(30);
    return new Surroundings.Ring(from, from + 1 + random.nextDouble(5), finite(), positive());
  }

  private Star star() {
    return new Star(
        finite(),
        finite(),
        finite(),
        positive(),
        moments(),
        positive(),
        positive(),
        positive(),
        positive(),
        positive(),
        finite(),
        finite(),
        finite(),
        finite());
  }

  private Moments moments() {
    double minor = 0.1 + random.nextDouble();
    return Moments.ofAxes(minor + 50 * random.nextDouble(), minor, 4 * random.nextDouble());
  }

  private AverageStar averageStar() {
    int side = 1 + 2 * random.nextInt(20);
    float[] values = new float[side * side];
    for (int i = 0; i < values.length; i++) {
      values[i] = Float.intBitsToFloat(random.nextInt());
    }
    return new AverageStar(
        any(AverageStar.Zone.values()),
        random.nextInt(500),
        1 + random.nextInt(8),
        new Stamp(side, values));
  }

  private CaptureTime time() {
    LocalDateTime local =
        LocalDateTime.of(2020, 1, 1, 0, 0).plusNanos(random.nextLong() >>> (1 + random.nextInt(9)));
    OptionalInt offset = random.nextBoolean() ? OptionalInt.of(3600) : OptionalInt.empty();
    return new CaptureTime(local, offset, random.nextBoolean(), any(Fact.Source.values()));
  }

  private Fact<Double> fact() {
    return new Fact<>(finite(), any(Fact.Source.values()));
  }

  private String text() {
    return List.of("", " ", "Orvena N1 ⅓ \"wide\"", "\\ \u0000 \uD83C\uDF0C", "null")
        .get(random.nextInt(5));
  }

  private byte[] bytes() {
    byte[] bytes = new byte[random.nextInt(100_000)];
    random.nextBytes(bytes);
    return bytes;
  }

  private double positive() {
    return Math.max(Double.MIN_VALUE, Math.abs(finite()));
  }

  /** Half of them ordinary, half any finite bit pattern, with both zeros and subnormals. */
  private double finite() {
    double ordinary = random.nextGaussian() * 100;
    double wild = Double.longBitsToDouble(random.nextLong());
    return switch (random.nextInt(8)) {
      case 0 -> -0.0;
      case 1 -> random.nextInt(100);
      case 2 -> Double.MIN_VALUE * random.nextInt(100);
      case 3, 4 -> Double.isFinite(wild) ? wild : Double.MAX_VALUE;
      default -> ordinary;
    };
  }

  private <T> Optional<T> maybe(Supplier<T> value) {
    return random.nextBoolean() ? Optional.of(value.get()) : Optional.empty();
  }

  private <T> T any(T[] values) {
    return values[random.nextInt(values.length)];
  }

  private static <T> List<T> list(int count, Supplier<T> value) {
    return IntStream.range(0, count).mapToObj(i -> value.get()).toList();
  }
}
