package rondure.night;

import java.util.List;
import java.util.Map;

/**
 * All that a night is built from.
 *
 * @param inputName last part of the input folder's name (never a full path)
 * @param exposures in any order
 * @param leftOut names of files seen but not read, by kind
 * @param notes remarks from earlier steps, put first
 * @param namedSeries focus test series that the user named
 */
public record NightInput(
    String inputName,
    List<MeasuredExposure> exposures,
    Map<String, List<String>> leftOut,
    List<String> notes,
    List<NamedSeries> namedSeries) {
  public NightInput {
    exposures = List.copyOf(exposures);
    leftOut = Map.copyOf(leftOut);
    notes = List.copyOf(notes);
    namedSeries = List.copyOf(namedSeries);
  }

  /** Without named series. */
  public NightInput(
      String inputName,
      List<MeasuredExposure> exposures,
      Map<String, List<String>> leftOut,
      List<String> notes) {
    this(inputName, exposures, leftOut, notes, List.of());
  }
}
