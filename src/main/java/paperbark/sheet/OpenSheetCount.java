package paperbark.sheet;

import static paperbark.finding.FindingCode.FILE_TOO_LARGE;
import static paperbark.finding.FindingCode.FILE_UNREADABLE;

import java.io.IOException;
import java.io.InputStream;
import java.util.List;
import java.util.Set;
import java.util.zip.ZipEntry;
import java.util.zip.ZipFile;
import javax.xml.parsers.ParserConfigurationException;
import org.apache.poi.util.XMLHelper;
import org.xml.sax.Attributes;
import org.xml.sax.InputSource;
import org.xml.sax.SAXException;
import org.xml.sax.XMLReader;
import org.xml.sax.helpers.DefaultHandler;
import paperbark.finding.Place;

/**
 * Counts the rows and cells of an OpenDocument spreadsheet as a stream. There a few letters say
 * that a cell or row is repeated a million times, and the library would make all of them.
 */
final class OpenSheetCount extends DefaultHandler {
    private static final String NO_DOCTYPE = "http://apache.org/xml/features/disallow-doctype-decl";
    private static final String TABLE = "urn:oasis:names:tc:opendocument:xmlns:table:1.0";
    private static final String OFFICE = "urn:oasis:names:tc:opendocument:xmlns:office:1.0";
    private static final String CONTENT = "content.xml";

    /**
     * The parts that say what the cells hold. Others may be empty or begin with a document type in
     * files that spreadsheet programs save: those of shortcuts and of macros.
     */
    static final Set<String> READ = Set.of(CONTENT, "styles.xml");

    private long row;
    private long column;
    private long rowTimes;
    private long lastFilled;
    private long cells;
    private long filledRows;
    private long filledCells;
    private long lastColumn;
    private long characters;
    private boolean tooMany;

    private OpenSheetCount() {}

    static void check(ZipFile zip, List<ZipEntry> entries, Place place)
            throws Refused, IOException {
        for (ZipEntry entry : entries) {
            if (READ.contains(entry.getName())) {
                try (InputStream in = zip.getInputStream(entry)) {
                    OpenSheetCount count = new OpenSheetCount();
                    count.parse(in, place);
                    count.refuse(place);
                }
            }
        }
        if (zip.getEntry(CONTENT) == null) {
            throw damaged(place);
        }
    }

    private void parse(InputStream in, Place place) throws Refused, IOException {
        try {
            XMLReader reader = XMLHelper.newXMLReader();
            reader.setFeature(NO_DOCTYPE, true);
            reader.setContentHandler(this);
            reader.setErrorHandler(this);
            reader.parse(new InputSource(in));
        } catch (ParserConfigurationException e) {
            throw new IllegalStateException(e);
        } catch (SAXException | NumberFormatException e) {
            throw damaged(place);
        }
    }

    static Refused damaged(Place place) {
        return Refused.because(
                FILE_UNREADABLE,
                place,
                "The file is damaged or holds something that no spreadsheet program writes.",
                "Open it in the spreadsheet program and save it as a new .xlsx file.");
    }

    private void refuse(Place place) throws Refused {
        if (tooMany || characters > Limits.TEXT_CHARACTERS) {
            throw Refused.because(
                    FILE_TOO_LARGE,
                    place,
                    "A sheet has more than 20,000 rows, 200 columns or 300,000 cells, or the file more than 20 million characters.",
                    "Copy the week's rows to a new file and save that.");
        }
    }

    @Override
    public void startElement(String uri, String name, String qualified, Attributes attributes) {
        if (!uri.equals(TABLE)) {
            return;
        }
        switch (name) {
            case "table" -> {
                row = 0;
                lastFilled = 0;
                cells = 0;
                filledRows = 0;
                lastColumn = 0;
            }
            case "table-row" -> {
                rowTimes = times(attributes.getValue(TABLE, "number-rows-repeated"));
                column = 0;
                filledCells = 0;
                cells++;
            }
            case "table-cell", "covered-table-cell" -> {
                long times = times(attributes.getValue(TABLE, "number-columns-repeated"));
                column += times;
                cells++;
                if (attributes.getValue(OFFICE, "value-type") != null) {
                    filledCells += times;
                    lastColumn = Math.max(lastColumn, column);
                }
            }
            default -> {}
        }
    }

    @Override
    public void endElement(String uri, String name, String qualified) {
        if (uri.equals(TABLE) && name.equals("table-row")) {
            row += rowTimes;
            if (filledCells > 0) {
                // What lies between filled rows is made too, however empty.
                cells += rowTimes * filledCells;
                filledRows += rowTimes;
                lastFilled = row;
            }
            tooMany |=
                    filledRows > Limits.FILLED_ROWS
                            || lastColumn > Limits.COLUMNS
                            || cells > Limits.CELLS
                            || lastFilled > Limits.FORMATTED_ROWS;
        }
    }

    @Override
    public void characters(char[] text, int start, int length) {
        characters += length;
    }

    /** How often something is repeated, by its attribute. */
    static int times(String text) {
        return text == null ? 1 : Math.max(1, Integer.parseInt(text));
    }
}
