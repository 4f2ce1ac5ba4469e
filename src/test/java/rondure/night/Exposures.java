package rondure.night;

import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Random;
import rondure.base.JpegPicture;
import rondure.base.Moments;
import rondure.base.Orientation;
import rondure.blur.AttributionSettings;
import rondure.blur.OneFrameAttribution;
import rondure.crew.FrameMeasurement;
import rondure.crew.Outcome;
import rondure.intake.CaptureTime;
import rondure.intake.Fact;
import rondure.intake.ImageFormat;
import rondure.intake.Linearity;
import rondure.intake.ShotFacts;
import rondure.stars.Refusal;
import rondure.stars.SkyState;
import rondure.stars.Star;
import rondure.stars.StarField;
import rondure.testing.Fields;

/** Makes exposures with chosen facts and stars; every call changes one thing. */
final class Exposures {
  static final int WIDTH = 3000;
  static final int HEIGHT = 2000;
  static final LocalDateTime EVENING = LocalDateTime.of(2026, 8, 12, 22, 0);

  String file = "frame-1.tif";
  Optional<LocalDateTime> time = Optional.of(EVENING);
  Optional<Double> exposure = Optional.of(10.0);
  Optional<Double> fNumber = Optional.of(2.8);
  Optional<Double> iso = Optional.of(3200.0);
  Optional<Double> focal = Optional.of(20.0);
  Optional<Double> pitch = Optional.of(8.0);
  Optional<String> camera = Optional.of("Northwind A1");
  Orientation orientation = Orientation.NORMAL;
  Linearity linearity = Linearity.SENSOR;
  boolean composite;
  int width = WIDTH;
  int height = HEIGHT;
  int starCount = 40;
  long seed = 1;
  Moments shape = Moments.round(1);
  double[] widths = {};
  SkyState sky = new SkyState(1000, 30, 0.05, 1, 0);
  final Map<Refusal, Integer> refused = new EnumMap<>(Refusal.class);

  static Exposures at(String file, LocalDateTime time) {
    Exposures exposures = new Exposures();
    exposures.file = file;
    exposures.time = Optional.ofNullable(time);
    exposures.seed = file.hashCode();
    return exposures;
  }

  StarField field() {
    Random random = new Random(seed);
    List<Star> stars = new ArrayList<>();
    for (int i = 0; i < starCount; i++) {
      double x = random.nextDouble() * width;
      double y = random.nextDouble() * height;
      double sigma = widths.length == 0 ? 1 : widths[i % widths.length] / Moments.FWHM_PER_SIGMA;
      stars.add(Fields.star(x, y, shape.times(sigma * sigma), 0.05));
    }
    return Fields.field(width, height, stars, List.of(), refused, sky);
  }

  ShotFacts facts() {
    return new ShotFacts(
        ImageFormat.TIFF,
        width,
        height,
        orientation,
        time.map(t -> new CaptureTime(t, OptionalInt.empty(), false, Fact.Source.FILE)),
        fact(exposure),
        fact(fNumber),
        fact(iso),
        fact(focal),
        Optional.empty(),
        fact(pitch),
        Optional.empty(),
        camera.map(name -> new Fact<>(name, Fact.Source.FILE)),
        Optional.empty(),
        composite);
  }

  private static Optional<Fact<Double>> fact(Optional<Double> value) {
    return value.map(v -> new Fact<>(v, Fact.Source.FILE));
  }

  MeasuredExposure make() {
    FrameMeasurement measurement =
        new FrameMeasurement(facts(), linearity, field(), new JpegPicture(new byte[0]));
    return new MeasuredExposure(file, List.of(), facts(), new Outcome.Done<>(measurement));
  }

  MeasuredExposure fail(String reason) {
    return new MeasuredExposure(file, List.of(), facts(), new Outcome.Failed<>(reason));
  }

  static NightBook book(List<MeasuredExposure> exposures) {
    return NightBuilder.build(
        new NightInput("night", exposures, Map.of(), List.of()),
        NightSettings.defaults(),
        new OneFrameAttribution(AttributionSettings.defaults()));
  }
}
