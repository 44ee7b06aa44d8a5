package paperbark.sheet;

import static paperbark.finding.FindingCode.FILE_TOO_LARGE;
import static paperbark.finding.FindingCode.FILE_UNREADABLE;

import java.io.IOException;
import java.io.InputStream;
import java.util.List;
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
 * Counts the rows and cells of a part of a workbook as a stream, because opening a sheet that is
 * formatted to its end takes gigabytes. Finds sheets by what they are, not by their part's name.
 */
final class SheetCount extends DefaultHandler {
    private static final String NO_DOCTYPE = "http://apache.org/xml/features/disallow-doctype-decl";
    private static final SAXException ENOUGH = new SAXException("not a sheet");

    private final SheetSize size = new SheetSize(Limits.LAST_ROW_XLSX, Limits.STREAMED_CELLS);
    private String root = "";
    private String namespace = "";
    private int row;
    private int column;
    private long characters;
    private int texts;

    private SheetCount() {}

    static void check(ZipFile zip, List<ZipEntry> entries, Place place)
            throws Refused, IOException {
        for (ZipEntry entry : entries) {
            if (entry.getName().endsWith(".xml")) {
                try (InputStream in = zip.getInputStream(entry)) {
                    count(in, place).refuse(place);
                }
            }
        }
    }

    private static SheetCount count(InputStream in, Place place) throws Refused, IOException {
        SheetCount count = new SheetCount();
        try {
            XMLReader reader = XMLHelper.newXMLReader();
            reader.setFeature(NO_DOCTYPE, true);
            reader.setContentHandler(count);
            reader.setErrorHandler(count);
            reader.parse(new InputSource(in));
        } catch (ParserConfigurationException e) {
            throw new IllegalStateException(e);
        } catch (SAXException e) {
            if (e != ENOUGH) {
                throw Refused.because(
                        FILE_UNREADABLE,
                        place,
                        "The workbook is damaged or holds something that no spreadsheet program writes.",
                        "Open it in the spreadsheet program and save it as a new .xlsx file.");
            }
        }
        return count;
    }

    private void refuse(Place place) throws Refused {
        if (root.equals("workbook") && namespace.contains("purl.oclc.org")) {
            throw Refused.because(
                    FILE_UNREADABLE,
                    place,
                    "The workbook is saved in the rare strict variant of .xlsx.",
                    "Save it again as \"Excel Workbook (.xlsx)\", without \"Strict\".");
        }
        size.refuse(place);
        if (texts > Limits.TEXTS) {
            throw Refused.because(
                    FILE_TOO_LARGE,
                    place,
                    "The workbook's table of texts has more than 2,000,000 entries, most of them in no cell.",
                    "Copy the week's rows to a new workbook and save that.");
        }
        if (characters > Limits.TEXT_CHARACTERS) {
            throw Refused.because(
                    FILE_TOO_LARGE,
                    place,
                    "The workbook holds more than 20 million characters of text.",
                    "Copy the week's rows to a new workbook and save that.");
        }
    }

    @Override
    public void startElement(String uri, String name, String qualified, Attributes attributes)
            throws SAXException {
        if (root.isEmpty()) {
            root = name;
            namespace = uri;
            if (!root.equals("worksheet") && !root.equals("sst")) {
                throw ENOUGH;
            }
        }
        switch (name) {
            case "row" -> {
                row = number(attributes.getValue("r"), row + 1);
                column = 0;
                size.addRow();
            }
            case "c" -> {
                String address = attributes.getValue("r");
                column = address == null ? column + 1 : PassingCell.column(address);
                size.addCell();
            }
            case "v", "is", "f" -> size.addValue(row, column);
            case "si" -> texts++;
            default -> {}
        }
    }

    @Override
    public void characters(char[] text, int start, int length) {
        characters += length;
    }

    private static int number(String text, int otherwise) {
        return text == null ? otherwise : Integer.parseInt(text);
    }
}
