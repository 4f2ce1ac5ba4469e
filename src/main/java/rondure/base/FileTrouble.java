package rondure.base;

import java.io.FileNotFoundException;
import java.io.IOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileSystemException;
import java.nio.file.NoSuchFileException;

/** What the system's troubles with files mean, in words for people and without any path. */
public final class FileTrouble {
  private FileTrouble() {}

  /**
   * The trouble when a picture was opened or read.
   *
   * @param damage said of everything but a file that is gone or may not be read
   */
  public static FrameProblem ofPicture(IOException trouble, String damage) {
    if (trouble instanceof NoSuchFileException || trouble instanceof FileNotFoundException) {
      return new FrameProblem("the file is not there any more", trouble);
    }
    if (trouble instanceof AccessDeniedException) {
      return new FrameProblem("the file may not be read; change its permissions", trouble);
    }
    return new FrameProblem(damage, trouble);
  }

  /** Why something could not be read or written; never a path or the name of a class. */
  public static String words(IOException trouble) {
    if (trouble instanceof AccessDeniedException) {
      return "permission denied";
    }
    if (trouble instanceof NoSuchFileException || trouble instanceof FileNotFoundException) {
      return "a file or folder is not there any more";
    }
    if (trouble instanceof FileSystemException system) {
      String reason = system.getReason();
      return reason == null ? "the system refused it" : reason;
    }
    String message = trouble.getMessage();
    return message == null || message.isBlank() ? "reading or writing failed" : message;
  }
}
