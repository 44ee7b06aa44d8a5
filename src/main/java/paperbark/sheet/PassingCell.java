package paperbark.sheet;

import java.util.Optional;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamReader;
import org.apache.poi.ss.util.CellReference;
import org.apache.poi.xssf.usermodel.XSSFCell;
import org.apache.poi.xssf.usermodel.XSSFRow;
import org.apache.poi.xssf.usermodel.XSSFSheet;
import org.openxmlformats.schemas.spreadsheetml.x2006.main.CTCell;
import org.openxmlformats.schemas.spreadsheetml.x2006.main.CTCellFormula;
import org.openxmlformats.schemas.spreadsheetml.x2006.main.CTRow;
import org.openxmlformats.schemas.spreadsheetml.x2006.main.STCellFormulaType;
import org.openxmlformats.schemas.spreadsheetml.x2006.main.STCellType;

/**
 * The XML of one cell of a sheet that passes by.
 *
 * @param column from 1
 * @param address such as {@code F14}
 * @param type the standard's word
 * @param style number of its style
 * @param value what is stored
 * @param formula its formula
 */
record PassingCell(
        int column,
        String address,
        String type,
        int style,
        Optional<String> value,
        Optional<Formula> formula) {

    /** In the place of a kind that says nothing of the text in the cell. */
    private static final String STRAY = "stray";

    private record Formula(String text, String type, String shared, String area) {
        private static Formula of(XMLStreamReader xml) throws XMLStreamException {
            String type = xml.getAttributeValue(null, "t");
            String shared = xml.getAttributeValue(null, "si");
            String area = xml.getAttributeValue(null, "ref");
            return new Formula(xml.getElementText(), type, shared, area);
        }

        private void on(CTCell cell) {
            CTCellFormula made = cell.addNewF();
            made.setStringValue(text);
            if (type != null) {
                made.setT(STCellFormulaType.Enum.forString(type));
            }
            if (shared != null) {
                made.setSi(Long.parseLong(shared));
            }
            if (area != null) {
                made.setRef(area);
            }
        }
    }

    // The library makes rows of its own only from trees.
    private static final class LoneRow extends XSSFRow {
        private LoneRow(CTRow row, XSSFSheet sheet) {
            super(row, sheet);
        }
    }

    /**
     * Reads the cell that the reader stands at.
     *
     * @param row the row's number, from 1
     * @param next the column, from 1, of a cell that does not say where it stands
     */
    static PassingCell of(XMLStreamReader xml, int row, int next) throws XMLStreamException {
        String written = xml.getAttributeValue(null, "r");
        int column = written == null ? next : column(written);
        String type = Optional.ofNullable(xml.getAttributeValue(null, "t")).orElse("n");
        String style = xml.getAttributeValue(null, "s");
        Optional<String> value = Optional.empty();
        Optional<String> inline = Optional.empty();
        Optional<Formula> formula = Optional.empty();
        while (!PassingXml.ends(xml, "c")) {
            xml.next();
            PassingXml.refuseWithin(xml, "c");
            if (PassingXml.begins(xml, "v")) {
                value = Optional.of(xml.getElementText());
            } else if (PassingXml.begins(xml, "is")) {
                inline = Optional.of(PassingXml.text(xml, "is"));
            } else if (PassingXml.begins(xml, "f")) {
                formula = Optional.of(Formula.of(xml));
            }
        }
        boolean stray = inline.isPresent() && !type.equals("inlineStr");
        return new PassingCell(
                column,
                CellReference.convertNumToColString(column - 1) + row,
                stray ? STRAY : type,
                style == null ? 0 : Integer.parseInt(style),
                inline.isPresent() ? inline : value,
                formula);
    }

    /** The column of an address, from 1. */
    static int column(String address) {
        int column = 0;
        for (int i = 0; i < address.length() && !Character.isDigit(address.charAt(i)); i++) {
            if (address.charAt(i) != '$') {
                column = column * 26 + Character.toUpperCase(address.charAt(i)) - 'A' + 1;
            }
        }
        return column;
    }

    /** What it says to us. */
    Cell read(CellReader reader, PassingBook book, XSSFSheet sheet, int row) {
        if (type.equals("s") && value.filter(v -> !v.isBlank()).isPresent()) {
            Optional<String> text = book.text(Integer.parseInt(value.get().strip()));
            if (text.isEmpty()) {
                return CellReader.textless(column, address);
            }
            return formula.isPresent()
                    ? reader.read(stored("str", text, sheet, row))
                    : reader.plain("s", text, false, column, address);
        }
        if (!type.equals(STRAY) && (formula.isPresent() || type.equals("e"))) {
            return reader.read(stored(sheet, row));
        }
        Optional<String> text =
                type.equals("s")
                        ? Optional.empty()
                        : type.equals("str") ? value.map(PassingBook::decoded) : value;
        boolean date = type.equals("n") && value.isPresent() && book.isDate(style);
        return reader.plain(type, text, date, column, address);
    }

    boolean isSum(XSSFSheet sheet, int row) {
        return formula.isPresent()
                && !type.equals(STRAY)
                && StoredFormula.isSum(stored(sheet, row));
    }

    private XSSFCell stored(XSSFSheet sheet, int row) {
        return stored(type, value, sheet, row);
    }

    /** As the library holds it, in a row that is on no sheet. */
    private XSSFCell stored(String kind, Optional<String> content, XSSFSheet sheet, int row) {
        CTRow alone = CTRow.Factory.newInstance();
        alone.setR(row);
        CTCell cell = alone.addNewC();
        cell.setR(address);
        cell.setS(style);
        cell.setT(STCellType.Enum.forString(kind.equals("inlineStr") ? "str" : kind));
        content.ifPresent(cell::setV);
        formula.ifPresent(f -> f.on(cell));
        return new LoneRow(alone, sheet).getCell(column - 1);
    }
}
