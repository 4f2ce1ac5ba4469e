package rondure.report.picture;

import java.awt.Font;
import java.awt.FontFormatException;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import rondure.base.WorkFolder;

/**
 * The fonts of the report: Liberation (SIL Open Font License), packed with the program.
 *
 * <p>Style sheet and drawings use the same family names, so that each font is embedded once.
 */
public final class ReportFonts {
  public static final String SANS = "Liberation Sans";
  public static final String SERIF = "Liberation Serif";

  /** A font file of the program. */
  public enum Face {
    SANS_REGULAR(SANS, "LiberationSans-Regular"),
    SANS_BOLD(SANS, "LiberationSans-Bold"),
    SANS_ITALIC(SANS, "LiberationSans-Italic"),
    SERIF_REGULAR(SERIF, "LiberationSerif-Regular");

    private final String family;
    private final String resource;
    private Font font;

    Face(String family, String file) {
      this.family = family;
      this.resource = "/liberation/" + file + ".ttf";
    }

    public String family() {
      return family;
    }

    public boolean bold() {
      return this == SANS_BOLD;
    }

    public boolean italic() {
      return this == SANS_ITALIC;
    }

    /** The font file. */
    public InputStream open() {
      InputStream stream = ReportFonts.class.getResourceAsStream(resource);
      if (stream == null) {
        throw new IllegalStateException("the program lacks its font " + resource);
      }
      return stream;
    }

    /**
     * The font for drawing and for asking about glyphs, 1 unit high. Java draws from files only,
     * and would make a temporary one itself, which a killed run leaves for good.
     */
    public synchronized Font font() {
      if (font == null) {
        try {
          font = Font.createFont(Font.TRUETYPE_FONT, file().toFile());
        } catch (IOException e) {
          throw new UncheckedIOException(e);
        } catch (FontFormatException e) {
          throw new IllegalStateException("the program's font is damaged: " + resource, e);
        }
      }
      return font;
    }

    private Path file() throws IOException {
      Path file = WorkFolder.ofProgram().resolve(name() + ".ttf");
      try (InputStream stream = open()) {
        Files.copy(stream, file, StandardCopyOption.REPLACE_EXISTING);
      }
      return file;
    }
  }

  private ReportFonts() {}

  /** Sans serif for labels, size in CSS pixels. */
  public static Font sans(float size) {
    return Face.SANS_REGULAR.font().deriveFont(size);
  }

  /** Serif for large numbers, size in CSS pixels. */
  public static Font serif(float size) {
    return Face.SERIF_REGULAR.font().deriveFont(size);
  }

  /** Bold sans serif, size in CSS pixels. */
  public static Font bold(float size) {
    return Face.SANS_BOLD.font().deriveFont(Font.BOLD, size);
  }
}
