package rondure.base;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import java.io.FileNotFoundException;
import java.io.IOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileSystemException;
import java.nio.file.NoSuchFileException;
import java.util.List;
import org.junit.jupiter.api.Test;

class FileTroubleTest {
  private static final String PATH = "/home/someone/night/frame.tif";

  private static String picture(IOException trouble) {
    return FileTrouble.ofPicture(trouble, "damaged").getMessage();
  }

  @Test
  void aPictureThatMayNotBeReadOrIsGoneIsNoDamage() {
    assertEquals(
        "the file may not be read; change its permissions",
        picture(new AccessDeniedException(PATH)));
    assertEquals("the file is not there any more", picture(new NoSuchFileException(PATH)));
    assertEquals("the file is not there any more", picture(new FileNotFoundException(PATH)));
    assertEquals("damaged", picture(new IOException("Input/output error")));
  }

  @Test
  void wordsNeverHoldAPathOrTheNameOfAClass() {
    for (IOException trouble :
        List.of(
            new AccessDeniedException(PATH),
            new NoSuchFileException(PATH),
            new FileSystemException(PATH),
            new FileSystemException(PATH, null, "No space left on device"),
            new IOException())) {
      String words = FileTrouble.words(trouble);
      assertFalse(words.contains("someone") || words.contains("Exception"), words);
      assertFalse(words.isBlank());
    }
    assertEquals(
        "No space left on device",
        FileTrouble.words(new FileSystemException(PATH, null, "No space left on device")));
  }
}
