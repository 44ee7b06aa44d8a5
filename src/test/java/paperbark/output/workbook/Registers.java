package paperbark.output.workbook;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.List;
import org.apache.poi.hssf.usermodel.HSSFWorkbook;
import org.apache.poi.ss.usermodel.Cell;
import org.apache.poi.ss.usermodel.CellStyle;
import org.apache.poi.ss.usermodel.ClientAnchor;
import org.apache.poi.ss.usermodel.Comment;
import org.apache.poi.ss.usermodel.FillPatternType;
import org.apache.poi.ss.usermodel.Font;
import org.apache.poi.ss.usermodel.IndexedColors;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.ss.usermodel.Sheet;
import org.apache.poi.ss.usermodel.Workbook;
import org.apache.poi.ss.util.CellRangeAddress;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import paperbark.output.BatchViews;

/** Invented registers as an office would keep them. */
final class Registers {
    private static final List<String> HEADINGS =
            List.of(
                    "Job no.",
                    "Owner",
                    "Street",
                    "Suburb",
                    "Phone",
                    "Maker",
                    "Model",
                    "Tank serial",
                    "Price",
                    "Installed",
                    "GST",
                    "Dog on site?");

    private Registers() {}

    static byte[] xlsx() {
        return filled(new XSSFWorkbook());
    }

    static byte[] xls() {
        return filled(new HSSFWorkbook());
    }

    private static byte[] filled(Workbook workbook) {
        Sheet sheet = workbook.createSheet(BatchViews.SHEET);
        workbook.createSheet("Findings").createRow(0).createCell(0).setCellValue("Ours");
        sheet.createRow(0).createCell(0).setCellValue("Saltmarsh jobs, week 47");
        sheet.addMergedRegion(new CellRangeAddress(0, 0, 0, 4));
        CellStyle heading = heading(workbook);
        Row headings = sheet.createRow(2);
        for (int i = 0; i < HEADINGS.size(); i++) {
            Cell cell = headings.createCell(i);
            cell.setCellValue(HEADINGS.get(i));
            cell.setCellStyle(heading);
            sheet.setColumnWidth(i, (10 + i) * 256);
        }
        CellStyle money = workbook.createCellStyle();
        money.setDataFormat(workbook.createDataFormat().getFormat("$#,##0.00"));
        for (int r = 3; r < 9; r++) {
            Row row = sheet.createRow(r);
            row.createCell(0).setCellValue("SB-104" + (r - 2));
            row.createCell(1).setCellValue("Fern Placeholder");
            row.createCell(2).setCellValue("4 Heron Lane");
            row.createCell(3).setCellValue("Ballan");
            row.createCell(4).setCellValue("0491 570 15" + r);
            row.createCell(5).setCellValue("Ternlight");
            row.createCell(6).setCellValue("TL-300 E30");
            row.createCell(7).setCellValue("TD-2231");
            row.createCell(8).setCellValue(4400 + r);
            row.getCell(8).setCellStyle(money);
            row.createCell(10).setCellFormula("I" + (r + 1) + "/11");
            row.getCell(10).setCellValue((4400 + r) / 11.0);
            row.getCell(10).setCellStyle(money);
        }
        remark(sheet.getRow(5).getCell(4), "Rings back after four.");
        sheet.createFreezePane(1, 3);
        return bytes(workbook);
    }

    private static CellStyle heading(Workbook workbook) {
        Font font = workbook.createFont();
        font.setBold(true);
        font.setColor(IndexedColors.WHITE.getIndex());
        CellStyle style = workbook.createCellStyle();
        style.setFont(font);
        style.setFillForegroundColor(IndexedColors.DARK_BLUE.getIndex());
        style.setFillPattern(FillPatternType.SOLID_FOREGROUND);
        return style;
    }

    private static void remark(Cell cell, String text) {
        var helper = cell.getSheet().getWorkbook().getCreationHelper();
        ClientAnchor anchor = helper.createClientAnchor();
        anchor.setCol1(6);
        anchor.setCol2(8);
        anchor.setRow1(5);
        anchor.setRow2(8);
        Comment comment = cell.getSheet().createDrawingPatriarch().createCellComment(anchor);
        comment.setString(helper.createRichTextString(text));
        comment.setAuthor("Heron");
        cell.setCellComment(comment);
    }

    static byte[] bytes(Workbook workbook) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try (workbook) {
            workbook.write(out);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return out.toByteArray();
    }
}
