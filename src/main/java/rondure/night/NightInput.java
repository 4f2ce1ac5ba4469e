package rondure.night;

import java.util.List;
import java.util.Map;

/**
 * All that a night is built from.
 *
 * @param inputName last part of the input folder's name (never a full path)
 * @param exposures in any order
 * @param ignoredCounts files seen but not read, by kind
 * @param notes remarks from earlier steps, put first
 * @param namedSeries focus test series that the user named
 */
public record NightInput(
    String inputName,
    List<MeasuredExposure> exposures,
    Map<String, Integer> ignoredCounts,
    List<String> notes,
    List<NamedSeries> namedSeries) {
  public NightInput {
    exposures = List.copyOf(exposures);
    ignoredCounts = Map.copyOf(ignoredCounts);
    notes = List.copyOf(notes);
    namedSeries = List.copyOf(namedSeries);
  }

  /** Without named series. */
  public NightInput(
      String inputName,
      List<MeasuredExposure> exposures,
      Map<String, Integer> ignoredCounts,
      List<String> notes) {
    this(inputName, exposures, ignoredCounts, notes, List.of());
  }
}
