package rondure.report;

import java.util.List;
import rondure.blur.CoreReading;
import rondure.blur.LensErrors;
import rondure.blur.LensFinding;
import rondure.blur.LensSurface;
import rondure.blur.SceneBudget;

/** Lenses whose surface is known, with small errors. */
final class LensFixture {
  static final int WIDTH = 6000;
  static final int HEIGHT = 4000;
  static final double CORE_PX = 2;
  static final LensErrors ERRORS = new LensErrors(0.05, 0.05, 0.05, 0.1, 0.05);

  private LensFixture() {}

  static SceneBudget.Shared shared(LensSurface surface) {
    return shared(List.of(new LensFinding(surface, ERRORS, 1)), 0.97);
  }

  static SceneBudget.Shared shared(List<LensFinding> lenses, double realProbability) {
    CoreReading core = new CoreReading(0.8, CORE_PX, 0.4, realProbability, 0.9);
    return new SceneBudget.Shared(core, lenses, 0.968, List.of(), 0.02);
  }

  static LensModel model(LensSurface surface) {
    return LensModel.of(shared(surface), WIDTH, HEIGHT);
  }
}
