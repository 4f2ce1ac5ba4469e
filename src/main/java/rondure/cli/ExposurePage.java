package rondure.cli;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import rondure.sky.ExposureRules;
import rondure.sky.TrailRate;

/** The lines of the exposure command. */
final class ExposurePage {
  private static final int ROWS = 6;
  private static final int FIRST_COLUMN = 12;
  private static final int COLUMN = 18;
  private static final double NEAR_POLE_DEG = 80;

  private final Optics optics;
  private final double pitchMicrons;
  private final TrailRate equator;
  private final Map<String, TrailRate> columns = new LinkedHashMap<>();
  private final List<String> lines = new ArrayList<>();

  private ExposurePage(Optics optics) {
    this.optics = optics;
    this.pitchMicrons = optics.pixelPitchMicrons();
    this.equator = rate(0);
    double aimDeg = Math.abs(optics.declinationDeg());
    columns.put("this aim", rate(aimDeg));
    addColumn("equator", 0, aimDeg);
    addColumn("45°", 45, aimDeg);
    addColumn("80°, near a pole", NEAR_POLE_DEG, aimDeg);
  }

  /**
   * @throws IllegalArgumentException for people, when an option makes no sense
   */
  static List<String> of(Optics optics) {
    ExposurePage page = new ExposurePage(optics);
    page.heading();
    page.table();
    page.rules();
    page.edges();
    return page.lines;
  }

  private TrailRate rate(double declinationDeg) {
    return TrailRate.of(optics.focalLengthMm(), pitchMicrons, declinationDeg);
  }

  private void addColumn(String name, double declinationDeg, double aimDeg) {
    if (Math.abs(declinationDeg - aimDeg) > 0.5) {
      columns.put(name, rate(declinationDeg));
    }
  }

  private void heading() {
    lines.add(
        plain(optics.focalLengthMm())
            + " mm, pixels of "
            + plain(pitchMicrons)
            + " µm, aimed at declination "
            + plain(optics.declinationDeg())
            + "°. Stars are taken to be "
            + plain(optics.starWidthPx())
            + " px wide.");
    lines.add("How far a star in the middle of the frame trails, px, and in widths of its own:");
    lines.add("");
  }

  private void table() {
    lines.add(row("", columns.keySet().stream().toList()));
    for (double seconds : equator.customarySeconds(optics.starWidthPx(), ROWS)) {
      lines.add(
          row(exposure(seconds), columns.values().stream().map(r -> cell(r, seconds)).toList()));
    }
    lines.add(row("one width", columns.values().stream().map(this::oneWidth).toList()));
    lines.add("");
  }

  private String cell(TrailRate rate, double seconds) {
    double px = rate.trailPx(seconds);
    return String.format(Locale.ROOT, "%.1f px %6.2f", px, px / optics.starWidthPx());
  }

  private String oneWidth(TrailRate rate) {
    return rate.secondsFor(optics.starWidthPx()).map(ExposurePage::about).orElse("any");
  }

  private static String row(String head, List<String> cells) {
    return String.format("%-" + FIRST_COLUMN + "s", head)
        + cells.stream()
            .map(cell -> String.format("%" + COLUMN + "s", cell))
            .collect(Collectors.joining());
  }

  private void rules() {
    lines.add("\"one width\" is the exposure at which the trail is as long as the star is wide.");
    Optional<Double> equivalent = optics.focalLength35Mm();
    double customary =
        ExposureRules.constantRuleSeconds(
            ExposureRules.CUSTOMARY_K, equivalent.orElse(optics.focalLengthMm()));
    lines.add(
        "For comparison, the 500 rule"
            + (equivalent.isPresent() ? "" : ", if the sensor is 36 mm wide,")
            + " gives "
            + rule(customary)
            + ".");
    if (optics.fNumber().isPresent()) {
      double npf =
          ExposureRules.npfSeconds(
              1, optics.fNumber().get(), pitchMicrons, optics.focalLengthMm(), 0);
      lines.add("The NPF rule (k = 1, round stars; declination 0) gives " + rule(npf) + ".");
    } else {
      lines.add("The NPF rule asks for the f-number too: give --aperture.");
    }
  }

  private String rule(double seconds) {
    return String.format(
        Locale.ROOT, "%s: %.1f px on the equator", about(seconds), equator.trailPx(seconds));
  }

  /** How much longer trails are at the ends of the longer side, however the camera is turned. */
  private void edges() {
    lines.add(
        optics
            .sensorWidthMm()
            .map(width -> width / 2 / optics.focalLengthMm())
            .map(this::edges)
            .orElse("Towards the edges of a wide lens trails are longer, longest in the corners."));
    if (isNearPole()) {
      lines.add("Near a pole only the middle stands still: stars away from it trail more.");
    }
  }

  private String edges(double tangent) {
    double aimDeg = optics.declinationDeg();
    double times = rate(aimDeg).longestTimesEquator(tangent);
    return isNearPole()
        ? String.format(
            Locale.ROOT,
            "At the ends of the frame's longer side trails are up to %.2f times those of the"
                + " equator, in the corners longer still (lens without distortion).",
            times)
        : String.format(
            Locale.ROOT,
            "Towards the ends of the frame's longer side trails are up to %.2f times as long, in"
                + " the corners longer still (lens without distortion).",
            times / Math.cos(Math.toRadians(aimDeg)));
  }

  private boolean isNearPole() {
    return Math.abs(optics.declinationDeg()) >= NEAR_POLE_DEG;
  }

  /** "1/8 s", "6.9 s", "20 s". */
  private static String exposure(double seconds) {
    if (seconds < 0.6) {
      return String.format(Locale.ROOT, "1/%.0f s", 1 / seconds);
    }
    return String.format(Locale.ROOT, seconds < 9.95 ? "%.1f" : "%.0f", seconds)
            .replaceAll("\\.0$", "")
        + " s";
  }

  /** Of an exposure worked out: "0.24 s", where the dial's nearest would be a fifth off. */
  private static String about(double seconds) {
    return seconds >= 0.1 && seconds < 0.995 ? plain(seconds) + " s" : exposure(seconds);
  }

  /** At most two decimals, no trailing zeros. */
  static String plain(double value) {
    String text = String.format(Locale.ROOT, "%.2f", value);
    return text.contains(".") ? text.replaceAll("\\.?0+$", "") : text;
  }
}
