package rondure.report.sidecar;

import java.util.EnumMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import rondure.blur.Cause;
import rondure.night.Grade;

/**
 * Every keyword that the program gives a frame. The list is closed and holds letters and spaces
 * only, so that nothing from a picture's name or metadata can get into a sidecar, and so that our
 * own keywords of an earlier run are known among those of people.
 */
final class Keywords {
  /** How each of them begins. */
  static final String FIRST_WORD = "Rondure ";

  static final String BEST_OF_SCENE = "Rondure best of scene";
  static final String UNDECIDED = "Rondure undecided";

  private static final Map<Grade, String> GRADES =
      new EnumMap<>(
          Map.of(
              Grade.KEEP, "Rondure keep",
              Grade.LOOK_CLOSER, "Rondure look closer",
              Grade.SET_ASIDE, "Rondure set aside"));

  private static final Map<Cause, String> CAUSES =
      new EnumMap<>(
          Map.of(
              Cause.NONE, "Rondure nothing softened",
              Cause.FOCUS, "Rondure focus",
              Cause.TRAILING, "Rondure sky trailing",
              Cause.TRIPOD, "Rondure tripod",
              Cause.LENS, "Rondure lens edges",
              Cause.HAZE, "Rondure haze or dew"));

  private static final Set<String> OURS = ours();

  private Keywords() {}

  static String of(Grade grade) {
    return GRADES.get(grade);
  }

  static String of(Cause cause) {
    return CAUSES.get(cause);
  }

  /** True for a keyword that this program may have written. */
  static boolean isOurs(String keyword) {
    return OURS.contains(keyword);
  }

  private static Set<String> ours() {
    Set<String> ours = new HashSet<>(List.of(BEST_OF_SCENE, UNDECIDED));
    ours.addAll(GRADES.values());
    ours.addAll(CAUSES.values());
    return Set.copyOf(ours);
  }
}
