package rondure;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import rondure.night.Grade;
import rondure.night.GradeSettings;
import rondure.night.NightBook;
import rondure.night.NightSettings;
import rondure.report.ReportSettings;

/** Grading anew is a matter of seconds: what was measured stays measured. */
class NewSettingsTest {
  @TempDir Path home;

  private NightBook book(NightSettings night, int expectedBefore) throws Exception {
    ReportSettings report = ReportSettings.defaults("test", Settings.shownDefaults());
    Settings usual = Settings.of(GivenFacts.none(), report, Optional.of(1), false);
    Settings settings = usual.withNight(night);
    Request request = new Request(List.of(home.resolve("night")), Optional.of(home.resolve("out")));
    int[] before = {-1};
    Progress progress =
        new WholeRun.Silent() {
          @Override
          public void start(RunStart start) {
            before[0] = start.measuredBefore();
          }
        };
    NightBook book = new Pipeline(request, settings, progress).run().book();
    assertEquals(expectedBefore, before[0]);
    return book;
  }

  /** Grades that keep nothing: no star is round beyond all doubt. */
  private static NightSettings strict() {
    GradeSettings usual = GradeSettings.defaults();
    return NightSettings.defaults()
        .withGrades(
            new GradeSettings(
                usual.keepWidthRatio(),
                1,
                usual.asideWidthRatio(),
                usual.asideRoundness(),
                usual.uses()));
  }

  private static long kept(NightBook book) {
    return book.frames().stream().filter(f -> f.grade().equals(Optional.of(Grade.KEEP))).count();
  }

  @Test
  void anotherGradeSettingNeedsNoNewMeasuring() throws Exception {
    Path night = Files.createDirectory(home.resolve("night"));
    for (int i = 1; i <= 2; i++) {
      String name = String.format("night_%04d.tif", i);
      Files.copy(Path.of("samples/night").resolve(name), night.resolve(name));
    }
    NightBook usual = book(NightSettings.defaults(), 0);
    NightBook strict = book(strict(), 2);
    assertEquals(0, kept(strict));
    assertEquals(kept(usual), kept(book(NightSettings.defaults(), 2)));
  }
}
