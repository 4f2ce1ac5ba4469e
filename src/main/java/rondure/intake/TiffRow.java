package rondure.intake;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;

/**
 * One row of a strip or tile: undoes the predictor and takes single colours out of it.
 *
 * <p>Predictors: TIFF 6.0, section 14 (horizontal differences, here for any depth), and Adobe
 * Photoshop TIFF Technical Note 3 (floating point: bytes split by significance, then differenced).
 */
final class TiffRow {
  private final TiffLayout layout;
  private final int samples;
  private final int count;
  private final byte[] bytes;
  private final int[] words;
  private final ByteOrder order;
  private boolean bigEndianNow;

  TiffRow(TiffLayout layout, ByteOrder order) {
    this.layout = layout;
    this.samples = layout.samplesPerChunk();
    this.count = layout.chunkWidthPx() * samples;
    this.bytes = new byte[layout.rowBytes()];
    this.words = new int[count];
    this.order = order;
  }

  /** The row's bytes as unpacked from the file, to be filled before {@link #decode()}. */
  byte[] bytes() {
    return bytes;
  }

  /** Turns the bytes into sample values. */
  void decode() {
    bigEndianNow = false;
    if (layout.predicted() && layout.predictor() == 3) {
      undoFloatDifferences();
    }
    ByteBuffer source = ByteBuffer.wrap(bytes);
    source.order(bigEndianNow ? ByteOrder.BIG_ENDIAN : order);
    switch (layout.bits()) {
      case 8 -> {
        for (int i = 0; i < count; i++) {
          words[i] = bytes[i] & 0xFF;
        }
      }
      case 16 -> {
        for (int i = 0; i < count; i++) {
          words[i] = source.getShort(2 * i) & 0xFFFF;
        }
      }
      default -> source.asIntBuffer().get(words);
    }
    if (layout.predicted() && layout.predictor() == 2) {
      undoDifferences();
    }
  }

  private void undoDifferences() {
    int mask = layout.bits() == 32 ? -1 : (1 << layout.bits()) - 1;
    for (int i = samples; i < count; i++) {
      words[i] = words[i] + words[i - samples] & mask;
    }
  }

  private void undoFloatDifferences() {
    for (int i = samples; i < bytes.length; i++) {
      bytes[i] += bytes[i - samples];
    }
    byte[] split = bytes.clone();
    for (int i = 0; i < count; i++) {
      for (int part = 0; part < 4; part++) {
        bytes[4 * i + part] = split[part * count + i];
      }
    }
    bigEndianNow = true;
  }

  /** Takes sample {@code index} of the first {@code pixels} pixels as code values. */
  void codes(int index, float[] codes, int pixels) {
    switch (layout.kind()) {
      case FLOAT -> {
        for (int i = 0; i < pixels; i++) {
          codes[i] = Float.intBitsToFloat(words[i * samples + index]);
        }
      }
      case SIGNED -> {
        int shift = 32 - layout.bits();
        for (int i = 0; i < pixels; i++) {
          codes[i] = words[i * samples + index] << shift >> shift;
        }
      }
      default -> {
        for (int i = 0; i < pixels; i++) {
          codes[i] = words[i * samples + index] & 0xFFFFFFFFL;
        }
      }
    }
  }
}
