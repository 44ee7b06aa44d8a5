package paperbark.output.workbook;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.List;
import org.apache.poi.ss.usermodel.DateUtil;
import org.apache.poi.xssf.usermodel.XSSFCell;
import org.apache.poi.xssf.usermodel.XSSFRow;
import org.apache.poi.xssf.usermodel.XSSFSheet;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import paperbark.firm.ColumnGuide.Holds;
import paperbark.job.Answers;
import paperbark.output.table.FormulaText;
import paperbark.sheet.Cell;
import paperbark.sheet.SheetReader;

/**
 * The sheet on which missing facts are asked for, a row a fact with an empty cell of the right
 * format; and the same sheet behind the rows of a register once it is answered.
 */
public final class AnswerSheet {
    private static final int ANSWER = Answers.HEADINGS.indexOf("Answer");
    private static final int[] WIDTHS = {16, 36, 30, 16, 24, 14, 8, 20};

    private AnswerSheet() {}

    /**
     * A question.
     *
     * @param job number of the job
     * @param question in words
     * @param who usually knows it
     * @param field key of the field
     * @param holds what is typed as the answer
     * @param choices words to choose from; empty where anything of its kind will do
     * @param sheet the register's sheet; empty for a CSV file
     * @param row 1-based row of the job in the register
     */
    public record Question(
            String job,
            String question,
            String who,
            String field,
            Holds holds,
            List<String> choices,
            String sheet,
            int row) {
        /** Keeps the list from being changed. */
        public Question {
            choices = List.copyOf(choices);
        }
    }

    /**
     * A workbook that asks.
     *
     * @param register SHA-256 of the register's bytes, by which an answer finds it again
     * @return the bytes of an .xlsx file
     */
    public static byte[] asking(List<Question> questions, String register) {
        try (XSSFWorkbook workbook = FreshBook.make()) {
            FormLook look = new FormLook(workbook);
            ListsSheet lists = new ListsSheet(workbook);
            XSSFSheet sheet = workbook.createSheet(SheetReader.ANSWERS);
            headings(sheet, look);
            CellRules rules = new CellRules(sheet, lists);
            for (int i = 0; i < questions.size(); i++) {
                Question q = questions.get(i);
                XSSFRow row = sheet.createRow(i + 1);
                texts(
                        row,
                        look,
                        List.of(
                                q.job(),
                                q.question(),
                                "",
                                q.who(),
                                q.field(),
                                q.sheet(),
                                String.valueOf(q.row()),
                                register));
                row.createCell(ANSWER).setCellStyle(look.open(q.holds()));
                CellRules.Area area = new CellRules.Area(i + 1, i + 1, ANSWER);
                if (q.choices().isEmpty()) {
                    Holds holds = q.holds() == Holds.NAME ? Holds.TEXT : q.holds();
                    rules.kind(area, holds, q.question(), "");
                } else {
                    rules.choice(area, q.choices(), q.question(), "");
                }
            }
            sheet.createFreezePane(1, 1);
            FormLook.lock(sheet);
            SheetSetup.form(sheet, SheetReader.ANSWERS, Answers.HEADINGS.size());
            lists.hide();
            return bytes(workbook);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /**
     * A copy of a register with answers on a sheet behind its own.
     *
     * @param register an .xlsx workbook
     * @return the bytes of an .xlsx file, the same for the same input
     */
    public static byte[] behind(byte[] register, List<Answers.Answer> answers) {
        try (XSSFWorkbook workbook = new XSSFWorkbook(new ByteArrayInputStream(register))) {
            return behind(workbook, answers);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** The same behind the rows of a register that is no such workbook. */
    public static byte[] behind(PlainRows register, List<Answers.Answer> answers) {
        try (XSSFWorkbook workbook = new PlainBook(register).workbook()) {
            return behind(workbook, answers);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** The sheet of answers alone. */
    public static byte[] alone(List<Answers.Answer> answers) {
        try (XSSFWorkbook workbook = FreshBook.make()) {
            return behind(workbook, answers);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static byte[] behind(XSSFWorkbook workbook, List<Answers.Answer> answers)
            throws IOException {
        int before = workbook.getSheetIndex(SheetReader.ANSWERS);
        if (before >= 0) {
            workbook.removeSheetAt(before);
        }
        FormLook look = new FormLook(workbook);
        XSSFSheet sheet = workbook.createSheet(SheetReader.ANSWERS);
        headings(sheet, look);
        int next = 1;
        for (Answers.Answer answer : answers) {
            XSSFRow row = sheet.createRow(next++);
            texts(
                    row,
                    look,
                    List.of(
                            answer.job(),
                            "",
                            "",
                            "",
                            answer.field(),
                            answer.sheet(),
                            String.valueOf(answer.row()),
                            answer.register()));
            put(row.createCell(ANSWER), answer.cell(), look);
        }
        return bytes(workbook);
    }

    private static void put(XSSFCell cell, Cell answer, FormLook look) {
        if (answer.date().isPresent()) {
            cell.setCellValue(DateUtil.getExcelDate(answer.date().get()));
            cell.setCellStyle(look.open(Holds.DAY));
        } else if (answer.number().isPresent()) {
            cell.setCellValue(answer.number().get().doubleValue());
            cell.setCellStyle(look.open(Holds.NUMBER));
        } else {
            cell.setCellValue(Texts.stored(answer.text()));
            cell.setCellStyle(
                    FormulaText.is(answer.text())
                            ? look.quoted(Holds.TEXT)
                            : look.open(Holds.TEXT));
        }
    }

    private static void headings(XSSFSheet sheet, FormLook look) {
        XSSFRow row = sheet.createRow(0);
        for (int i = 0; i < Answers.HEADINGS.size(); i++) {
            XSSFCell cell = row.createCell(i);
            cell.setCellValue(Answers.HEADINGS.get(i));
            cell.setCellStyle(look.heading());
            sheet.setColumnWidth(i, WIDTHS[i] * 256);
        }
        // It says nothing to people, and is what an answer is known by.
        sheet.setColumnHidden(Answers.HEADINGS.indexOf("Register"), true);
    }

    private static void texts(XSSFRow row, FormLook look, List<String> texts) {
        for (int i = 0; i < texts.size(); i++) {
            if (!texts.get(i).isEmpty()) {
                XSSFCell cell = row.createCell(i);
                cell.setCellValue(Texts.stored(texts.get(i)));
                cell.setCellStyle(look.fixed());
            }
        }
    }

    private static byte[] bytes(XSSFWorkbook workbook) throws IOException {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        workbook.write(bytes);
        return SteadyZip.of(bytes.toByteArray());
    }
}
