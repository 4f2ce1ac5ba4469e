package rondure.report;

import com.fasterxml.jackson.dataformat.csv.CsvMapper;
import com.fasterxml.jackson.dataformat.csv.CsvSchema;
import java.io.IOException;
import java.io.OutputStream;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import rondure.blur.Budget;
import rondure.blur.Cause;
import rondure.intake.ShotFacts;
import rondure.night.FrameShape;
import rondure.night.NightBook;
import rondure.night.NightFrame;
import rondure.night.Usefulness;

/** Writes frames.csv: one row a frame, units in the headings, RFC 4180 quoting, UTF-8. */
public final class FramesCsv {
  private FramesCsv() {}

  /** Writes the table; leaves the stream open. */
  public static void write(NightBook book, OutputStream out) throws IOException {
    Map<String, Function<NightFrame, Optional<?>>> columns = columns(Standings.of(book));
    CsvSchema.Builder schema = CsvSchema.builder().setLineSeparator("\r\n").setUseHeader(true);
    columns.keySet().forEach(schema::addColumn);
    CsvMapper mapper = new CsvMapper();
    mapper.disable(com.fasterxml.jackson.core.JsonGenerator.Feature.AUTO_CLOSE_TARGET);
    try (var rows = mapper.writer(schema.build()).writeValues(out)) {
      for (NightFrame frame : book.frames()) {
        Map<String, Object> row = new LinkedHashMap<>();
        columns.forEach((name, value) -> row.put(name, value.apply(frame).orElse(null)));
        rows.write(row);
      }
    }
  }

  /**
   * Text that a spreadsheet would take for a formula gets a leading apostrophe (OWASP, CSV
   * injection).
   */
  static String inert(String text) {
    return !text.isEmpty() && "=+-@\t\r".indexOf(text.charAt(0)) >= 0 ? "'" + text : text;
  }

  private static Map<String, Function<NightFrame, Optional<?>>> columns(Standings standings) {
    Map<String, Function<NightFrame, Optional<?>>> columns = new LinkedHashMap<>();
    columns.put("file", frame -> Optional.of(inert(frame.file())));
    columns.put("camera", frame -> Optional.of(inert(frame.cameraName())));
    columns.put("scene", NightFrame::sceneNumber);
    columns.put("night_index", NightFrame::nightIndex);
    columns.put("time", FrameFields::time);
    columns.put("status", frame -> Optional.of(FrameFields.spelled(frame.status())));
    columns.put("reason", frame -> frame.reason().map(FramesCsv::inert));
    columns.put("grade", frame -> frame.grade().map(FrameFields::spelled));
    columns.put(
        "largest_use",
        frame -> frame.usefulness().map(use -> FrameFields.spelled(use.largestUse())));
    columns.put(
        "point_up_to_width_px",
        frame -> Rounded.of(frame.usefulness().map(Usefulness::pointUpToWidthPx)));
    columns.put("rank_in_scene", frame -> standings.of(frame).rankInScene());
    columns.put("alike_group", frame -> standings.of(frame).alikeGroup());
    columns.put("best_of_alike", frame -> standings.of(frame).bestOfAlike());
    columns.put("cause", FrameFields::cause);
    columns.put("confidence", frame -> Rounded.of(FrameFields.confidence(frame)));
    for (Cause cause : Cause.values()) {
      columns.put(
          "probability_" + FrameFields.spelled(cause),
          frame -> Rounded.of(FrameFields.probability(frame, cause)));
    }
    columns.put("star_count", frame -> frame.shape().map(FrameShape::starCount));
    putShape(columns, "fwhm_px", s -> Optional.of(s.fwhmPx()));
    putShape(columns, "fwhm_arcsec", FrameShape::fwhmArcsec);
    putShape(columns, "rms_width_px", s -> Optional.of(s.rmsWidthPx()));
    putShape(columns, "roundness_b_over_a", s -> Optional.of(s.roundness()));
    putShape(columns, "elongation_angle_deg", s -> Optional.of(s.elongationAngleDeg()));
    putShape(columns, "direction_coherence", s -> Optional.of(s.directionCoherence()));
    putShape(columns, "fwhm_centre_px", FrameShape::fwhmCentrePx);
    putShape(columns, "fwhm_edge_px", FrameShape::fwhmEdgePx);
    putShape(columns, "sky_background_of_white", s -> Optional.of(s.skyBackground()));
    for (Cause cause : Cause.values()) {
      String name = cause == Cause.NONE ? "core" : FrameFields.spelled(cause);
      columns.put(
          "budget_" + name + "_px2",
          frame -> Rounded.of(frame.budget().map(budget -> budget.sky().of(cause))));
    }
    columns.put(
        "budget_unexplained_px2",
        frame -> Rounded.of(frame.budget().map(budget -> budget.sky().unexplainedPx2())));
    columns.put("explained_share", frame -> Rounded.of(frame.budget().map(Budget::explainedShare)));
    columns.put("trail_predicted_px", frame -> Rounded.of(frame.trailPredictedPx()));
    putFact(columns, "exposure_s", ShotFacts::exposureSeconds);
    putFact(columns, "f_number", ShotFacts::fNumber);
    putFact(columns, "iso", ShotFacts::iso);
    putFact(columns, "focal_length_mm", ShotFacts::focalLengthMm);
    putFact(columns, "pixel_pitch_um", ShotFacts::pixelPitchMicrons);
    putFact(columns, "ambient_temperature_c", ShotFacts::ambientTemperatureC);
    return columns;
  }

  private static void putShape(
      Map<String, Function<NightFrame, Optional<?>>> columns,
      String name,
      Function<FrameShape, Optional<Double>> value) {
    columns.put(name, frame -> frame.shape().flatMap(value).flatMap(Rounded::of));
  }

  private static void putFact(
      Map<String, Function<NightFrame, Optional<?>>> columns,
      String name,
      Function<ShotFacts, Optional<rondure.intake.Fact<Double>>> fact) {
    columns.put(name, frame -> Rounded.of(FrameFields.value(fact.apply(frame.facts()))));
  }
}
