package rondure.report.layout;

import java.time.LocalDateTime;
import java.time.ZoneOffset;
import java.util.Calendar;
import java.util.GregorianCalendar;
import java.util.Locale;
import java.util.TimeZone;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDDocumentInformation;

/**
 * What the PDF says about itself; nothing in it depends on when, where or by whom it was made.
 *
 * @param title shown in the viewer's title bar
 * @param producer the program and its version
 * @param date the date of the contents, by the camera's clock
 */
public record DocumentFacts(String title, String producer, LocalDateTime date) {

  /** Writes date and producer and fixes the document id, which derives from {@code contentHash}. */
  void apply(PDDocument document, long contentHash) {
    PDDocumentInformation information = document.getDocumentInformation();
    Calendar calendar = new GregorianCalendar(TimeZone.getTimeZone("UTC"), Locale.ROOT);
    calendar.setTimeInMillis(date.toInstant(ZoneOffset.UTC).toEpochMilli());
    information.setCreationDate(calendar);
    information.setModificationDate(calendar);
    information.setTitle(title);
    information.setProducer(producer);
    information.setCreator(producer);
    document.setDocumentId(contentHash);
  }
}
