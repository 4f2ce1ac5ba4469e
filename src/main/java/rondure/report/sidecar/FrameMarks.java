package rondure.report.sidecar;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import rondure.night.Grade;
import rondure.night.NightFrame;

/**
 * What a sidecar is to say of a frame.
 *
 * @param rating 1 to 5, within the range of {@code xmp:Rating} (ISO 16684-1, XMP basic namespace)
 * @param keywords entries of {@code dc:subject}, in the order they are written
 */
record FrameMarks(int rating, List<String> keywords) {
  private static final int BEST = 5;
  private static final int KEEP = 4;
  private static final int LOOK_CLOSER = 2;
  private static final int SET_ASIDE = 1;

  FrameMarks {
    if (rating < SET_ASIDE || rating > BEST) {
      throw new IllegalArgumentException("rating " + rating + " is outside 1 to 5");
    }
    keywords = List.copyOf(keywords);
    for (String keyword : keywords) {
      if (!Keywords.isOurs(keyword)) {
        throw new IllegalArgumentException("\"" + keyword + "\" is no keyword of this program");
      }
    }
  }

  /** The marks of a frame; none for a frame without a grade. */
  static Optional<FrameMarks> of(NightFrame frame, boolean bestOfScene) {
    return frame.grade().map(grade -> of(frame, grade, bestOfScene && grade == Grade.KEEP));
  }

  private static FrameMarks of(NightFrame frame, Grade grade, boolean best) {
    List<String> keywords = new ArrayList<>(List.of(Keywords.of(grade)));
    if (best) {
      keywords.add(Keywords.BEST_OF_SCENE);
    }
    frame
        .verdict()
        .map(verdict -> verdict.cause().map(Keywords::of).orElse(Keywords.UNDECIDED))
        .ifPresent(keywords::add);
    return new FrameMarks(best ? BEST : rating(grade), keywords);
  }

  private static int rating(Grade grade) {
    return switch (grade) {
      case KEEP -> KEEP;
      case LOOK_CLOSER -> LOOK_CLOSER;
      case SET_ASIDE -> SET_ASIDE;
    };
  }
}
