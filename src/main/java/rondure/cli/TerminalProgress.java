package rondure.cli;

import me.tongfei.progressbar.ProgressBar;
import me.tongfei.progressbar.ProgressBarBuilder;
import rondure.Progress;

/** Shows progress on a terminal; quiet bars elsewhere. */
final class TerminalProgress implements Progress {
  private static final int UPDATE_MILLIS = 250;
  private ProgressBar bar;

  @Override
  public void begin(String stage, int total) {
    if (System.console() != null && total > 1) {
      bar =
          new ProgressBarBuilder()
              .setTaskName(stage)
              .setInitialMax(total)
              .setUpdateIntervalMillis(UPDATE_MILLIS)
              .build();
    }
  }

  @Override
  public void step() {
    if (bar != null) {
      bar.step();
    }
  }

  @Override
  public void end() {
    if (bar != null) {
      bar.close();
      bar = null;
    }
  }

  @Override
  public void say(String sentence) {
    System.err.println(sentence.replaceAll("\\p{C}", "?"));
  }
}
