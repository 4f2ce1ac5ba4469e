package rondure.intake;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.time.LocalDateTime;
import java.time.ZoneOffset;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import rondure.base.FrameProblem;
import rondure.base.Orientation;

/**
 * Facts from a CRW, the RAW of early digital cameras, which holds heaps of tagged values.
 *
 * <p>A heap ends with the offset of its directory: a count, then for each value a tag (2 bytes), a
 * size and an offset from the heap's start (4 bytes each); bit 14 of the tag puts the value itself
 * into those 8 bytes, types 0x2800 and 0x3000 are heaps again. Sources: "CIFF: Specification on
 * Image Data File", version 1.0 revision 4, 1997; tags 0x1029, 0x102A and 0x102D: ExifTool
 * documentation, "Canon Tags".
 */
final class CanonHeap {
  private static final int HEADER_LENGTH = 2;
  private static final int MOST_ENTRIES = 500;
  private static final int MOST_HEAPS = 64;
  private static final int MOST_VALUE_BYTES = 4096;
  private static final int IN_DIRECTORY = 0x4000;
  private static final int TYPE_MASK = 0x3800;
  private static final int TAG_MASK = 0x3FFF;

  private static final int MAKE_MODEL = 0x080A;
  private static final int FOCAL_LENGTH = 0x1029;
  private static final int SHOT = 0x102A;
  private static final int CAMERA_SETTINGS = 0x102D;
  private static final int TIME = 0x180E;
  private static final int IMAGE = 0x1810;

  private final FileBytes file;
  private final ByteOrder order;
  private final Map<Integer, ByteBuffer> values = new HashMap<>();
  private int heaps;

  private CanonHeap(FileBytes file, ByteOrder order) {
    this.file = file;
    this.order = order;
  }

  static boolean isOne(FileBytes file) throws IOException, FrameProblem {
    byte[] start = file.read(0, (int) Math.min(14, file.length())).array();
    return new String(start, StandardCharsets.ISO_8859_1).startsWith("HEAPCCDR", 6);
  }

  /** What was read before any damage. */
  static ShotFacts facts(FileBytes file) throws IOException, FrameProblem {
    boolean little = file.read(0, 1).get(0) == 'I';
    CanonHeap heap = new CanonHeap(file, little ? ByteOrder.LITTLE_ENDIAN : ByteOrder.BIG_ENDIAN);
    try {
      long start = file.read(HEADER_LENGTH, 4).order(heap.order).getInt() & 0xFFFFFFFFL;
      heap.gather(start, file.length() - start);
    } catch (FrameProblem | IndexOutOfBoundsException damaged) {
      return heap.facts();
    }
    return heap.facts();
  }

  private void gather(long start, long length) throws IOException, FrameProblem {
    if (length < 6 || ++heaps > MOST_HEAPS) {
      return;
    }
    long offset = file.read(start + length - 4, 4).order(order).getInt() & 0xFFFFFFFFL;
    int count = file.read(start + offset, 2).order(order).getShort() & 0xFFFF;
    ByteBuffer entries =
        file.read(start + offset + 2, 10 * Math.min(count, MOST_ENTRIES)).order(order);
    for (int at = 0; at < entries.capacity(); at += 10) {
      int tag = entries.getShort(at) & 0xFFFF;
      long size = entries.getInt(at + 2) & 0xFFFFFFFFL;
      long place = start + (entries.getInt(at + 6) & 0xFFFFFFFFL);
      int type = tag & TYPE_MASK;
      if ((tag & IN_DIRECTORY) != 0) {
        values.putIfAbsent(tag & TAG_MASK, entries.slice(at + 2, 8).order(order));
      } else if (type == 0x2800 || type == 0x3000) {
        gather(place, size);
      } else if (size <= MOST_VALUE_BYTES) {
        values.putIfAbsent(tag & TAG_MASK, file.read(place, (int) size).order(order));
      }
    }
  }

  private ShotFacts facts() {
    PictureSize size =
        PictureSize.ofHeader(longAt(IMAGE, 0).orElse(0L), longAt(IMAGE, 1).orElse(0L));
    return new ShotFacts(
        ImageFormat.RAW,
        size.widthPx(),
        size.heightPx(),
        orientation(),
        time(),
        fact(shortAt(SHOT, 22).filter(v -> v != 0).map(v -> ExifFacts.secondsOfApex(v / 32.0))),
        fact(shortAt(SHOT, 21).filter(v -> v > 0).map(v -> ExifFacts.fNumberOfApex(v / 32.0))),
        fact(iso()),
        fact(focalLengthMm()),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        camera().map(Fact::ofFile),
        Optional.empty(),
        false);
  }

  /** ISO = 2^(base/32) · 100/32 · 2^(auto/32). */
  private Optional<Double> iso() {
    Optional<Integer> base = shortAt(SHOT, 2).filter(value -> value > 0);
    int auto = shortAt(SHOT, 1).orElse(0);
    return base.map(value -> Math.pow(2, (value + auto) / 32.0) * 100 / 32);
  }

  private Orientation orientation() {
    return switch (longAt(IMAGE, 3).orElse(0L).intValue()) {
      case 90 -> Orientation.ROTATED_90_CW;
      case 180 -> Orientation.ROTATED_180;
      case 270 -> Orientation.ROTATED_270_CW;
      default -> Orientation.NORMAL;
    };
  }

  /** Seconds of the camera's wall clock, counted as if it showed UTC. */
  private Optional<CaptureTime> time() {
    return longAt(TIME, 0)
        .filter(seconds -> seconds > 0)
        .map(seconds -> LocalDateTime.ofEpochSecond(seconds, 0, ZoneOffset.UTC))
        .map(local -> new CaptureTime(local, OptionalInt.empty(), false, Fact.Source.FILE));
  }

  private Optional<Double> focalLengthMm() {
    double unitsPerMm = shortAt(CAMERA_SETTINGS, 25).filter(units -> units > 0).orElse(1);
    return shortAt(FOCAL_LENGTH, 1).filter(f -> f > 0).map(units -> units / unitsPerMm);
  }

  private Optional<String> camera() {
    ByteBuffer names = values.get(MAKE_MODEL);
    if (names == null) {
      return Optional.empty();
    }
    byte[] bytes = new byte[names.capacity()];
    names.get(0, bytes);
    String[] parts = new String(bytes, StandardCharsets.ISO_8859_1).split("\0");
    return ExifFacts.named(
        ExifTags.clean(parts.length > 0 ? parts[0] : ""),
        ExifTags.clean(parts.length > 1 ? parts[1] : ""));
  }

  private Optional<Integer> shortAt(int tag, int index) {
    ByteBuffer value = values.get(tag);
    return value == null || value.capacity() < 2 * index + 2
        ? Optional.empty()
        : Optional.of((int) value.getShort(2 * index));
  }

  private Optional<Long> longAt(int tag, int index) {
    ByteBuffer value = values.get(tag);
    return value == null || value.capacity() < 4 * index + 4
        ? Optional.empty()
        : Optional.of(value.getInt(4 * index) & 0xFFFFFFFFL);
  }

  private static Optional<Fact<Double>> fact(Optional<Double> value) {
    return value.map(number -> new Fact<>(number, Fact.Source.FILE));
  }
}
