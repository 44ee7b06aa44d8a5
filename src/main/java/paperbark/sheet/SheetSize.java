package paperbark.sheet;

import static paperbark.finding.FindingCode.FILE_TOO_LARGE;
import static paperbark.finding.FindingCode.SHEET_FULL;

import java.util.Locale;
import org.apache.poi.ss.util.CellReference;
import paperbark.finding.Place;

/** What one sheet comes to, and whether that is too much. */
final class SheetSize {
    private final int lastPossible;
    private final int mostCells;
    private int values;
    private int rows;
    private int cells;
    private int valueRows;
    private int lastRow;
    private int lastColumn;
    private int valueColumn;

    SheetSize(int lastPossible, int mostCells) {
        this.lastPossible = lastPossible;
        this.mostCells = mostCells;
    }

    void addRow() {
        rows++;
    }

    void addCell() {
        cells++;
    }

    /** Rows come in order. */
    void addValue(int row, int column) {
        values += row == lastRow && column == valueColumn ? 0 : 1;
        valueColumn = column;
        if (row != lastRow) {
            valueRows++;
            lastRow = row;
        }
        lastColumn = Math.max(lastColumn, column);
    }

    void refuse(Place place) throws Refused {
        if (lastRow >= lastPossible) {
            throw Refused.because(
                    SHEET_FULL,
                    place,
                    String.format(
                            Locale.ROOT,
                            "A sheet is filled to row %,d, the last one it can have.",
                            lastPossible),
                    "Clear the last row if it is a slip, or split the rows over several files.");
        }
        if (valueRows > Limits.FILLED_ROWS) {
            throw tooManyRows(place, "A sheet has " + valueRows + " rows");
        }
        if (lastColumn > Limits.COLUMNS) {
            throw tooLarge(
                    place,
                    "A sheet has values as far as column "
                            + CellReference.convertNumToColString(lastColumn - 1)
                            + "; the limit is 200 columns.",
                    "Delete what stands far to the right of the list and save the file.");
        }
        if (values > Limits.VALUES) {
            throw tooLarge(
                    place,
                    String.format(
                            Locale.ROOT,
                            "A sheet has values in %,d cells; the limit is %,d.",
                            values,
                            Limits.VALUES),
                    "Save the week's rows as a file of their own.");
        }
        if (rows > Limits.FORMATTED_ROWS || cells > mostCells) {
            throw tooLarge(
                    place,
                    String.format(
                            Locale.ROOT,
                            "A sheet has %,d rows and %,d cells; the limits, with empty but formatted ones, are 200,000 and %,d.",
                            rows,
                            cells,
                            mostCells),
                    "Select the empty rows below the list, delete them and save the file.");
        }
    }

    static Refused tooManyRows(Place place, String counted) {
        return tooLarge(
                place,
                counted + "; the limit is 20,000.",
                "Save the week's rows as a file of their own.");
    }

    private static Refused tooLarge(Place place, String fact, String remedy) {
        return Refused.because(FILE_TOO_LARGE, place, fact, remedy);
    }
}
