package rondure.intake;

import java.nio.ByteBuffer;
import java.util.Optional;

/**
 * The tone curve of an embedded ICC profile: its green or grey TRC (ICC.1:2010, curveType §10.5 and
 * parametricCurveType §10.15).
 *
 * <p>Read by hand because the JDK's profile classes know no parametric curves.
 */
final class IccProfile {
  private static final int TAG_TABLE = 128;
  private static final int MOST_TAGS = 200;
  private static final int MOST_POINTS = 65_536;

  private IccProfile() {}

  /** The curve; empty when the profile is damaged or works by lookup tables only. */
  static Optional<ToneCurve> curve(byte[] profile) {
    try {
      ByteBuffer bytes = ByteBuffer.wrap(profile);
      int tags = Math.min(bytes.getInt(TAG_TABLE), MOST_TAGS);
      for (int i = 0; i < tags; i++) {
        int entry = TAG_TABLE + 4 + 12 * i;
        int signature = bytes.getInt(entry);
        if (signature == code("gTRC") || signature == code("kTRC")) {
          return Optional.of(element(bytes, bytes.getInt(entry + 4)));
        }
      }
      return Optional.empty();
    } catch (IndexOutOfBoundsException | IllegalArgumentException damaged) {
      return Optional.empty();
    }
  }

  private static ToneCurve element(ByteBuffer bytes, int at) {
    int type = bytes.getInt(at);
    if (type == code("curv")) {
      return sampled(bytes, at);
    }
    if (type == code("para")) {
      return parametric(bytes, at);
    }
    throw new IllegalArgumentException("unknown curve type");
  }

  private static ToneCurve sampled(ByteBuffer bytes, int at) {
    int count = bytes.getInt(at + 8);
    if (count == 0) {
      return ToneCurve.LINEAR;
    }
    if (count == 1) {
      return ToneCurve.power((bytes.getShort(at + 12) & 0xFFFF) / 256.0);
    }
    if (count < 0 || count > MOST_POINTS) {
      throw new IllegalArgumentException("curve of " + count + " points");
    }
    double[] light = new double[count];
    for (int i = 0; i < count; i++) {
      light[i] = (bytes.getShort(at + 12 + 2 * i) & 0xFFFF) / 65_535.0;
    }
    return ToneCurve.points(light);
  }

  /** Y = (a X + b)^g + e from d on, c X + f below it; simpler types fix some of the seven. */
  private static ToneCurve parametric(ByteBuffer bytes, int at) {
    int kind = bytes.getShort(at + 8);
    int[] counts = {1, 3, 4, 5, 7};
    if (kind < 0 || kind >= counts.length) {
      throw new IllegalArgumentException("parametric curve of type " + kind);
    }
    double[] read = new double[counts[kind]];
    for (int i = 0; i < read.length; i++) {
      read[i] = bytes.getInt(at + 12 + 4 * i) / 65_536.0;
    }
    double g = read[0];
    double a = kind == 0 ? 1 : read[1];
    double b = kind == 0 ? 0 : read[2];
    return switch (kind) {
      case 0 -> ToneCurve.power(g);
      case 1 -> pieces(g, a, b, new double[] {0, -b / a, 0, 0});
      case 2 -> pieces(g, a, b, new double[] {0, -b / a, read[3], read[3]});
      case 3 -> pieces(g, a, b, new double[] {read[3], read[4], 0, 0});
      default -> pieces(g, a, b, new double[] {read[3], read[4], read[5], read[6]});
    };
  }

  private static ToneCurve pieces(double g, double a, double b, double[] cdef) {
    if (!(g > 0.1 && g < 10) || !(a > 0)) {
      throw new IllegalArgumentException("parametric curve with exponent " + g + ", factor " + a);
    }
    return x ->
        x >= cdef[1] ? Math.pow(Math.max(0, a * x + b), g) + cdef[2] : cdef[0] * x + cdef[3];
  }

  private static int code(String signature) {
    return ByteBuffer.wrap(signature.getBytes(java.nio.charset.StandardCharsets.US_ASCII)).getInt();
  }
}
