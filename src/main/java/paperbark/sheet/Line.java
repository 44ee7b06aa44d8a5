package paperbark.sheet;

import java.util.Comparator;
import java.util.List;

/**
 * One row of a file before anybody knows which row holds the headings.
 *
 * @param row its cells, those with nothing to say left out
 * @param fields how many fields the record of a CSV file has; 0 for a workbook
 * @param hidden whether the spreadsheet hides it
 * @param onlySums whether all that it holds is sums by formula
 */
record Line(Row row, int fields, boolean hidden, boolean onlySums) {

    /** The cells that hold something, from left to right. */
    List<Cell> filled() {
        return row.cells().values().stream()
                .filter(cell -> !cell.isBlank())
                .sorted(Comparator.comparing(Cell::column))
                .toList();
    }
}
