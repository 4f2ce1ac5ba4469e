package rondure.intake;

import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * Pixel pitches of sensors in board cameras, whose files name the sensor but say nothing about its
 * size. Source: Raspberry Pi documentation, "Camera", section "Hardware specification", rows
 * "Sensor resolution" and "Pixel size" (github.com/raspberrypi/documentation,
 * camera_hardware.adoc).
 */
final class SensorTable {
  private record Sensor(String name, int widthPx, int heightPx, double pitchMicrons) {}

  private static final List<Sensor> SENSORS =
      List.of(
          new Sensor("ov5647", 2592, 1944, 1.4),
          new Sensor("imx219", 3280, 2464, 1.12),
          new Sensor("imx708", 4608, 2592, 1.4),
          new Sensor("imx477", 4056, 3040, 1.55),
          new Sensor("imx500", 4056, 3040, 1.55),
          new Sensor("imx296", 1456, 1088, 3.45));

  private static final double ASPECT_TOLERANCE = 0.01;

  private SensorTable() {}

  /**
   * The distance of stored pixels of a picture that shows the whole sensor, µm. Empty for unknown
   * models and for pictures of another shape than the sensor, which show a part of it that the file
   * does not name.
   */
  static Optional<Double> pitchMicrons(String cameraModel, PictureSize stored) {
    String model = cameraModel.toLowerCase(Locale.ROOT);
    return SENSORS.stream()
        .filter(sensor -> stored.known() && model.contains(sensor.name()))
        .filter(sensor -> sameShape(sensor, stored))
        .map(sensor -> sensor.pitchMicrons() * sensor.widthPx() / stored.longerPx())
        .findFirst();
  }

  private static boolean sameShape(Sensor sensor, PictureSize stored) {
    double shape = sensor.widthPx() / (double) sensor.heightPx();
    return Math.abs(stored.aspect() / shape - 1) <= ASPECT_TOLERANCE;
  }
}
