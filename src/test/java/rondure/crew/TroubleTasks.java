package rondure.crew;

import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.PrintStream;
import java.io.UncheckedIOException;
import java.lang.reflect.Field;
import java.lang.reflect.Method;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import rondure.base.FrameProblem;
import rondure.intake.ImageFormat;
import rondure.intake.Linearity;
import rondure.intake.ShotFacts;
import rondure.stars.SkyState;
import rondure.stars.StarField;
import rondure.stars.StarSettings;

/**
 * Work that goes wrong in the way that the first word of the file's name says; a number after it
 * makes different records.
 */
final class TroubleTasks implements WorkerTasks {
  private static final int FLOOD_LINES = 40_000;
  private static final int FAT_STARS = 200;

  @Override
  public ShotFacts facts(Path file) throws FrameProblem {
    act(file);
    return new RandomRecords(new Random(name(file).hashCode())).facts();
  }

  @Override
  public FrameMeasurement measure(Path file, ShotFacts facts, StarSettings settings)
      throws FrameProblem {
    act(file);
    FrameMeasurement usual = expected(file, facts);
    return name(file).startsWith("nan") ? withoutNumber(usual) : usual;
  }

  /** What measuring a sound file of this name gives: a pure function, as the real one is. */
  static FrameMeasurement expected(Path file, ShotFacts facts) {
    RandomRecords records = new RandomRecords(new Random(name(file).hashCode()));
    FrameMeasurement some = records.measurement(name(file).startsWith("fat") ? FAT_STARS : 3);
    return new FrameMeasurement(facts, some.linearity(), some.field(), some.thumbnail());
  }

  private static String name(Path file) {
    return file.getFileName().toString();
  }

  private static void act(Path file) throws FrameProblem {
    try {
      switch (name(file).split("[-.]")[0]) {
        case "problem" -> throw new FrameProblem("the file is 0 bytes long");
        case "bug" -> throw new IllegalStateException("a programmer's fault");
        case "crash" -> crash();
        case "hang" -> hang(file);
        case "hungry" -> fillHeap();
        case "exit" -> Runtime.getRuntime().halt(7);
        case "killed" -> killItself();
        case "print" -> flood(System.out);
        case "complain" -> flood(System.err);
        case "garbage" -> toRawOutput("native code says hello\n".getBytes(StandardCharsets.UTF_8));
        case "flood" -> flood(new PrintStream(new FileOutputStream(FileDescriptor.out)));
        case "halfway" -> stopHalfway();
        case "once" -> crashFirstTime(file);
        case "grow" -> Files.writeString(file, "more", StandardOpenOption.APPEND);
        default -> {
          // Sound.
        }
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Writes to address 0 from native code. */
  private static void crash() {
    try {
      Class<?> type = Class.forName("sun.misc.Unsafe");
      Field field = type.getDeclaredField("theUnsafe");
      field.setAccessible(true);
      Method put = type.getMethod("putAddress", long.class, long.class);
      put.invoke(field.get(null), 0L, 0L);
    } catch (ReflectiveOperationException e) {
      throw new IllegalStateException(e);
    }
  }

  /** Leaves a file that says so, then never comes back, whatever interrupts it. */
  private static void hang(Path file) throws IOException {
    Files.writeString(file.resolveSibling(name(file) + ".begun"), "");
    long never = Long.MAX_VALUE;
    for (long i = 0; i < never; i++) {
      Thread.onSpinWait();
    }
  }

  /** As the system does to a process when memory runs short. */
  private static void killItself() throws IOException {
    String command = "kill -9 " + ProcessHandle.current().pid();
    new ProcessBuilder("/bin/sh", "-c", command).start();
    for (long i = 0; i < Long.MAX_VALUE; i++) {
      Thread.onSpinWait();
    }
  }

  private static void fillHeap() {
    List<float[]> heap = new ArrayList<>();
    for (int i = 0; i < 100_000; i++) {
      heap.add(new float[1_000_000]);
    }
    throw new IllegalStateException("a heap of " + heap.size() + " x 4 MB was not full");
  }

  private static void flood(PrintStream stream) {
    for (int i = 0; i < FLOOD_LINES; i++) {
      stream.println("line " + i + " of many that nobody asked for, long enough to fill a pipe");
    }
    stream.flush();
  }

  private static void stopHalfway() throws IOException {
    ByteBuffer head = ByteBuffer.allocate(16).putInt(0x526E_64C5).putInt(1000).putInt(0).putInt(1);
    toRawOutput(head.array());
    Runtime.getRuntime().halt(0);
  }

  private static void crashFirstTime(Path file) throws IOException {
    Path marker = file.resolveSibling(name(file) + ".tried");
    if (!Files.exists(marker)) {
      Files.writeString(marker, "");
      crash();
    }
  }

  private static void toRawOutput(byte[] bytes) throws IOException {
    OutputStream out = new FileOutputStream(FileDescriptor.out);
    out.write(bytes);
    out.flush();
  }

  private static FrameMeasurement withoutNumber(FrameMeasurement usual) {
    StarField field = usual.field();
    StarField bad =
        new StarField(
            field.widthPx(),
            field.heightPx(),
            field.stars(),
            field.others(),
            field.refused(),
            new SkyState(Double.NaN, 1, 1, 1, 1),
            field.mask(),
            field.averageStars(),
            field.groundLights());
    return new FrameMeasurement(
        ShotFacts.unknown(ImageFormat.TIFF), Linearity.SENSOR, bad, usual.thumbnail());
  }
}
