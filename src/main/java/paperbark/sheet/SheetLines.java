package paperbark.sheet;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.apache.poi.ss.usermodel.Sheet;
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

    private Line line(org.apache.poi.ss.usermodel.Row stored) {
        Map<Integer, Cell> cells = new TreeMap<>();
        int filled = 0;
        int sums = 0;
        for (org.apache.poi.ss.usermodel.Cell storedCell : stored) {
            Cell cell = reader.read(storedCell);
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
