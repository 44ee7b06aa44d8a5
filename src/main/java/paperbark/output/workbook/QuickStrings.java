package paperbark.output.workbook;

import java.util.HashMap;
import java.util.Map;
import org.apache.poi.ooxml.POIXMLDocumentPart;
import org.apache.poi.ooxml.POIXMLRelation;
import org.apache.poi.ss.usermodel.RichTextString;
import org.apache.poi.xssf.model.SharedStringsTable;
import org.apache.poi.xssf.usermodel.XSSFFactory;
import org.apache.poi.xssf.usermodel.XSSFRelation;
import org.apache.poi.xssf.usermodel.XSSFRichTextString;
import org.openxmlformats.schemas.spreadsheetml.x2006.main.CTRst;

/**
 * The texts of a workbook, where a plain one is found by its letters. The library's own table
 * writes each as markup first, every time, which takes longer than all else done to a cell.
 */
final class QuickStrings extends SharedStringsTable {
    private final Map<String, Integer> plain = new HashMap<>();

    /** Makes workbooks that keep their texts so. */
    static XSSFFactory factory() {
        return new Factory();
    }

    private static final class Factory extends XSSFFactory {
        @Override
        public POIXMLDocumentPart newDocumentPart(POIXMLRelation kind) {
            return kind == XSSFRelation.SHARED_STRINGS
                    ? new QuickStrings()
                    : super.newDocumentPart(kind);
        }
    }

    @Override
    public int addSharedStringItem(RichTextString text) {
        CTRst stored = ((XSSFRichTextString) text).getCTRst();
        if (stored.sizeOfRArray() > 0 || !stored.isSetT()) {
            return super.addSharedStringItem(text);
        }
        Integer known = plain.get(stored.getT());
        if (known != null) {
            count++;
            return known;
        }
        int added = super.addSharedStringItem(text);
        plain.put(stored.getT(), added);
        return added;
    }
}
