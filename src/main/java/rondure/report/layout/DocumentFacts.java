package rondure.report.layout;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.time.LocalDateTime;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.Calendar;
import java.util.GregorianCalendar;
import java.util.Locale;
import java.util.TimeZone;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDDocumentInformation;
import org.apache.pdfbox.pdmodel.common.PDMetadata;

/**
 * What the PDF says about itself; nothing in it depends on when, where or by whom it was made.
 *
 * @param title shown in the viewer's title bar
 * @param producer the program and its version
 * @param date the date of the contents, by the camera's clock
 */
public record DocumentFacts(String title, String producer, LocalDateTime date) {
  private static final Pattern XMP_DATE =
      Pattern.compile("(?<=<xmp:(Create|Modify)Date>)[^<]*(?=<)");
  private static final DateTimeFormatter DATE =
      DateTimeFormatter.ofPattern("uuuu-MM-dd'T'HH:mm:ss'Z'", Locale.ROOT);

  /** Writes date and producer and fixes the document id, which derives from {@code contentHash}. */
  void apply(PDDocument document, long contentHash) throws IOException {
    PDDocumentInformation information = document.getDocumentInformation();
    Calendar calendar = new GregorianCalendar(TimeZone.getTimeZone("UTC"), Locale.ROOT);
    calendar.setTimeInMillis(date.toInstant(ZoneOffset.UTC).toEpochMilli());
    information.setCreationDate(calendar);
    information.setModificationDate(calendar);
    information.setTitle(title);
    information.setProducer(producer);
    information.setCreator(producer);
    document.setDocumentId(contentHash);
    PDMetadata metadata = document.getDocumentCatalog().getMetadata();
    String packet = new String(metadata.toByteArray(), StandardCharsets.UTF_8);
    metadata.importXMPMetadata(dated(packet).getBytes(StandardCharsets.UTF_8));
  }

  /** The XMP packet with the date of the contents in place of that of the run. */
  private String dated(String packet) {
    Matcher dates = XMP_DATE.matcher(packet);
    return dates.replaceAll(DATE.format(date));
  }
}
