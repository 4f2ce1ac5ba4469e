package rondure.intake;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.color.ColorSpace;
import java.awt.color.ICC_Profile;
import java.awt.color.ICC_ProfileRGB;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.stream.IntStream;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import rondure.base.FrameProblem;

class IccProfileTest {

  /** A profile with one tag, laid out as in ICC.1:2010, section 7. */
  static byte[] profile(String tag, byte[] element) {
    ByteBuffer bytes = ByteBuffer.allocate(128 + 4 + 12 + element.length);
    bytes.putInt(0, bytes.capacity());
    bytes.position(128);
    bytes.putInt(1).put(tag.getBytes(StandardCharsets.US_ASCII));
    bytes.putInt(144).putInt(element.length).put(element);
    return bytes.array();
  }

  /** curveType: a count, then the values (a single one is an exponent in 1/256). */
  static byte[] sampled(int... values) {
    ByteBuffer bytes = ByteBuffer.allocate(12 + 2 * values.length);
    bytes.put("curv".getBytes(StandardCharsets.US_ASCII)).putInt(0).putInt(values.length);
    for (int value : values) {
      bytes.putShort((short) value);
    }
    return bytes.array();
  }

  /** parametricCurveType: function type, then parameters in 1/65536. */
  static byte[] parametric(int type, double... parameters) {
    ByteBuffer bytes = ByteBuffer.allocate(12 + 4 * parameters.length);
    bytes.put("para".getBytes(StandardCharsets.US_ASCII)).putInt(0);
    bytes.putShort((short) type).putShort((short) 0);
    for (double parameter : parameters) {
      bytes.putInt((int) Math.round(parameter * 65_536));
    }
    return bytes.array();
  }

  /** Half a step of a 16-bit table comes on top of the relative tolerance. */
  private static void assertSame(ToneCurve wanted, byte[] profile, double relative) {
    ToneCurve read = IccProfile.curve(profile).orElseThrow();
    for (double code = 0.02; code <= 1; code += 0.02) {
      assertEquals(
          wanted.light(code), read.light(code), relative * wanted.light(code) + 0.5 / 65_535);
    }
  }

  @ParameterizedTest
  @ValueSource(doubles = {1.0, 1.8, 2.2, 2.4})
  void exponentsAreUndone(double exponent) {
    ToneCurve wanted = code -> Math.pow(code, exponent);
    int coded = (int) Math.round(exponent * 256);
    assertSame(wanted, profile("gTRC", sampled(coded)), 0.01);
    assertSame(wanted, profile("kTRC", parametric(0, exponent)), 0.005);
    int[] table =
        IntStream.range(0, 1024)
            .map(i -> (int) Math.round(65_535 * Math.pow(i / 1023.0, exponent)))
            .toArray();
    assertSame(wanted, profile("gTRC", sampled(table)), 0.005);
  }

  @Test
  void parametricSrgbIsIec61966() {
    // ICC.1:2010, table 65, function type 3 with the constants of IEC 61966-2-1.
    byte[] element = parametric(3, 2.4, 1 / 1.055, 0.055 / 1.055, 1 / 12.92, 0.04045);
    assertSame(ToneCurve.SRGB, profile("gTRC", element), 0.005);
    byte[] general = parametric(4, 2.4, 1 / 1.055, 0.055 / 1.055, 1 / 12.92, 0.04045, 0, 0);
    assertSame(ToneCurve.SRGB, profile("gTRC", general), 0.005);
  }

  @Test
  void parametricFormsWithOffsetsFollowTheStandard() {
    // ICC.1:2010, table 65: Y = (aX+b)^g for X >= -b/a else 0; with c: the same + c, else c.
    ToneCurve clipped = code -> code >= 0.1 ? Math.pow(1.25 * code - 0.125, 2) : 0;
    assertSame(clipped, profile("gTRC", parametric(1, 2, 1.25, -0.125)), 0.005);
    ToneCurve lifted = code -> clipped.light(code) + 0.0625;
    assertSame(lifted, profile("gTRC", parametric(2, 2, 1.25, -0.125, 0.0625)), 0.005);
  }

  @Test
  void profilesOfTheJdkAreReadAsTheJdkReadsThem() {
    ICC_ProfileRGB srgb = (ICC_ProfileRGB) ICC_Profile.getInstance(ColorSpace.CS_sRGB);
    assertSame(ToneCurve.SRGB, srgb.getData(), 0.005);
    byte[] linear = ICC_Profile.getInstance(ColorSpace.CS_LINEAR_RGB).getData();
    assertSame(ToneCurve.LINEAR, linear, 0.005);
    byte[] grey = ICC_Profile.getInstance(ColorSpace.CS_GRAY).getData();
    assertSame(ToneCurve.LINEAR, grey, 0.005);
  }

  @Property
  void damagedProfilesAreNoCurve(
      @ForAll byte[] bytes, @ForAll @DoubleRange(min = 0, max = 1) double code) {
    IccProfile.curve(bytes).ifPresent(curve -> curve.light(code));
  }

  @Test
  void sixteenBitTiffWithProfileIsLinearised() throws FrameProblem {
    TestTiff tiff = new TestTiff();
    tiff.profile = profile("gTRC", parametric(0, 1.8));
    DecodedFrame frame = Decoding.decode(tiff.write((x, y, s) -> 30_000));
    assertEquals(Linearity.TAGGED, frame.linearity());
    double wanted = Math.pow(30_000 / 65_535.0, 1.8) * 65_535;
    assertEquals(wanted, frame.plane().at(2, 2), 0.005 * wanted);
  }

  @Test
  void aProfileWithoutCurveIsNotCalledLinear() throws FrameProblem {
    TestTiff tiff = new TestTiff();
    tiff.profile = profile("A2B0", new byte[32]);
    assertEquals(Linearity.DEVELOPED, Decoding.decode(tiff.write((x, y, s) -> 9)).linearity());
    assertTrue(IccProfile.curve(new byte[0]).isEmpty());
  }
}
