package paperbark.sheet;

import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.Optional;
import org.apache.poi.xssf.usermodel.XSSFCell;
import org.apache.xmlbeans.impl.values.XmlValueOutOfRangeException;
import org.openxmlformats.schemas.spreadsheetml.x2006.main.CTCell;

/** What the XML of an .xlsx cell says and the spreadsheet library does not pass on. */
final class StoredXml {
    private static final int DAY_LETTERS = "2026-11-20".length();

    private final CTCell xml;
    private final String type;

    StoredXml(XSSFCell cell) {
        xml = cell.getCTCell();
        type = xml.isSetT() ? type(xml) : "n";
    }

    private static String type(CTCell xml) {
        try {
            return xml.getT().toString();
        } catch (XmlValueOutOfRangeException e) {
            // The library's list of types is older than the standard's; the attribute is there.
            return xml.getDomNode().getAttributes().getNamedItem("t").getNodeValue();
        }
    }

    /** Whether the cell is of the standard's ISO date type, which the library cannot name. */
    boolean isIsoDate() {
        return type.equals("d");
    }

    /** The day of an ISO date cell, if it is one. */
    Optional<LocalDate> isoDate() {
        return isoDate(xml.isSetV() ? xml.getV() : "");
    }

    /** The day that such a cell's value says, if it is one. */
    static Optional<LocalDate> isoDate(String stored) {
        String value = stored.strip();
        if (value.length() > DAY_LETTERS && value.charAt(DAY_LETTERS) != 'T') {
            return Optional.empty();
        }
        try {
            String day = value.substring(0, Math.min(DAY_LETTERS, value.length()));
            return Optional.of(LocalDate.parse(day));
        } catch (DateTimeParseException e) {
            return Optional.empty();
        }
    }

    /** A formula without a stored result; the library gives 0 for it. */
    boolean isNotCalculated() {
        boolean empty = !xml.isSetV() || (xml.getV().isEmpty() && !type.equals("str"));
        return xml.isSetF() && empty;
    }

    /**
     * Whether the cell says what kind of value it holds and has none. Texts and numbers are left
     * out: several programs write blank cells that way.
     */
    boolean missesValue() {
        boolean hasKind = type.equals("s") || type.equals("b") || type.equals("e");
        return hasKind && !xml.isSetF() && (!xml.isSetV() || xml.getV().isBlank());
    }

    /**
     * Whether text stands in the cell that its kind says nothing of; the library passes it over.
     */
    boolean hasStrayText() {
        return xml.isSetIs() && !type.equals("inlineStr");
    }

    /** A reference to a shared text that is not there; the library gives empty text for it. */
    boolean missesText(int sharedTexts) {
        if (!type.equals("s") || !xml.isSetV()) {
            return false;
        }
        int index = Integer.parseInt(xml.getV().strip());
        return index < 0 || index >= sharedTexts;
    }
}
