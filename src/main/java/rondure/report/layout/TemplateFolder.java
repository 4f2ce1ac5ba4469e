package rondure.report.layout;

import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import java.util.regex.Pattern;

/**
 * Template files by name: the user's folder first, then the ones that come with the program.
 *
 * <p>A name never leads out of the folder: no "..", no absolute path, no link to elsewhere.
 */
public final class TemplateFolder {
  private static final Pattern NAME = Pattern.compile("\\w[\\w-]*(\\.\\w[\\w-]*)*");
  private static final int LARGEST_BYTES = 16 << 20;
  private final Optional<Path> userFolder;

  private TemplateFolder(Optional<Path> userFolder) {
    this.userFolder = userFolder;
  }

  /**
   * @param folder the user's templates; files it lacks come from the program
   * @throws TemplateProblem when the folder is not there
   */
  public static TemplateFolder of(Optional<Path> folder) throws TemplateProblem {
    if (folder.isEmpty()) {
      return new TemplateFolder(folder);
    }
    try {
      Path real = folder.get().toRealPath();
      if (Files.isDirectory(real)) {
        return new TemplateFolder(Optional.of(real));
      }
    } catch (IOException e) {
      // Told below, in the same words as for a file in the folder's place.
    }
    throw new TemplateProblem(
        "The templates folder "
            + folder.get()
            + " is not a folder that can be read; give a folder of templates, or none.");
  }

  /** The text of a template, UTF-8. */
  public String text(String name) throws TemplateProblem {
    try {
      return StandardCharsets.UTF_8.newDecoder().decode(ByteBuffer.wrap(bytes(name))).toString();
    } catch (CharacterCodingException e) {
      throw new TemplateProblem(name, 0, "is not UTF-8 text; save it as UTF-8.");
    }
  }

  /** The bytes of a template, style sheet or picture of the folder. */
  public byte[] bytes(String name) throws TemplateProblem {
    if (!NAME.matcher(name).matches()) {
      throw new TemplateProblem(
          name, 0, "is not the name of a file inside the templates folder; copy it there.");
    }
    try {
      Optional<Path> own = ownFile(name);
      if (own.isPresent()) {
        return Files.readAllBytes(own.get());
      }
      try (InputStream bundled = TemplateFolder.class.getResourceAsStream("/templates/" + name)) {
        if (bundled != null) {
          return bundled.readAllBytes();
        }
      }
    } catch (TemplateProblem e) {
      throw e;
    } catch (IOException e) {
      throw new TemplateProblem(name, 0, "cannot be read; check its permissions.");
    }
    throw new TemplateProblem(name, 0, "is in neither the templates folder nor the program.");
  }

  private Optional<Path> ownFile(String name) throws IOException {
    if (userFolder.isEmpty() || !Files.exists(userFolder.get().resolve(name))) {
      return Optional.empty();
    }
    Path real = userFolder.get().resolve(name).toRealPath();
    if (!real.startsWith(userFolder.get())) {
      throw new TemplateProblem(name, 0, "links out of the templates folder; copy the file there.");
    }
    if (Files.size(real) > LARGEST_BYTES) {
      throw new TemplateProblem(name, 0, "is larger than 16 MB; use a smaller file.");
    }
    return Optional.of(real);
  }
}
