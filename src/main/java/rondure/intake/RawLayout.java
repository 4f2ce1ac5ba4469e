package rondure.intake;

import java.io.IOException;
import java.util.List;
import rondure.base.FrameProblem;

/**
 * Looks at the directories of a RAW that is built like a TIFF before LibRaw sees it: absurd sizes
 * and pixels beyond the end of the file are refused here, without native code.
 */
final class RawLayout {
  private static final int CFA = 32_803;
  private static final int LINEAR_RAW = 34_892;
  private static final int UNCOMPRESSED = 1;

  private RawLayout() {}

  /**
   * How the sensor data are packed: those of the largest picture, when there are several.
   *
   * @throws FrameProblem when the sensor data of a TIFF-like file cannot be whole, or are of a kind
   *     that is not read
   */
  static RawPacking check(FileBytes file) throws IOException, FrameProblem {
    RawPacking packing = RawPacking.USUAL;
    long largest = 0;
    for (TiffDirectory directory :
        tiffLike(file) ? TiffDirectory.all(file) : List.<TiffDirectory>of()) {
      long photometric = directory.number(262, 0);
      if (photometric == CFA || photometric == LINEAR_RAW) {
        long area = check(file, directory).areaPx();
        packing = area > largest ? RawPacking.of(directory) : packing;
        largest = Math.max(largest, area);
      }
    }
    return packing;
  }

  private static boolean tiffLike(FileBytes file) throws IOException, FrameProblem {
    if (file.length() < 8) {
      return false;
    }
    int start = file.read(0, 4).getInt();
    return start == 0x49492A00 || start == 0x4D4D002A;
  }

  private static RasterSize check(FileBytes file, TiffDirectory raw)
      throws IOException, FrameProblem {
    RasterSize size = RasterSize.of(file.limits(), raw.number(256, 0), raw.number(257, 0));
    if (raw.number(259, UNCOMPRESSED) == UNCOMPRESSED) {
      long bits = size.areaPx() * raw.number(277, 1) * raw.number(258, 8);
      size.needs(bits / 8, file.length());
    }
    boolean tiled = raw.has(324);
    long[] offsets = raw.numbers(tiled ? 324 : 273);
    long[] lengths = raw.numbers(tiled ? 325 : 279);
    for (int i = 0; i < Math.min(offsets.length, lengths.length); i++) {
      if (offsets[i] + lengths[i] > file.length()) {
        throw file.truncated(offsets[i] + lengths[i]);
      }
    }
    return size;
  }
}
