package rondure.cli;

import java.io.PrintStream;
import java.util.Optional;
import java.util.function.LongSupplier;
import me.tongfei.progressbar.ConsoleProgressBarConsumer;
import me.tongfei.progressbar.ProgressBar;
import me.tongfei.progressbar.ProgressBarBuilder;
import rondure.Progress;
import rondure.RunStart;

/** Shows a bar on a screen for stages that take long; tells sentences everywhere. */
final class TerminalProgress implements Progress {
  /** Shorter stages have no bar, s. */
  static final double LONG_SECONDS = 2;

  private static final int UPDATE_MILLIS = 250;
  private static final int LINE_LENGTH = 78;

  private final Terminal terminal;
  private final Optional<PrintStream> screen;
  private final LongSupplier nanoTime;
  private Optional<ProgressBar> bar = Optional.empty();
  private String stage = "";
  private int total;
  private int done;
  private long begunNanos;

  /**
   * @param screen where bars are drawn; empty when nobody would see them
   */
  TerminalProgress(Terminal terminal, Optional<PrintStream> screen) {
    this(terminal, screen, System::nanoTime);
  }

  TerminalProgress(Terminal terminal, Optional<PrintStream> screen, LongSupplier nanoTime) {
    this.terminal = terminal;
    this.screen = screen;
    this.nanoTime = nanoTime;
  }

  @Override
  public void start(RunStart start) {
    StartWords.of(start).forEach(terminal::tell);
  }

  @Override
  public void begin(String newStage, int steps) {
    stage = newStage;
    total = steps;
    done = 0;
    begunNanos = nanoTime.getAsLong();
  }

  @Override
  public void step() {
    done++;
    boolean isLong = (nanoTime.getAsLong() - begunNanos) * 1e-9 > LONG_SECONDS;
    if (bar.isEmpty() && isLong && done < total) {
      bar = screen.map(this::drawn);
    }
    bar.ifPresent(shown -> shown.stepTo(done));
  }

  private ProgressBar drawn(PrintStream where) {
    return new ProgressBarBuilder()
        .setTaskName(stage)
        .setInitialMax(total)
        .setUpdateIntervalMillis(UPDATE_MILLIS)
        .setConsumer(new ConsoleProgressBarConsumer(where, LINE_LENGTH))
        .build();
  }

  @Override
  public void end() {
    bar.ifPresent(ProgressBar::close);
    bar = Optional.empty();
  }

  @Override
  public void say(String sentence) {
    terminal.warn(sentence);
  }
}
