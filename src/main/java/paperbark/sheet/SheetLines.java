package paperbark.sheet;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import org.apache.poi.ss.usermodel.Sheet;
import paperbark.finding.Finding;
import paperbark.finding.FindingCode;
import paperbark.finding.Place;

/** The rows of one sheet of a workbook as lines. */
final class SheetLines {
    private final Sheet sheet;
    private final CellReader reader;
    private final MergedCells merged;

    SheetLines(Sheet sheet, CellReader reader, Place place) throws Refused {
        this.sheet = sheet;
        this.reader = reader;
        this.merged = new MergedCells(sheet, reader, place);
    }

    /** The first rows that hold anything, at most that many. */
    List<Line> first(int most) {
        List<Line> lines = new ArrayList<>();
        for (org.apache.poi.ss.usermodel.Row row : sheet) {
            Line line = line(row);
            if (!line.row().isBlank()) {
                lines.add(line);
            }
            if (lines.size() >= most) {
                break;
            }
        }
        return lines;
    }

    /** What the file holds of this sheet besides what is read of it. */
    List<Finding> lost(String file) {
        return StoredTwice.rows(sheet).stream()
                .map(number -> new Place.InRow(file, sheet.getSheetName(), number))
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

    private Line line(org.apache.poi.ss.usermodel.Row stored) {
        Map<Integer, Cell> cells = new TreeMap<>();
        int filled = 0;
        int sums = 0;
        Set<String> twice = StoredTwice.cells(stored);
        for (org.apache.poi.ss.usermodel.Cell storedCell : stored) {
            Cell cell = reader.read(storedCell);
            if (twice.contains(cell.address())) {
                cell = CellReader.doubled(cell);
            }
            if (!cell.isBlank()) {
                cells.put(cell.column(), cell);
                filled++;
                sums += StoredFormula.isSum(storedCell) ? 1 : 0;
            }
        }
        boolean onlySums = filled > 0 && sums == filled;
        if (filled > 0) {
            merged.mark(stored.getRowNum(), cells);
        }
        Row row = new Row(stored.getRowNum() + 1, cells);
        return new Line(row, 0, stored.getZeroHeight(), onlySums);
    }
}
