package paperbark.output.paper;

import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.Calendar;
import java.util.GregorianCalendar;
import java.util.TimeZone;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDDocumentInformation;
import org.apache.pdfbox.pdmodel.interactive.viewerpreferences.PDViewerPreferences;
import paperbark.output.BatchInfo;
import paperbark.output.CaseFile;

/**
 * What a document says of itself. Day and id come from the batch, so that the same work gives the
 * same bytes.
 *
 * @param title of the document
 * @param author the firm
 * @param batch what the batch says of itself
 */
record Imprint(String title, String author, BatchInfo batch) {
    static Imprint of(CaseFile caseFile, String title) {
        return new Imprint(title, caseFile.firm().name(), caseFile.batch());
    }

    /** Writes title, author, day, language and id into the document. */
    void stamp(PDDocument document) {
        PDDocumentInformation information = new PDDocumentInformation();
        information.setTitle(title);
        information.setAuthor(author);
        information.setSubject("Batch " + batch.id());
        information.setCreator("Paperbark " + batch.program());
        information.setProducer("Paperbark " + batch.program());
        information.setCreationDate(midnight(batch.preparedOn()));
        information.setModificationDate(midnight(batch.preparedOn()));
        document.setDocumentInformation(information);
        document.setDocumentId((long) (batch.id() + title).hashCode());
        document.getDocumentCatalog().setLanguage("en-AU");
        PDViewerPreferences preferences = new PDViewerPreferences(new COSDictionary());
        preferences.setDisplayDocTitle(true);
        document.getDocumentCatalog().setViewerPreferences(preferences);
    }

    private static Calendar midnight(LocalDate day) {
        Calendar calendar = new GregorianCalendar(TimeZone.getTimeZone("UTC"));
        calendar.setTimeInMillis(day.atStartOfDay(ZoneOffset.UTC).toInstant().toEpochMilli());
        return calendar;
    }
}
