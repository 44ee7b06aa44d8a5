package paperbark.sheet;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import org.apache.poi.ss.usermodel.Sheet;
import paperbark.finding.Finding;
import paperbark.finding.Place;

/** The lines of a sheet that the library holds in memory. */
final class StoredLines implements SheetLines {
    private final Sheet sheet;
    private final CellReader reader;
    private final MergedCells merged;

    StoredLines(Sheet sheet, CellReader reader, Place place) throws Refused {
        this.sheet = sheet;
        this.reader = reader;
        this.merged = new MergedCells(sheet, reader, place);
    }

    @Override
    public List<Line> first(int most) {
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

    @Override
    public List<Finding> lost(String file) {
        return lost(StoredTwice.rows(sheet), file, sheet.getSheetName());
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
