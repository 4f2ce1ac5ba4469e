package rondure.sim;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.List;

/**
 * Writes Bayer DNG: the raw counts, 16 bits, uncompressed (Digital Negative Specification 1.4, in
 * which the main directory may hold the raw image itself).
 */
final class DngFile {
  private static final int COLOUR_FILTER_ARRAY = 32803;
  private static final int DAYLIGHT_D65 = 21;

  // XYZ (D65) to linear sRGB, IEC 61966-2-1: the invented camera sees sRGB's primaries.
  private static final double[] XYZ_TO_CAMERA = {
    3.2406, -1.5372, -0.4986, -0.9689, 1.8758, 0.0415, 0.0557, -0.2040, 1.0570
  };

  private DngFile() {}

  static void write(SimFrame frame, OutputStream out) throws IOException {
    CameraPlan camera = frame.plan().camera();
    Mosaic mosaic = camera.mosaic();
    if (!mosaic.isBayer()) {
      throw new IllegalArgumentException(
          "a DNG needs a camera with a Bayer mosaic; set \"mosaic\" to RGGB or write TIFF");
    }
    int width = camera.widthPx();
    int height = camera.heightPx();
    Ifd main = new Ifd();
    main.longs(254, 0).longs(256, width).longs(257, height).shorts(258, 16).shorts(259, 1);
    main.shorts(262, COLOUR_FILTER_ARRAY).shorts(277, 1).longs(278, height).shorts(284, 1);
    main.shorts(33421, 2, 2);
    main.bytes(
        33422,
        mosaic.channelAt(0, 0),
        mosaic.channelAt(1, 0),
        mosaic.channelAt(0, 1),
        mosaic.channelAt(1, 1));
    main.bytes(50706, 1, 4, 0, 0).bytes(50707, 1, 1, 0, 0);
    main.ascii(50708, camera.maker() + " " + camera.model());
    main.bytes(50710, 0, 1, 2).shorts(50711, 1);
    main.shorts(50713, 1, 1).longs(50714, camera.blackLevelCounts());
    main.longs(50717, camera.whiteLevelCounts());
    main.longs(50719, 0, 0).longs(50720, width, height);
    main.signedRationals(50721, XYZ_TO_CAMERA);
    Throughput seen = camera.throughput();
    double most = Math.max(seen.red(), Math.max(seen.green(), seen.blue()));
    main.rationals(50728, seen.red() / most, seen.green() / most, seen.blue() / most);
    main.shorts(50778, DAYLIGHT_D65).longs(50829, 0, 0, height, width);
    Exif.describe(frame, main);
    ByteBuffer pixels = ByteBuffer.allocate(2 * width * height).order(ByteOrder.LITTLE_ENDIAN);
    pixels.asCharBuffer().put(frame.counts());
    TiffFile.write(main, List.of(pixels.array()), out);
  }
}
