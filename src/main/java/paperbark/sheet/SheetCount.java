package paperbark.sheet;

import static paperbark.finding.FindingCode.FILE_TOO_LARGE;
import static paperbark.finding.FindingCode.FILE_UNREADABLE;

import java.io.IOException;
import java.io.InputStream;
import java.util.List;
import java.util.zip.ZipEntry;
import java.util.zip.ZipFile;
import javax.xml.stream.XMLStreamConstants;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamReader;
import paperbark.finding.Place;

/**
 * Counts the rows and cells of a part of a workbook as a stream, because opening a sheet that is
 * formatted to its end takes gigabytes. Finds sheets by what they are, not by their part's name.
 */
final class SheetCount {
    /** In the place of a part's outermost element: it may bring in what lies elsewhere. */
    private static final String DOCTYPE = "!DOCTYPE";

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
            XMLStreamReader xml = PassingXml.reader(in);
            boolean on = true;
            while (on && xml.hasNext()) {
                on = count.take(xml, xml.next());
            }
        } catch (XMLStreamException e) {
            throw damaged(place);
        }
        if (count.root.equals(DOCTYPE)) {
            throw damaged(place);
        }
        return count;
    }

    private static Refused damaged(Place place) {
        return Refused.because(
                FILE_UNREADABLE,
                place,
                "The workbook is damaged or holds something that no spreadsheet program writes.",
                "Open it in the spreadsheet program and save it as a new .xlsx file.");
    }

    /** Takes what the reader stands at; tells whether there is any need of the rest. */
    private boolean take(XMLStreamReader xml, int event) {
        switch (event) {
            case XMLStreamConstants.DTD -> root = DOCTYPE;
            case XMLStreamConstants.START_ELEMENT -> {
                return begin(xml);
            }
            case XMLStreamConstants.CHARACTERS, XMLStreamConstants.CDATA ->
                    characters += xml.getTextLength();
            default -> {}
        }
        return !root.equals(DOCTYPE);
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

    private boolean begin(XMLStreamReader xml) {
        String name = xml.getLocalName();
        if (root.isEmpty()) {
            root = name;
            namespace = String.valueOf(xml.getNamespaceURI());
            if (!root.equals("worksheet") && !root.equals("sst")) {
                return false;
            }
        }
        switch (name) {
            case "row" -> {
                row = number(xml.getAttributeValue(null, "r"), row + 1);
                column = 0;
                size.addRow();
            }
            case "c" -> {
                String address = xml.getAttributeValue(null, "r");
                column = address == null ? column + 1 : PassingCell.column(address);
                size.addCell();
            }
            case "v", "is", "f" -> size.addValue(row, column);
            case "si" -> texts++;
            default -> {}
        }
        return true;
    }

    private static int number(String text, int otherwise) {
        return text == null ? otherwise : Integer.parseInt(text);
    }
}
