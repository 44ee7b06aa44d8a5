package paperbark.output.workbook;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import org.apache.poi.hssf.usermodel.HSSFWorkbook;
import org.apache.poi.ss.usermodel.Cell;
import org.apache.poi.ss.usermodel.CellType;
import org.apache.poi.ss.usermodel.DataFormatter;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.ss.usermodel.Sheet;
import org.apache.poi.ss.usermodel.Workbook;
import org.apache.poi.ss.usermodel.WorkbookFactory;
import org.apache.poi.xssf.model.SharedStringsTable;
import org.apache.poi.xssf.usermodel.XSSFCell;
import org.apache.poi.xssf.usermodel.XSSFHyperlink;
import org.apache.poi.xssf.usermodel.XSSFRichTextString;
import org.apache.poi.xssf.usermodel.XSSFSheet;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.openxmlformats.schemas.spreadsheetml.x2006.main.CTRst;
import org.openxmlformats.schemas.spreadsheetml.x2006.main.STCellType;

/** Empties rows of a workbook, so that nothing of them stays readable anywhere in the file. */
public final class WorkbookErasure {
    /** The sheet that says what was done, so that nobody takes empty cells for somebody's slip. */
    static final String NOTE = "Forgotten";

    private static final String SAID =
            "Jobs were forgotten: what their rows told of persons was taken out, and cannot be brought back.";

    private final DataFormatter shown = new DataFormatter(Locale.ROOT);
    private final Predicate<String> names;
    private final Set<String> headings;

    /**
     * An erasure.
     *
     * @param names whether a cell makes its row one that is emptied; that cell stays
     * @param headings below which of them cells are emptied; below all where there are none
     */
    public WorkbookErasure(Predicate<String> names, Set<String> headings) {
        this.names = names;
        this.headings = headings;
    }

    /**
     * The workbook with these rows emptied.
     *
     * @return empty when there is no such row
     * @throws IOException when it cannot be read
     */
    public Optional<byte[]> of(byte[] content) throws IOException {
        try (Workbook workbook = WorkbookFactory.create(new ByteArrayInputStream(content))) {
            boolean any = false;
            for (Sheet sheet : workbook) {
                any |= erase(sheet);
            }
            if (!any) {
                return Optional.empty();
            }
            if (workbook.getSheet(NOTE) == null) {
                workbook.createSheet(NOTE).createRow(0).createCell(0).setCellValue(SAID);
            }
            ByteArrayOutputStream out = new ByteArrayOutputStream();
            if (workbook instanceof XSSFWorkbook modern) {
                dropUnusedTexts(modern);
                modern.write(out);
                return Optional.of(SteadyZip.of(out.toByteArray()));
            }
            // An old workbook keeps every text that it ever held; a copy has only what is left.
            try (HSSFWorkbook copy = ValuesCopy.of(workbook)) {
                copy.write(out);
            }
            return Optional.of(out.toByteArray());
        }
    }

    private boolean erase(Sheet sheet) {
        boolean any = false;
        Set<Integer> below = new HashSet<>();
        for (Row row : sheet) {
            List<Cell> others = new ArrayList<>();
            boolean named = false;
            for (Cell cell : row) {
                String text = text(cell);
                if (names.test(text)) {
                    named = true;
                } else if (headings.contains(text)) {
                    below.add(cell.getColumnIndex());
                } else {
                    others.add(cell);
                }
            }
            if (named) {
                others.removeIf(c -> !headings.isEmpty() && !below.contains(c.getColumnIndex()));
                others.removeIf(c -> c.getCellType() == CellType.BLANK);
                others.forEach(WorkbookErasure::empty);
                any |= !others.isEmpty();
            }
        }
        return any;
    }

    private String text(Cell cell) {
        return cell.getCellType() == CellType.NUMERIC || cell.getCellType() == CellType.STRING
                ? shown.formatCellValue(cell).strip()
                : "";
    }

    private static void empty(Cell cell) {
        cell.removeCellComment();
        if (cell.getHyperlink() instanceof XSSFHyperlink link
                && link.getCTHyperlink().getId() != null) {
            // The address lies in a list of the sheet's, where it would stay.
            ((XSSFSheet) cell.getSheet())
                    .getPackagePart()
                    .removeRelationship(link.getCTHyperlink().getId());
        }
        cell.removeHyperlink();
        cell.setBlank();
    }

    /** Texts lie in a list of their own, in which those of emptied cells would stay. */
    private static void dropUnusedTexts(XSSFWorkbook workbook) {
        Set<Integer> used = new HashSet<>();
        for (Sheet sheet : workbook) {
            for (Row row : sheet) {
                for (Cell cell : row) {
                    if (((XSSFCell) cell).getCTCell().getT() == STCellType.S) {
                        used.add(Integer.valueOf(((XSSFCell) cell).getCTCell().getV()));
                    }
                }
            }
        }
        SharedStringsTable texts = workbook.getSharedStringSource();
        for (int i = 0; i < texts.getUniqueCount(); i++) {
            if (!used.contains(i)) {
                CTRst nothing = CTRst.Factory.newInstance();
                nothing.setT("");
                ((XSSFRichTextString) texts.getItemAt(i)).getCTRst().set(nothing);
            }
        }
    }
}
