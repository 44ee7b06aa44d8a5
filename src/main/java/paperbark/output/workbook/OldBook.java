package paperbark.output.workbook;

import org.apache.poi.hssf.usermodel.HSSFCell;
import org.apache.poi.hssf.usermodel.HSSFComment;
import org.apache.poi.hssf.usermodel.HSSFName;
import org.apache.poi.hssf.usermodel.HSSFRow;
import org.apache.poi.hssf.usermodel.HSSFSheet;
import org.apache.poi.hssf.usermodel.HSSFWorkbook;
import org.apache.poi.ss.formula.FormulaParseException;
import org.apache.poi.ss.usermodel.Cell;
import org.apache.poi.ss.usermodel.CellType;
import org.apache.poi.ss.usermodel.Comment;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.ss.util.PaneInformation;
import org.apache.poi.xssf.usermodel.XSSFCell;
import org.apache.poi.xssf.usermodel.XSSFClientAnchor;
import org.apache.poi.xssf.usermodel.XSSFName;
import org.apache.poi.xssf.usermodel.XSSFRichTextString;
import org.apache.poi.xssf.usermodel.XSSFRow;
import org.apache.poi.xssf.usermodel.XSSFSheet;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;

/**
 * An .xls workbook carried over to .xlsx: values, formulas with their stored results, styles,
 * widths, heights, hidden parts, merged cells, panes and comments. Pictures, charts, rules of entry
 * and conditional colours stay behind.
 */
final class OldBook {
    private final HSSFWorkbook old;
    private final XSSFWorkbook made = FreshBook.make();
    private final OldStyles styles;

    OldBook(HSSFWorkbook old) {
        this.old = old;
        this.styles = new OldStyles(old, made);
    }

    XSSFWorkbook converted() {
        if (old.getInternalWorkbook().isUsing1904DateWindowing()) {
            made.getCTWorkbook().addNewWorkbookPr().setDate1904(true);
        }
        // All sheets first: formulas and names may look at any of them.
        for (int i = 0; i < old.getNumberOfSheets(); i++) {
            made.createSheet(old.getSheetName(i));
            made.setSheetVisibility(i, old.getSheetVisibility(i));
        }
        old.getAllNames().forEach(this::name);
        for (int i = 0; i < old.getNumberOfSheets(); i++) {
            sheet(old.getSheetAt(i), made.getSheetAt(i));
        }
        made.setActiveSheet(old.getActiveSheetIndex());
        made.setSelectedTab(old.getActiveSheetIndex());
        return made;
    }

    private void name(HSSFName name) {
        if (name.isFunctionName() || name.isDeleted() || name.isHidden()) {
            return;
        }
        XSSFName copy = made.createName();
        try {
            copy.setNameName(name.getNameName());
            copy.setSheetIndex(name.getSheetIndex());
            copy.setRefersToFormula(name.getRefersToFormula());
        } catch (IllegalArgumentException | IllegalStateException | FormulaParseException e) {
            // A formula that needs this name keeps its stored result instead.
            made.removeName(copy);
        }
    }

    private void sheet(HSSFSheet from, XSSFSheet to) {
        to.setDefaultColumnWidth(from.getDefaultColumnWidth());
        to.setDefaultRowHeight(from.getDefaultRowHeight());
        to.setDisplayGridlines(from.isDisplayGridlines());
        int columns = 0;
        for (Row row : from) {
            row((HSSFRow) row, to.createRow(row.getRowNum()));
            columns = Math.max(columns, row.getLastCellNum());
        }
        for (int i = 0; i < columns; i++) {
            to.setColumnWidth(i, from.getColumnWidth(i));
            to.setColumnHidden(i, from.isColumnHidden(i));
        }
        from.getMergedRegions().forEach(to::addMergedRegion);
        PaneInformation pane = from.getPaneInformation();
        if (pane != null && pane.isFreezePane()) {
            to.createFreezePane(pane.getVerticalSplitPosition(), pane.getHorizontalSplitPosition());
        }
    }

    private void row(HSSFRow from, XSSFRow to) {
        to.setHeight(from.getHeight());
        to.setZeroHeight(from.getZeroHeight());
        for (Cell cell : from) {
            HSSFCell own = (HSSFCell) cell;
            XSSFCell copy = to.createCell(own.getColumnIndex());
            copy.setCellStyle(styles.of(own.getCellStyle()));
            if (own.getCellType() == CellType.FORMULA) {
                formula(own, copy);
                value(own, copy, own.getCachedFormulaResultType());
            } else {
                value(own, copy, own.getCellType());
            }
            comment(own, copy);
        }
    }

    private static void formula(HSSFCell from, XSSFCell to) {
        try {
            to.setCellFormula(from.getCellFormula());
        } catch (RuntimeException e) {
            // The library has no one exception for formulas that it cannot write; the stored
            // result stands in for them.
            to.setBlank();
        }
    }

    private static void value(HSSFCell from, XSSFCell to, CellType kind) {
        switch (kind) {
            case NUMERIC -> to.setCellValue(from.getNumericCellValue());
            case STRING -> to.setCellValue(Texts.stored(from.getStringCellValue()));
            case BOOLEAN -> to.setCellValue(from.getBooleanCellValue());
            case ERROR -> to.setCellErrorValue(from.getErrorCellValue());
            default -> {}
        }
    }

    private static void comment(HSSFCell from, XSSFCell to) {
        HSSFComment comment = from.getCellComment();
        if (comment == null) {
            return;
        }
        XSSFClientAnchor anchor =
                new XSSFClientAnchor(
                        0,
                        0,
                        0,
                        0,
                        from.getColumnIndex() + 1,
                        from.getRowIndex(),
                        from.getColumnIndex() + 4,
                        from.getRowIndex() + 5);
        Comment copy = to.getSheet().createDrawingPatriarch().createCellComment(anchor);
        copy.setString(new XSSFRichTextString(Texts.stored(comment.getString().getString())));
        copy.setAuthor(comment.getAuthor());
        to.setCellComment(copy);
    }
}
