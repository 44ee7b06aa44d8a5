package paperbark.sheet;

import java.util.Map;

/**
 * One row below the headings.
 *
 * @param number 1-based as the spreadsheet or editor shows it; in a CSV file the line on which the
 *     record begins
 * @param cells by 1-based column index; columns without a heading and blank cells may be absent,
 *     and what was split off another cell stands below 1
 */
public record Row(int number, Map<Integer, Cell> cells) {

    /** Keeps the cells from being changed. */
    public Row {
        cells = Map.copyOf(cells);
    }

    /** The cell in that column, blank when nothing is stored. */
    public Cell cell(Column column) {
        Cell cell = cells.get(column.index());
        return cell == null ? Cell.blank(column.index(), column.letters() + number) : cell;
    }

    /** Whether every cell is blank. */
    public boolean isBlank() {
        return cells.values().stream().allMatch(Cell::isBlank);
    }
}
