package rondure.report.layout;

import com.openhtmltopdf.extend.FSStream;
import com.openhtmltopdf.outputdevice.helper.ExternalResourceControlPriority;
import com.openhtmltopdf.pdfboxout.PdfRendererBuilder;
import java.io.ByteArrayInputStream;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.Reader;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import rondure.base.JpegPicture;

/**
 * All that a page may load: photographs of the night and files of the templates folder. Everything
 * else (other files, the network) is refused and remembered.
 */
final class PageResources {
  private static final String PHOTO = "photo";
  private static final String TEMPLATE = "template";
  private final TemplateFolder folder;
  private final Pictures pictures;
  private final List<TemplateProblem> refused = new ArrayList<>();

  PageResources(TemplateFolder folder, Pictures pictures) {
    this.folder = folder;
    this.pictures = pictures;
  }

  void guard(PdfRendererBuilder builder) {
    builder.useUriResolver((base, uri) -> resolve(uri));
    for (ExternalResourceControlPriority moment : ExternalResourceControlPriority.values()) {
      builder.useExternalResourceAccessControl((uri, type) -> isOurs(resolve(uri)), moment);
    }
    builder.useProtocolsStreamImplementation(this::open, PHOTO, TEMPLATE);
    builder.useHttpStreamImplementation(this::open);
  }

  /** Fails when a page asked for something it may not have. */
  void checkNothingRefused() throws TemplateProblem {
    if (!refused.isEmpty()) {
      throw refused.get(0);
    }
  }

  /** A name without scheme is a file of the templates folder. */
  private static String resolve(String uri) {
    String trimmed = uri == null ? "" : uri.trim();
    boolean complete =
        trimmed.startsWith("#") || trimmed.matches("(?s)(" + PHOTO + "|" + TEMPLATE + "|data):.*");
    return complete ? trimmed : TEMPLATE + ":" + trimmed;
  }

  private boolean isOurs(String uri) {
    if (uri.startsWith("data:") || uri.startsWith("#")) {
      return true;
    }
    try {
      bytes(uri);
      return true;
    } catch (TemplateProblem e) {
      refused.add(e);
      return false;
    }
  }

  private byte[] bytes(String uri) throws TemplateProblem {
    String name = uri.substring(uri.indexOf(':') + 1);
    if (uri.startsWith(PHOTO + ":")) {
      return pictures
          .photograph(name)
          .map(JpegPicture::bytes)
          .orElseThrow(() -> new TemplateProblem(uri, 0, "is no photograph of this report."));
    }
    return folder.bytes(name);
  }

  private FSStream open(String uri) {
    byte[] found;
    try {
      found = bytes(resolve(uri));
    } catch (TemplateProblem e) {
      refused.add(e);
      found = new byte[0];
    }
    byte[] bytes = found;
    return new FSStream() {
      @Override
      public InputStream getStream() {
        return new ByteArrayInputStream(bytes);
      }

      @Override
      public Reader getReader() {
        return new InputStreamReader(getStream(), StandardCharsets.UTF_8);
      }
    };
  }
}
