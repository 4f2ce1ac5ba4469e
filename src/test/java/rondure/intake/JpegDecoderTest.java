package rondure.intake;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import rondure.base.FrameProblem;

class JpegDecoderTest {

  static BufferedImage patches(int type) {
    BufferedImage picture = new BufferedImage(256, 64, type);
    for (int y = 0; y < 64; y++) {
      for (int x = 0; x < 256; x++) {
        for (int band = 0; band < picture.getRaster().getNumBands(); band++) {
          picture.getRaster().setSample(x, y, band, x / 32 * 32 + 8);
        }
      }
    }
    return picture;
  }

  @ParameterizedTest
  @ValueSource(ints = {BufferedImage.TYPE_BYTE_GRAY, BufferedImage.TYPE_3BYTE_BGR})
  void flatPatchesComeBackWithTheSrgbCurveUndone(int type) throws IOException, FrameProblem {
    DecodedFrame frame = Decoding.decode(PngDecoderTest.written(patches(type), "jpeg"));
    assertEquals(Linearity.DEVELOPED, frame.linearity());
    for (int patch = 0; patch < 8; patch++) {
      double code = frame.plane().at(patch * 32 + 16, 32);
      double below = 65_535 * ToneCurve.SRGB.light((patch * 32 + 7) / 255.0);
      double above = 65_535 * ToneCurve.SRGB.light((patch * 32 + 9) / 255.0);
      assertTrue(code >= below - 0.01 && code <= above + 0.01, "patch " + patch + ": " + code);
    }
  }

  @ParameterizedTest
  @ValueSource(ints = {BufferedImage.TYPE_BYTE_GRAY, BufferedImage.TYPE_3BYTE_BGR})
  void anEmbeddedProfileIsUndoneOnce(int type) throws IOException, FrameProblem {
    boolean grey = type == BufferedImage.TYPE_BYTE_GRAY;
    int space = grey ? java.awt.color.ColorSpace.CS_GRAY : java.awt.color.ColorSpace.CS_LINEAR_RGB;
    byte[] profile = java.awt.color.ICC_Profile.getInstance(space).getData();
    byte[] plain = PngDecoderTest.written(patches(type), "jpeg");
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    out.write(plain, 0, 2);
    // the JFIF segment stays first
    int jfif = 2 + ((plain[4] & 0xFF) << 8 | plain[5] & 0xFF);
    out.write(plain, 2, jfif);
    int length = profile.length + 16;
    out.writeBytes(new byte[] {(byte) 0xFF, (byte) 0xE2, (byte) (length >> 8), (byte) length});
    out.writeBytes("ICC_PROFILE\0".getBytes(StandardCharsets.US_ASCII));
    out.writeBytes(new byte[] {1, 1});
    out.writeBytes(profile);
    out.write(plain, 2 + jfif, plain.length - 2 - jfif);
    DecodedFrame frame = Decoding.decode(out.toByteArray());
    for (int patch = 0; patch < 8; patch++) {
      double code = (patch * 32 + 8) * 257;
      assertEquals(code, frame.plane().at(patch * 32 + 16, 32), 300, "patch " + patch);
    }
  }

  @Test
  void aPartialPictureIsRefused() throws IOException {
    BufferedImage noise = new BufferedImage(200, 150, BufferedImage.TYPE_3BYTE_BGR);
    java.util.Random random = new java.util.Random(3);
    for (int i = 0; i < 200 * 150; i++) {
      noise.setRGB(i % 200, i / 200, random.nextInt());
    }
    byte[] whole = PngDecoderTest.written(noise, "jpeg");
    for (int length = 3; length < whole.length - 2; length += 397) {
      Decoding.refusal(Arrays.copyOf(whole, length));
    }
    String half = Decoding.refusal(Arrays.copyOf(whole, whole.length / 2));
    assertTrue(half.contains("cut short"), half);
  }

  @Test
  void cmykIsRefusedByName() throws IOException {
    byte[] file = PngDecoderTest.written(patches(BufferedImage.TYPE_3BYTE_BGR), "jpeg");
    for (int i = 0; i < file.length - 10; i++) {
      if (file[i] == (byte) 0xFF && file[i + 1] == (byte) 0xC0) {
        file[i + 9] = 4;
      }
    }
    assertTrue(Decoding.refusal(file).contains("CMYK"));
  }
}
