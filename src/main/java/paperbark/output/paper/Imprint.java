package paperbark.output.paper;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.Calendar;
import java.util.GregorianCalendar;
import java.util.List;
import java.util.TimeZone;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDDocumentCatalog;
import org.apache.pdfbox.pdmodel.PDDocumentInformation;
import org.apache.pdfbox.pdmodel.common.PDMetadata;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDMarkInfo;
import org.apache.pdfbox.pdmodel.graphics.color.PDOutputIntent;
import org.apache.pdfbox.pdmodel.interactive.viewerpreferences.PDViewerPreferences;
import paperbark.output.BatchInfo;
import paperbark.output.CaseFile;
import paperbark.output.pdf.ScreenColours;

/**
 * What a document says of itself. Day and id come from the batch, so that the same work gives the
 * same bytes.
 *
 * @param title of the document
 * @param author the firm
 * @param batch what the batch says of itself
 * @param claims which standards it keeps
 */
record Imprint(String title, String author, BatchInfo batch, Conformance claims) {
    private static final String SRGB = "sRGB IEC61966-2.1";

    static Imprint of(CaseFile caseFile, String title, Conformance claims) {
        return new Imprint(title, caseFile.firm().name(), caseFile.batch(), claims);
    }

    /** Writes title, author, day, language, id, colours and claims into the document. */
    void stamp(PDDocument document) throws IOException {
        PDDocumentInformation information = new PDDocumentInformation();
        information.setTitle(title);
        information.setAuthor(author);
        information.setSubject(subject());
        information.setCreator(program());
        information.setProducer(program());
        information.setCreationDate(midnight(batch.preparedOn()));
        information.setModificationDate(midnight(batch.preparedOn()));
        document.setDocumentInformation(information);
        document.setDocumentId((long) (batch.id() + title).hashCode());
        PDDocumentCatalog catalog = document.getDocumentCatalog();
        catalog.setLanguage("en-AU");
        PDViewerPreferences preferences = new PDViewerPreferences(new COSDictionary());
        preferences.setDisplayDocTitle(true);
        catalog.setViewerPreferences(preferences);
        PDMarkInfo tagged = new PDMarkInfo();
        tagged.setMarked(true);
        catalog.setMarkInfo(tagged);
        catalog.setOutputIntents(List.of(colours()));
        PDMetadata metadata = new PDMetadata(document);
        metadata.importXMPMetadata(
                Xmp.of(title, author, subject(), program(), batch.preparedOn(), claims)
                        .getBytes(StandardCharsets.UTF_8));
        catalog.setMetadata(metadata);
    }

    private String subject() {
        return "Batch " + batch.id();
    }

    private String program() {
        return "Paperbark " + batch.program();
    }

    /** The colours of all papers are meant as those of an ordinary screen or printer. */
    private static PDOutputIntent colours() throws IOException {
        COSDictionary entries = new COSDictionary();
        entries.setItem(COSName.TYPE, COSName.OUTPUT_INTENT);
        entries.setItem(COSName.S, COSName.GTS_PDFA1);
        entries.setItem(COSName.DEST_OUTPUT_PROFILE, ScreenColours.stream());
        PDOutputIntent intent = new PDOutputIntent(entries);
        intent.setInfo(SRGB);
        intent.setOutputCondition(SRGB);
        intent.setOutputConditionIdentifier(SRGB);
        intent.setRegistryName("http://www.color.org");
        return intent;
    }

    private static Calendar midnight(LocalDate day) {
        Calendar calendar = new GregorianCalendar(TimeZone.getTimeZone("UTC"));
        calendar.setTimeInMillis(day.atStartOfDay(ZoneOffset.UTC).toInstant().toEpochMilli());
        return calendar;
    }
}
