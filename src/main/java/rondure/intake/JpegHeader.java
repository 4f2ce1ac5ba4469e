package rondure.intake;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import rondure.base.FrameProblem;

/**
 * What the markers of a JPEG say before its pixels begin (ITU-T T.81, annex B).
 *
 * @param size the picture
 * @param curve the tone curve of an embedded ICC profile, if it can be read
 * @param frameAt where in the file the frame header begins
 * @param profileAt where in the file the segments with pieces of the profile have their contents
 */
record JpegHeader(RasterSize size, Optional<ToneCurve> curve, long frameAt, List<Long> profileAt) {
  private static final int MOST_MARKERS = 2000;
  private static final String ADVICE = "; export a linear 16-bit TIFF";

  JpegHeader {
    profileAt = List.copyOf(profileAt);
  }

  /**
   * Reads up to the frame header.
   *
   * @throws FrameProblem naming a kind of JPEG that is not read
   */
  static JpegHeader read(FileBytes file) throws IOException, FrameProblem {
    ByteArrayOutputStream profile = new ByteArrayOutputStream();
    List<Long> profileAt = new ArrayList<>();
    long at = 2;
    for (int i = 0; i < MOST_MARKERS; i++) {
      ByteBuffer segment = file.read(at, 4);
      int marker = segment.getShort() & 0xFFFF;
      int length = segment.getShort() & 0xFFFF;
      if (marker >> 8 != 0xFF || length < 2 && marker != 0xFFFF) {
        break;
      }
      if (marker == 0xFFFF) {
        at++;
        continue;
      }
      if (isFrame(marker)) {
        RasterSize size = frame(marker, file.read(at + 4, 6), file.limits());
        return new JpegHeader(size, IccProfile.curve(profile.toByteArray()), at, profileAt);
      }
      if (marker == 0xFFE2 && keepProfile(file.read(at + 4, length - 2).array(), profile)) {
        profileAt.add(at + 4);
      }
      at += 2 + length;
    }
    throw new FrameProblem("the JPEG holds no picture header; the file is damaged");
  }

  private static boolean isFrame(int marker) {
    boolean table = marker == 0xFFC4 || marker == 0xFFC8 || marker == 0xFFCC;
    return marker >= 0xFFC0 && marker <= 0xFFCF && !table || marker == 0xFFF7;
  }

  private static RasterSize frame(int marker, ByteBuffer header, ReadingLimits limits)
      throws FrameProblem {
    int precision = header.get();
    int height = header.getShort() & 0xFFFF;
    int width = header.getShort() & 0xFFFF;
    int components = header.get() & 0xFF;
    if (marker > 0xFFC2) {
      String kind = marker == 0xFFC3 || marker == 0xFFF7 ? "lossless" : "arithmetic or staged";
      throw new FrameProblem("this is a JPEG of the " + kind + " kind, which is not read" + ADVICE);
    }
    if (precision != 8) {
      throw new FrameProblem("this JPEG has " + precision + " bits per sample" + ADVICE);
    }
    if (components == 4) {
      throw new FrameProblem("this is a CMYK JPEG, which is not read; export it as RGB");
    }
    if (components != 1 && components != 3) {
      throw new FrameProblem("this JPEG has " + components + " colours" + ADVICE);
    }
    return RasterSize.of(limits, width, height);
  }

  private static boolean keepProfile(byte[] segment, ByteArrayOutputStream profile) {
    byte[] signature = "ICC_PROFILE\0".getBytes(StandardCharsets.US_ASCII);
    int start = signature.length + 2;
    boolean mine =
        segment.length > start
            && Arrays.equals(segment, 0, signature.length, signature, 0, signature.length);
    if (mine) {
      profile.write(segment, start, segment.length - start);
    }
    return mine;
  }
}
