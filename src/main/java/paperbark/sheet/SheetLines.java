package paperbark.sheet;

import java.util.Collection;
import java.util.List;
import org.apache.poi.ss.usermodel.Sheet;
import paperbark.finding.Finding;
import paperbark.finding.FindingCode;
import paperbark.finding.Place;

/** The rows of one sheet of a workbook as lines: of a tree in memory, or passing by. */
interface SheetLines {

    /** The first rows that hold anything, at most that many. */
    List<Line> first(int most);

    /** What the file holds of this sheet besides what is read of it. */
    List<Finding> lost(String file);

    /** The way to the lines of a workbook's sheets. */
    interface Way {
        /** Those of one sheet. */
        SheetLines of(Sheet sheet) throws Refused;
    }

    /** One finding for each row number that the file holds twice. */
    default List<Finding> lost(Collection<Integer> twice, String file, String sheet) {
        return twice.stream()
                .map(number -> new Place.InRow(file, sheet, number))
                .map(
                        place ->
                                Finding.of(
                                        FindingCode.ROW_TWICE,
                                        place,
                                        "The file holds two rows with the number "
                                                + place.row()
                                                + ", and only the last was read.",
                                        "Open the register in the spreadsheet program, look which jobs are there, add the missing one and save it."))
                .toList();
    }
}
