package rondure.intake;

import java.io.IOException;
import rondure.base.FrameProblem;
import rondure.base.Orientation;

/**
 * Reads camera RAW through LibRaw: sensor values, undemosaiced, black subtracted in floating point
 * so that noise below black stays, green photosites only. A linear (already demosaiced) RAW gives
 * its green channel. The embedded preview is never touched.
 */
final class RawDecoder {
  private static final double FEWEST_GREEN = 0.2;

  private final FileBytes file;
  private final Orientation orientation;
  private final RawPacking packing;

  private RawDecoder(FileBytes file, Orientation orientation, RawPacking packing) {
    this.file = file;
    this.orientation = orientation;
    this.packing = packing;
  }

  /**
   * @throws FrameProblem when LibRaw is absent, or naming what is not read or what is damaged
   */
  static DecodedFrame decode(FileBytes file, Orientation orientation)
      throws IOException, FrameProblem {
    return new RawDecoder(file, orientation, RawLayout.check(file)).decode();
  }

  private DecodedFrame decode() throws IOException, FrameProblem {
    try (RawHandle raw = open()) {
      if (raw.turnedGrid()) {
        throw new FrameProblem(
            "this RAW comes from a sensor whose grid is turned by 45 degrees, which is not read;"
                + " export a linear 16-bit TIFF");
      }
      return raw.component(0, 0) == RawHandle.ALL_COLOURS ? linear(raw) : mosaic(raw, pattern(raw));
    }
  }

  private RawHandle open() throws IOException, FrameProblem {
    RawSupport.library();
    try {
      return RawHandle.open(file);
    } catch (FrameProblem failure) {
      throw packing.explain(failure);
    }
  }

  /** The green sites of {@code mosaic}; those of the other diagonal when the pixels say so. */
  private DecodedFrame mosaic(RawHandle raw, Mosaic mosaic) throws IOException, FrameProblem {
    RasterSize size = raw.size();
    int[] components = componentTable(raw);
    BayerPhase phase = new BayerPhase(size);
    MosaicAssembler frame = new MosaicAssembler(size, mosaic);
    EmptyRows empty = new EmptyRows(size);
    short[] values = new short[size.widthPx() * RawHandle.COMPONENTS];
    float[] sites = new float[size.widthPx()];
    for (int y = 0; y < size.heightPx(); y++) {
      raw.readRow(y, values);
      pick(values, components, y, sites);
      empty.look(sites);
      phase.look(y, sites);
      frame.take(y, sites);
    }
    int maximum = raw.maximum();
    int[] levels = raw.takeBlackLevels(size);
    raw.close();
    BlackLevels black =
        BlackLevels.of(
            (x, y) -> {
              int at = y * Mosaic.SIDE + x;
              return levels[at * RawHandle.COMPONENTS + components[at]];
            });
    empty.check(black.green(mosaic));
    if (phase.contradicts(mosaic, black)) {
      try (RawHandle again = open()) {
        return mosaic(again, Mosaic.of((x, y) -> mosaic.at(x + 1, y)));
      }
    }
    frame.subtract(black);
    double white = ClipLevel.of(frame.samples(), maximum - black.green(mosaic));
    return frame.finish(new Levels(white, 1, linearity()), orientation);
  }

  /** Takes the one component of each site that the sensor saw. */
  private static void pick(short[] values, int[] components, int y, float[] sites) {
    int start = y % Mosaic.SIDE * Mosaic.SIDE;
    for (int phase = 0; phase < Math.min(Mosaic.SIDE, sites.length); phase++) {
      int component = components[start + phase];
      for (int x = phase; x < sites.length; x += Mosaic.SIDE) {
        sites[x] = values[RawHandle.COMPONENTS * x + component] & 0xFFFF;
      }
    }
  }

  private static int[] componentTable(RawHandle raw) throws FrameProblem {
    int[] components = new int[Mosaic.SIDE * Mosaic.SIDE];
    for (int i = 0; i < components.length; i++) {
      components[i] = raw.component(i % Mosaic.SIDE, i / Mosaic.SIDE);
      if (components[i] < 0 || components[i] >= RawHandle.COMPONENTS) {
        throw new FrameProblem(
            "this RAW has an unknown colour mosaic; export a linear 16-bit TIFF");
      }
    }
    return components;
  }

  private static Mosaic pattern(RawHandle raw) throws FrameProblem {
    String letters = raw.colourLetters();
    int[] components = componentTable(raw);
    Mosaic mosaic = Mosaic.of((x, y) -> letters.charAt(components[y * Mosaic.SIDE + x]));
    if (mosaic.greenShare() < FEWEST_GREEN) {
      throw new FrameProblem(
          "this RAW has a "
              + letters
              + " colour mosaic with too few green sites; export a linear 16-bit TIFF");
    }
    return mosaic;
  }

  private DecodedFrame linear(RawHandle raw) throws IOException, FrameProblem {
    RasterSize size = raw.size();
    boolean colour = hasColour(raw, size);
    FrameAssembler frame = new FrameAssembler(size, colour);
    EmptyRows empty = new EmptyRows(size);
    Channel[] channels = colour ? Channel.values() : new Channel[] {Channel.GREEN};
    short[] values = new short[size.widthPx() * RawHandle.COMPONENTS];
    float[] row = new float[size.widthPx()];
    for (int y = 0; y < size.heightPx(); y++) {
      raw.readRow(y, values);
      for (Channel channel : channels) {
        int component = colour ? channel.ordinal() : 0;
        for (int x = 0; x < row.length; x++) {
          row[x] = values[RawHandle.COMPONENTS * x + component] & 0xFFFF;
        }
        if (channel == Channel.GREEN) {
          empty.look(row);
        }
        frame.take(channel, 0, y, row, row.length);
      }
    }
    int maximum = raw.maximum();
    int black = raw.takeBlackLevels(size)[colour ? 1 : 0];
    raw.close();
    empty.check(black);
    frame.subtract(black);
    double white = ClipLevel.of(frame.samples(), maximum - black);
    return frame.finish(new Levels(white, 1, linearity()), orientation);
  }

  /** Lossy JPEG of 8 bits costs faint light and small stars as much as in any developed picture. */
  private Linearity linearity() {
    return packing.lossy() ? Linearity.DEVELOPED : Linearity.SENSOR;
  }

  /** True unless green and blue are empty throughout: then the sensor saw no colours. */
  private static boolean hasColour(RawHandle raw, RasterSize size) {
    short[] values = new short[size.widthPx() * RawHandle.COMPONENTS];
    int step = Math.max(1, size.heightPx() / 64);
    for (int y = 0; y < size.heightPx(); y += step) {
      raw.readRow(y, values);
      for (int x = 0; x < size.widthPx(); x++) {
        if (values[RawHandle.COMPONENTS * x + 1] != 0) {
          return true;
        }
      }
    }
    return false;
  }
}
