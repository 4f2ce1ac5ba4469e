package rondure.intake;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.zip.CRC32;
import java.util.zip.InflaterInputStream;
import rondure.base.FrameProblem;

/**
 * The chunks of a PNG (ISO/IEC 15948): size, depth and tone curve; and the proof that the file is
 * whole, which the JDK's reader does not ask for.
 *
 * @param size the picture
 * @param bits per sample
 * @param bitsPerPixel of the unpacked picture
 * @param tagged the tone curve that the file states, if any
 * @param profiled true when there is a profile, readable or not
 * @param picture the parts of the file that make the picture
 */
record PngChunks(
    RasterSize size,
    int bits,
    int bitsPerPixel,
    Optional<ToneCurve> tagged,
    boolean profiled,
    List<PngStream.Part> picture) {
  private static final Set<String> PICTURE = Set.of("IHDR", "PLTE", "tRNS", "IDAT", "IEND");
  private static final int SIGNATURE_BYTES = 8;
  private static final int HEADER_AT = 16;
  private static final int HEADER_BYTES = 13;
  private static final int PIECE = 1 << 18;

  PngChunks {
    picture = List.copyOf(picture);
  }

  /**
   * @throws FrameProblem when a chunk is missing, cut short or has a wrong check sum
   */
  static PngChunks read(FileBytes file) throws IOException, FrameProblem {
    ByteBuffer header = file.read(HEADER_AT, HEADER_BYTES);
    PngWalk walk = new PngWalk(file);
    if (!walk.next() || !walk.name().equals("IHDR")) {
      throw new FrameProblem("the PNG does not start with its header; copy it again");
    }
    RasterSize size =
        RasterSize.of(file.limits(), header.getInt() & 0xFFFFFFFFL, header.getInt() & 0xFFFFFFFFL);
    int bits = header.get();
    int colourType = header.get();
    int samples = new int[] {1, 1, 3, 1, 2, 1, 4, 1}[colourType & 7];
    ByteBuffer profile = ByteBuffer.allocate(0);
    ByteBuffer gamma = ByteBuffer.allocate(0);
    boolean srgb = false;
    List<PngStream.Part> picture = PngStream.beginning(SIGNATURE_BYTES);
    do {
      if (PICTURE.contains(walk.name())) {
        PngStream.add(picture, walk.at(), walk.length() + PngWalk.AROUND);
      }
      checkSum(file, walk.at(), walk.length());
      switch (walk.name()) {
        case "iCCP" -> profile = walk.content(file.limits().metadataBytes());
        case "gAMA" -> gamma = walk.content(Integer.BYTES);
        case "sRGB" -> srgb = true;
        default -> {}
      }
    } while (walk.next());
    Optional<ToneCurve> tagged =
        profile.hasRemaining()
            ? inflated(profile, file.limits().metadataBytes())
            : stated(srgb, gamma);
    return new PngChunks(size, bits, samples * bits, tagged, profile.hasRemaining(), picture);
  }

  private static void checkSum(FileBytes file, long at, long length)
      throws IOException, FrameProblem {
    CRC32 sum = new CRC32();
    long end = at + 8 + length;
    for (long piece = at + 4; piece < end; piece += PIECE) {
      sum.update(file.read(piece, (int) Math.min(PIECE, end - piece)));
    }
    if ((int) sum.getValue() != file.read(end, 4).getInt()) {
      throw new FrameProblem(
          "the PNG is damaged at byte " + at + " (wrong check sum); copy it again");
    }
  }

  private static Optional<ToneCurve> stated(boolean srgb, ByteBuffer gamma) {
    if (srgb) {
      return Optional.of(ToneCurve.SRGB);
    }
    if (gamma.remaining() < Integer.BYTES) {
      return Optional.empty();
    }
    double exponent = 100_000.0 / (gamma.getInt() & 0xFFFFFFFFL);
    return exponent > 0.1 && exponent < 10
        ? Optional.of(ToneCurve.power(exponent))
        : Optional.empty();
  }

  /** The curve of an iCCP chunk: a name, a zero, the method, then the packed profile. */
  private static Optional<ToneCurve> inflated(ByteBuffer chunk, int mostBytes) throws IOException {
    byte[] bytes = chunk.array();
    int start = 0;
    while (start < bytes.length && bytes[start] != 0) {
      start++;
    }
    int packed = Math.min(bytes.length, start + 2);
    try (InflaterInputStream in =
        new InflaterInputStream(new ByteArrayInputStream(bytes, packed, bytes.length - packed))) {
      return IccProfile.curve(in.readNBytes(mostBytes));
    } catch (java.util.zip.ZipException | java.io.EOFException damaged) {
      return Optional.empty();
    }
  }
}
