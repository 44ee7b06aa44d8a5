package paperbark.sheet;

import static paperbark.finding.FindingCode.CELL_MERGED;
import static paperbark.finding.FindingCode.FILE_TOO_LARGE;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.BiFunction;
import org.apache.poi.ss.usermodel.Row.MissingCellPolicy;
import org.apache.poi.ss.usermodel.Sheet;
import org.apache.poi.ss.util.CellAddress;
import org.apache.poi.ss.util.CellRangeAddress;
import paperbark.finding.Place;

/** The merged blocks of one sheet. Only the first cell of a block holds its value. */
final class MergedCells {
    private final BiFunction<Integer, Integer, Optional<Cell>> stored;
    private final Map<Integer, List<CellRangeAddress>> byRow = new HashMap<>();

    /** Of a sheet that is in memory. */
    MergedCells(Sheet sheet, CellReader reader, Place place) throws Refused {
        this(
                sheet.getMergedRegions(),
                sheet.getLastRowNum(),
                (row, column) -> stored(sheet, row, column).map(reader::read),
                place);
    }

    /**
     * Of any sheet.
     *
     * @param lastRow the last that matters, from 0
     * @param stored the cell of a row and column, both from 0
     */
    MergedCells(
            List<CellRangeAddress> blocks,
            int lastRow,
            BiFunction<Integer, Integer, Optional<Cell>> stored,
            Place place)
            throws Refused {
        this.stored = stored;
        int entries = 0;
        for (CellRangeAddress block : blocks) {
            int last = Math.min(block.getLastRow(), lastRow);
            for (int row = block.getFirstRow(); row <= last; row++) {
                byRow.computeIfAbsent(row, r -> new ArrayList<>()).add(block);
                if (++entries > Limits.MERGED_ROWS) {
                    throw Refused.because(
                            FILE_TOO_LARGE,
                            place,
                            "The sheet has more merged cells than can be followed.",
                            "Unmerge the cells and save the workbook.");
                }
            }
        }
    }

    /** Gives the empty cells of blocks in that 0-based row a trouble that offers the value. */
    void mark(int row, Map<Integer, Cell> cells) {
        for (CellRangeAddress block : byRow.getOrDefault(row, List.of())) {
            Cell first = first(block);
            if (first.isBlank()) {
                continue;
            }
            int last = Math.min(block.getLastColumn(), Limits.COLUMNS - 1);
            for (int column = block.getFirstColumn(); column <= last; column++) {
                String address = new CellAddress(row, column).formatAsString();
                Cell cell = cells.getOrDefault(column + 1, Cell.blank(column + 1, address));
                if (cell.isBlank() && !address.equals(first.address())) {
                    cells.put(column + 1, CellReader.with(cell, merged(address, first)));
                }
            }
        }
    }

    private Cell first(CellRangeAddress block) {
        int row = block.getFirstRow();
        int column = block.getFirstColumn();
        return stored.apply(row, column)
                .orElseGet(
                        () ->
                                Cell.blank(
                                        column + 1, new CellAddress(row, column).formatAsString()));
    }

    private static Optional<org.apache.poi.ss.usermodel.Cell> stored(
            Sheet sheet, int row, int column) {
        return Optional.ofNullable(sheet.getRow(row))
                .map(r -> r.getCell(column, MissingCellPolicy.RETURN_BLANK_AS_NULL));
    }

    private static CellTrouble merged(String address, Cell first) {
        return new CellTrouble(
                CELL_MERGED,
                address + " is merged with " + first.address() + ", which holds the value shown.",
                "Unmerge the cells, and type the value into "
                        + address
                        + " if it is meant there too.",
                Optional.of(first.text()));
    }
}
