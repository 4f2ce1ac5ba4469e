package rondure.cli;

import java.io.PrintStream;
import java.util.Optional;
import java.util.function.LongSupplier;
import me.tongfei.progressbar.ConsoleProgressBarConsumer;
import me.tongfei.progressbar.ProgressBar;
import me.tongfei.progressbar.ProgressBarBuilder;
import me.tongfei.progressbar.ProgressBarStyle;
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
    if (steps == 1) {
      // A single step has no bar that could move.
      screen.ifPresent(where -> where.println(stage + " ..."));
    }
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
        .setStyle(ProgressBarStyle.ASCII)
        .setInitialMax(total)
        .setUpdateIntervalMillis(UPDATE_MILLIS)
        .setConsumer(new Line(where))
        .build();
  }

  @Override
  public void end() {
    if (bar.isPresent()) {
      bar.get().close();
      screen.ifPresent(PrintStream::println);
    }
    bar = Optional.empty();
  }

  /** The bar's line; the library ends it sometimes only, so {@link #end()} does. */
  private static final class Line extends ConsoleProgressBarConsumer {
    Line(PrintStream where) {
      super(where, LINE_LENGTH);
    }

    @Override
    public void close() {}
  }

  @Override
  public void say(String sentence) {
    terminal.warn(sentence);
  }
}
