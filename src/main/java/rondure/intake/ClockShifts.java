package rondure.intake;

import java.time.Duration;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.TreeSet;

/** Finds the clock shift for a camera by its name. */
final class ClockShifts {
  private final Map<String, Duration> byName = new TreeMap<>();

  /**
   * @param shifts what to add, by model name or part of it
   * @throws IllegalArgumentException when two names differ in case only, or one is blank
   */
  ClockShifts(Map<String, Duration> shifts) {
    shifts.forEach(
        (name, shift) -> {
          if (name.isBlank() || byName.put(lower(name), shift) != null) {
            throw new IllegalArgumentException(
                "each camera takes one clock shift; \"" + name + "\" is blank or given twice.");
          }
        });
  }

  /**
   * The shift for a camera: of the name that is its whole model, with or without the maker in
   * front, else of the longest name that is part of it.
   */
  Optional<Duration> of(Optional<String> cameraModel) {
    return cameraModel.flatMap(this::nameFor).map(byName::get);
  }

  /** One sentence for each name that fits no camera of the set, or more than one in part only. */
  List<String> troubles(Collection<String> cameraModels) {
    List<String> troubles = new ArrayList<>();
    for (String name : byName.keySet()) {
      TreeSet<String> fitting = new TreeSet<>();
      for (String model : cameraModels) {
        if (nameFor(model).filter(name::equals).isPresent()) {
          fitting.add(model);
        }
      }
      if (fitting.isEmpty()) {
        String seen =
            cameraModels.isEmpty() ? "none" : String.join(", ", new TreeSet<>(cameraModels));
        troubles.add("No camera is called \"" + name + "\"; cameras in this set: " + seen + ".");
      } else if (fitting.size() > 1) {
        troubles.add(
            "The clock shift for \""
                + name
                + "\" fits several cameras ("
                + String.join(", ", fitting)
                + ") and was applied to each; give a longer name if that was not meant.");
      }
    }
    return troubles;
  }

  private Optional<String> nameFor(String cameraModel) {
    String model = lower(cameraModel);
    String best = "";
    for (String name : byName.keySet()) {
      if (model.equals(name) || withoutFirstWord(model).equals(name)) {
        return Optional.of(name);
      }
      best = model.contains(name) && name.length() > best.length() ? name : best;
    }
    return best.isEmpty() ? Optional.empty() : Optional.of(best);
  }

  private static String withoutFirstWord(String model) {
    return model.substring(model.indexOf(' ') + 1);
  }

  private static String lower(String name) {
    return name.strip().toLowerCase(Locale.ROOT);
  }
}
