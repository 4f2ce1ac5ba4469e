package rondure.intake;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import rondure.base.FrameProblem;
import rondure.base.Orientation;

/** Runs over a folder of real photographs, when one is given. */
class RealFramesTest {
  private Path folder = Path.of("");

  @BeforeEach
  void aFolderIsGiven() {
    String given = System.getProperty("rondure.realFrames", "");
    assumeTrue(!given.isBlank(), "give -Drondure.realFrames=DIR to decode real photographs");
    folder = Path.of(given);
  }

  @Test
  void everyRealPictureIsDecoded() throws IOException, FrameProblem {
    List<Path> pictures;
    try (Stream<Path> files = Files.walk(folder)) {
      pictures =
          files
              .filter(file -> lowerName(file).matches(".*\\.(jpg|png|tiff?|fits|dng|crw)"))
              .collect(Collectors.toList());
    }
    assertTrue(!pictures.isEmpty(), "no pictures in " + folder);
    boolean raw = RawSupport.status() instanceof RawSupport.Available;
    for (Path picture : pictures) {
      if (raw || !lowerName(picture).matches(".*\\.(dng|crw)")) {
        DecodedFrame frame = FrameDecoder.decode(picture, ImageFormat.JPEG, Orientation.NORMAL);
        int longer = Math.max(frame.plane().widthPx(), frame.plane().heightPx());
        assertTrue(longer >= 400, picture + " is only " + longer + " px");
        assertEquals(
            Math.min(640, longer),
            Math.max(Decoding.thumbnail(frame).getWidth(), Decoding.thumbnail(frame).getHeight()),
            longer / 2.0,
            picture.toString());
      }
    }
  }

  private static String lowerName(Path file) {
    return file.getFileName().toString().toLowerCase(Locale.ROOT);
  }
}
