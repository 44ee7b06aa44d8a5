package paperbark.output.workbook;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;
import org.apache.poi.ss.formula.SheetNameFormatter;
import org.apache.poi.ss.usermodel.CellType;
import org.apache.poi.ss.util.CellAddress;
import org.apache.poi.ss.util.CellRangeAddress;
import org.apache.poi.ss.util.CellReference;
import org.apache.poi.xssf.usermodel.XSSFCell;
import org.apache.poi.xssf.usermodel.XSSFRow;
import org.apache.poi.xssf.usermodel.XSSFSheet;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import paperbark.finding.Finding;
import paperbark.finding.Place;

/** Finds the cell of the register that stands for the place of a finding. */
final class CellFinder {
    // Headings lie near the top; a register with longer preambles is marked in its first row.
    private static final int HEADINGS_WITHIN = 50;

    private static final Pattern ADDRESS = Pattern.compile("[A-Z]{1,3}[1-9][0-9]{0,6}");
    private static final Pattern LETTERS = Pattern.compile("[A-Z]{1,3}");
    private static final Pattern DIGITS = Pattern.compile("[0-9]");
    private static final Pattern UNSEEN = Pattern.compile("[\\s\\p{Z}\\p{Cf}]+");

    /**
     * One cell.
     *
     * @param sheet the sheet's index
     * @param address the cell's address
     */
    record Spot(int sheet, CellAddress address) {}

    private final XSSFWorkbook workbook;
    private final String file;
    // The library makes the list anew each time it is asked.
    private final Map<Integer, List<CellRangeAddress>> merged = new HashMap<>();

    private final Map<Integer, Integer> firstColumns;

    CellFinder(XSSFWorkbook workbook, String file) {
        this(workbook, file, Map.of());
    }

    /**
     * Of a workbook of which rows are not in memory.
     *
     * @param firstColumns the first column of such rows, all from 0
     */
    CellFinder(XSSFWorkbook workbook, String file, Map<Integer, Integer> firstColumns) {
        this.workbook = workbook;
        this.file = file;
        this.firstColumns = firstColumns;
    }

    /** The findings by the cell that they mark, those without a cell left out. */
    Map<Spot, List<Finding>> byCell(List<Finding> findings) {
        Map<Spot, List<Finding>> cells = new LinkedHashMap<>();
        for (Finding finding : findings) {
            of(finding.place())
                    .ifPresent(s -> cells.computeIfAbsent(s, k -> new ArrayList<>()).add(finding));
        }
        return cells;
    }

    /** The place as a link within the workbook. */
    Optional<String> link(Place place) {
        return of(place)
                .map(
                        s ->
                                SheetNameFormatter.format(workbook.getSheetName(s.sheet))
                                        + "!"
                                        + s.address.formatAsString());
    }

    private Optional<Spot> of(Place place) {
        if (!place.file().equals(file)) {
            return Optional.empty();
        }
        int index =
                place.sheetName().isEmpty()
                        ? workbook.getActiveSheetIndex()
                        : workbook.getSheetIndex(place.sheetName());
        if (index < 0) {
            return Optional.empty();
        }
        XSSFSheet sheet = workbook.getSheetAt(index);
        return address(sheet, place).map(a -> new Spot(index, visible(index, a)));
    }

    private Optional<CellAddress> address(XSSFSheet sheet, Place place) {
        String written = place.cellAddress();
        if (ADDRESS.matcher(written).matches()) {
            return Optional.of(new CellAddress(written));
        }
        if (place instanceof Place.InColumn && LETTERS.matcher(written).matches()) {
            int column = CellReference.convertColStringToIndex(written);
            return Optional.of(new CellAddress(heading(sheet, column, place), column));
        }
        if (place.rowNumber() > 0) {
            return Optional.of(firstOfRow(sheet, place.rowNumber() - 1));
        }
        return Optional.empty();
    }

    /** The row of the heading over a place, or the given one where it is not found. */
    static int headingRow(XSSFSheet sheet, Place place, int otherwise) {
        String letters = DIGITS.matcher(place.cellAddress()).replaceAll("");
        if (place.columnHeading().isEmpty() || !LETTERS.matcher(letters).matches()) {
            return otherwise;
        }
        int column = CellReference.convertColStringToIndex(letters);
        int row = heading(sheet, column, place);
        return row == Math.max(0, sheet.getFirstRowNum()) ? Math.min(row, otherwise) : row;
    }

    private static int heading(XSSFSheet sheet, int column, Place place) {
        String wanted = squeezed(place.columnHeading());
        for (int r = 0; r < HEADINGS_WITHIN; r++) {
            XSSFRow row = sheet.getRow(r);
            XSSFCell cell = row == null ? null : row.getCell(column);
            if (cell != null
                    && cell.getCellType() == CellType.STRING
                    && squeezed(cell.getStringCellValue()).equals(wanted)) {
                return r;
            }
        }
        return Math.max(0, sheet.getFirstRowNum());
    }

    private static String squeezed(String text) {
        return UNSEEN.matcher(text).replaceAll("");
    }

    private CellAddress firstOfRow(XSSFSheet sheet, int rowIndex) {
        XSSFRow row = sheet.getRow(rowIndex);
        int column =
                row == null
                        ? firstColumns.getOrDefault(rowIndex, 0)
                        : Math.max(0, row.getFirstCellNum());
        while (sheet.isColumnHidden(column) && column < 200) {
            column++;
        }
        return new CellAddress(rowIndex, column);
    }

    // Of merged cells only the first is seen.
    private CellAddress visible(int sheet, CellAddress address) {
        for (CellRangeAddress block :
                merged.computeIfAbsent(sheet, i -> workbook.getSheetAt(i).getMergedRegions())) {
            if (block.isInRange(address.getRow(), address.getColumn())) {
                return new CellAddress(block.getFirstRow(), block.getFirstColumn());
            }
        }
        return address;
    }
}
