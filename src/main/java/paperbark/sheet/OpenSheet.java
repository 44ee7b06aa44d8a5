package paperbark.sheet;

import static paperbark.finding.FindingCode.CELL_TOO_LONG;

import com.github.miachm.sods.OdsOptionParameters;
import com.github.miachm.sods.OfficeCurrency;
import com.github.miachm.sods.OfficePercentage;
import com.github.miachm.sods.Range;
import com.github.miachm.sods.SpreadSheet;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.Collections;
import java.util.Date;
import java.util.List;
import java.util.Optional;
import java.util.zip.ZipEntry;
import java.util.zip.ZipFile;
import java.util.zip.ZipOutputStream;
import org.apache.poi.ss.SpreadsheetVersion;
import org.apache.poi.ss.usermodel.FormulaError;
import org.apache.poi.ss.util.CellRangeAddress;
import org.apache.poi.ss.util.WorkbookUtil;
import org.apache.poi.xssf.usermodel.XSSFCell;
import org.apache.poi.xssf.usermodel.XSSFCellStyle;
import org.apache.poi.xssf.usermodel.XSSFRow;
import org.apache.poi.xssf.usermodel.XSSFSheet;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import paperbark.finding.Place;

/**
 * An OpenDocument spreadsheet as a workbook, so that one way of choosing sheets and reading cells
 * serves both. Kept are sheets, values, dates, merged blocks and what is hidden.
 */
final class OpenSheet {
    private final XSSFWorkbook book = new XSSFWorkbook();
    private final XSSFCellStyle day = style("yyyy-mm-dd");
    private final XSSFCellStyle time = style("[h]:mm");
    private final boolean formulas;
    private final Place place;

    private OpenSheet(boolean formulas, Place place) {
        this.formulas = formulas;
        this.place = place;
    }

    /**
     * The workbook.
     *
     * @param formulas whether cells keep the text of their formulas; it is only to be looked at,
     *     since a spreadsheet program could not read it in a workbook
     */
    static XSSFWorkbook workbook(Path file, boolean formulas, Place place)
            throws IOException, Refused {
        OdsOptionParameters values = new OdsOptionParameters();
        values.setLoadImages(false);
        values.setLoadGraphs(false);
        OpenSheet made = new OpenSheet(formulas, place);
        made.book
                .getProperties()
                .getCoreProperties()
                .setCreated(Optional.of(Date.from(Instant.EPOCH)));
        SpreadSheet read = new SpreadSheet(new ByteArrayInputStream(needed(file)), values);
        List<BitSet> hidden = OpenSheetHidden.rows(file);
        for (int i = 0; i < read.getSheets().size(); i++) {
            made.add(read.getSheet(i), i < hidden.size() ? hidden.get(i) : new BitSet());
        }
        if (made.book.getNumberOfSheets() == 0) {
            throw OpenSheetCount.damaged(place);
        }
        return made.book;
    }

    /** The library reads every part, and stumbles over those that it does not need. */
    private static byte[] needed(Path file) throws IOException {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (ZipFile zip = new ZipFile(file.toFile());
                ZipOutputStream out = new ZipOutputStream(bytes)) {
            for (ZipEntry part : Collections.list(zip.entries())) {
                if (part.getName().equals("mimetype")
                        || OpenSheetCount.READ.contains(part.getName())) {
                    out.putNextEntry(new ZipEntry(part.getName()));
                    try (InputStream in = zip.getInputStream(part)) {
                        in.transferTo(out);
                    }
                    out.closeEntry();
                }
            }
        }
        return bytes.toByteArray();
    }

    private XSSFCellStyle style(String format) {
        XSSFCellStyle style = book.createCellStyle();
        style.setDataFormat(book.createDataFormat().getFormat(format));
        return style;
    }

    private void add(com.github.miachm.sods.Sheet from, BitSet hidden) throws Refused {
        XSSFSheet to = book.createSheet(free(from.getName()));
        if (from.isHidden()) {
            book.setSheetHidden(book.getSheetIndex(to), true);
        }
        // The gate has seen to it that nothing stands beyond these.
        int rows = Math.min(from.getMaxRows(), Limits.FORMATTED_ROWS);
        int columns = Math.min(from.getMaxColumns(), Limits.COLUMNS);
        List<CellRangeAddress> blocks = new ArrayList<>();
        for (int i = 0; i < rows && columns > 0; i++) {
            Range range = from.getRange(i, 0, 1, columns);
            Object[] values = range.getValues()[0];
            if (Arrays.stream(values).allMatch(v -> v == null)) {
                continue;
            }
            String[] written = range.getFormulas()[0];
            int at = i;
            blocks.removeIf(block -> block.getLastRow() < at);
            blocks.addAll(merge(range, to));
            XSSFRow row = to.createRow(i);
            row.setZeroHeight(from.rowIsHidden(i) || hidden.get(i));
            for (int j = 0; j < columns; j++) {
                if (values[j] != null && !isCovered(i, j, blocks)) {
                    put(row.createCell(j), values[j], Optional.ofNullable(written[j]));
                }
            }
        }
    }

    /** The blocks that begin in a row. */
    private static List<CellRangeAddress> merge(Range row, XSSFSheet to) {
        List<CellRangeAddress> blocks = new ArrayList<>();
        for (Range block : row.getMergedCells()) {
            if (block.getRow() == row.getRow() && block.getNumRows() * block.getNumColumns() > 1) {
                blocks.add(
                        new CellRangeAddress(
                                block.getRow(),
                                block.getLastRow(),
                                block.getColumn(),
                                block.getLastColumn()));
            }
        }
        blocks.forEach(to::addMergedRegionUnsafe);
        return blocks;
    }

    /** The library gives the value of a block for each of its cells; only the first holds it. */
    private static boolean isCovered(int row, int column, List<CellRangeAddress> blocks) {
        return blocks.stream()
                .anyMatch(
                        block ->
                                block.isInRange(row, column)
                                        && (block.getFirstRow() != row
                                                || block.getFirstColumn() != column));
    }

    /** Names here may be longer than a workbook takes, and then begin alike. */
    private String free(String name) {
        String safe = WorkbookUtil.createSafeSheetName(name, '-');
        for (int number = 2; book.getSheet(safe) != null; number++) {
            String behind = "-" + number;
            safe = safe.substring(0, Math.min(safe.length(), 31 - behind.length())) + behind;
        }
        return safe;
    }

    private void put(XSSFCell cell, Object value, Optional<String> formula) throws Refused {
        Optional<FormulaError> error = formula.flatMap(f -> error(value));
        if (error.isPresent()) {
            cell.setCellErrorValue(error.get());
        } else if (value instanceof Boolean truth) {
            cell.setCellValue(truth);
        } else if (formula.isPresent() && formula.get().matches("=?(TRUE|FALSE)\\(\\)")) {
            cell.setCellValue(formula.get().contains("TRUE"));
        } else if (value instanceof Number number) {
            cell.setCellValue(number.doubleValue());
        } else if (value instanceof OfficePercentage share) {
            cell.setCellValue(share.getValue());
        } else if (value instanceof OfficeCurrency money) {
            cell.setCellValue(money.getValue());
        } else if (value instanceof LocalDate date) {
            cell.setCellValue(date);
            cell.setCellStyle(day);
        } else if (value instanceof LocalDateTime moment) {
            cell.setCellValue(moment);
            cell.setCellStyle(day);
        } else if (value instanceof Duration duration) {
            cell.setCellValue((double) duration.toSeconds() / Duration.ofDays(1).toSeconds());
            cell.setCellStyle(time);
        } else {
            text(cell, value.toString());
        }
        if (formulas && formula.isPresent()) {
            // Set past the library, which would read the formula and look for what it names.
            cell.getCTCell().addNewF().setStringValue(formula.get().replaceFirst("^=", ""));
        }
    }

    private void text(XSSFCell cell, String text) throws Refused {
        if (text.length() > SpreadsheetVersion.EXCEL2007.getMaxTextLength()) {
            throw Refused.because(
                    CELL_TOO_LONG,
                    new Place.InCell(
                            place.file(),
                            cell.getSheet().getSheetName(),
                            cell.getRowIndex() + 1,
                            "",
                            cell.getReference()),
                    "The cell holds more than 32,767 characters.",
                    "Shorten the text and save the file.");
        }
        cell.setCellValue(text);
    }

    private static Optional<FormulaError> error(Object value) {
        String text = value.toString();
        if (text.startsWith("Err:")) {
            return Optional.of(FormulaError.VALUE);
        }
        return Arrays.stream(FormulaError.values())
                .filter(e -> e != FormulaError._NO_ERROR && e.getString().equals(text))
                .findFirst();
    }
}
