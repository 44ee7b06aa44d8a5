package paperbark.sheet;

import static org.assertj.core.api.Assertions.assertThat;
import static paperbark.finding.FindingCode.COLUMNS_HIDDEN;
import static paperbark.finding.FindingCode.HEADINGS_NOT_FOUND;
import static paperbark.finding.FindingCode.HEADING_TWICE;
import static paperbark.finding.FindingCode.REGISTER_EMPTY;
import static paperbark.finding.FindingCode.ROWS_HIDDEN;
import static paperbark.finding.FindingCode.ROW_IGNORED;
import static paperbark.finding.FindingCode.SHEET_FULL;
import static paperbark.finding.FindingCode.SHEET_HIDDEN;
import static paperbark.finding.FindingCode.SHEET_NOT_FOUND;
import static paperbark.sheet.Books.codes;
import static paperbark.sheet.Books.row;
import static paperbark.sheet.Books.sheet;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.Optional;
import java.util.function.Consumer;
import org.apache.poi.ss.usermodel.SheetVisibility;
import org.apache.poi.ss.usermodel.Workbook;
import org.apache.poi.ss.util.CellRangeAddress;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import paperbark.finding.Finding;
import paperbark.finding.Place;

/** Which sheet, which heading row and which rows are taken. */
class SheetChoiceTest {
    @TempDir Path folder;

    @Test
    void theSheetWhoseHeadingsMatchBestIsTaken() {
        Reading<Sheet> reading =
                book(
                        book -> {
                            row(book.createSheet("People"), 1, "Owner", "Date");
                            org.apache.poi.ss.usermodel.Sheet week = book.createSheet("Week 47");
                            row(week, 1, "Job", "Owner", "Date");
                            row(week, 2, "SB-1", "Ann");
                        });
        assertThat(sheet(reading).name()).isEqualTo("Week 47");
        assertThat(reading.findings()).isEmpty();
    }

    @Test
    void ofEqualSheetsTheOneWithRowsIsTakenAndTwoWithRowsAreUnclear() {
        Consumer<Workbook> formAndWeek =
                book -> {
                    row(book.createSheet("Form"), 1, "Job", "Owner");
                    row(book.createSheet("Week 47"), 1, "Job", "Owner");
                    row(book.getSheet("Week 47"), 2, "SB-1", "Ann");
                };
        assertThat(sheet(book(formAndWeek)).name()).isEqualTo("Week 47");
        Reading<Sheet> unclear =
                book(formAndWeek.andThen(book -> row(book.getSheet("Form"), 2, "SB-0", "Zed")));
        assertThat(codes(unclear)).containsExactly(SHEET_NOT_FOUND);
        assertThat(unclear.findings().get(0).fact()).contains("\"Form\", \"Week 47\"");
    }

    @Test
    void aSheetIsTakenByNameAlsoWhenItMatchesLess() {
        byte[] book = twoSheets();
        Path file = Books.save(folder, "week.xlsx", book);
        assertThat(sheet(SheetReader.read(file, Books.KNOWN, Optional.of("Other"))).name())
                .isEqualTo("Other");
    }

    @Test
    void aNameThatIsNotThereIsAnsweredWithTheNamesAndTheNearest() {
        Path file = Books.save(folder, "week.xlsx", twoSheets());
        Reading<Sheet> reading = SheetReader.read(file, Books.KNOWN, Optional.of("Week 74"));
        assertThat(codes(reading)).containsExactly(SHEET_NOT_FOUND);
        Finding finding = reading.findings().get(0);
        assertThat(finding.fact()).contains("\"Week 74\"").contains("\"Week 47\", \"Other\"");
        assertThat(finding.remedy()).contains("\"Week 47\"");
    }

    @Test
    void hiddenSheetsAreLeftOutWithANoteUnlessNamed() {
        byte[] bytes;
        try (XSSFWorkbook book = new XSSFWorkbook()) {
            row(book.createSheet("Week 47"), 1, "Job", "Owner");
            row(book.getSheet("Week 47"), 2, "SB-1", "Ann");
            row(book.createSheet("Lists"), 1, "Job", "Owner", "Date", "Serial");
            row(book.getSheet("Lists"), 2, "SB-9", "Zed");
            book.createSheet("Deep");
            book.setSheetVisibility(1, SheetVisibility.HIDDEN);
            book.setSheetVisibility(2, SheetVisibility.VERY_HIDDEN);
            bytes = Books.bytes(book);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        Reading<Sheet> reading = Books.read(folder, "week.xlsx", bytes);
        assertThat(sheet(reading).name()).isEqualTo("Week 47");
        assertThat(codes(reading)).containsExactly(SHEET_HIDDEN);
        assertThat(reading.findings().get(0).fact()).contains("\"Lists\", \"Deep\"");
        Path file = folder.resolve("week.xlsx");
        Reading<Sheet> named = SheetReader.read(file, Books.KNOWN, Optional.of("Lists"));
        assertThat(sheet(named).rows()).hasSize(1);
    }

    @Test
    void mergedTitlesAndAnotherTableAboveTheHeadingsArePassedOver() {
        Reading<Sheet> reading =
                book(
                        book -> {
                            org.apache.poi.ss.usermodel.Sheet week = book.createSheet("Week 47");
                            row(week, 1, "Jobs of the week");
                            week.addMergedRegion(CellRangeAddress.valueOf("A1:D2"));
                            row(week, 3, "Crew", "Owner");
                            row(week, 4, "1", "Ann");
                            row(week, 6, "Job", null, "Owner\nof the heater", "Owner", "Notes");
                            row(week, 7, "SB-1", "x", "y", "Ann", "z");
                        });
        Sheet sheet = sheet(reading);
        assertThat(sheet.headingRow()).isEqualTo(6);
        assertThat(sheet.columns())
                .extracting(c -> c.letters() + " " + c.heading())
                .containsExactly("A Job", "C Owner of the heater", "D Owner", "E Notes");
        assertThat(sheet.rows()).extracting(Row::number).containsExactly(7);
    }

    @Test
    void withoutHeadingsTheFullestRowIsShown() {
        Reading<Sheet> reading =
                book(book -> row(book.createSheet("Week 47"), 3, "Job", "Kunde", "Datum"));
        assertThat(codes(reading)).containsExactly(HEADINGS_NOT_FOUND);
        assertThat(reading.findings().get(0).fact())
                .contains("row 3")
                .contains("\"Job\", \"Kunde\", \"Datum\"");
    }

    @Test
    void twoEqualHeadingsAreNamedBoth() {
        Reading<Sheet> reading =
                book(
                        book -> {
                            row(book.createSheet("Week 47"), 1, "Job", "Owner", "Owner ");
                            row(book.getSheet("Week 47"), 2, "SB-1", "Ann", "Bob");
                        });
        assertThat(codes(reading)).containsExactly(HEADING_TWICE);
        assertThat(reading.findings().get(0).fact()).contains("B and C");
        assertThat(reading.findings().get(0).place())
                .isEqualTo(new Place.InColumn("week.xlsx", "Week 47", "Owner", "C"));
    }

    @Test
    void emptyRowsAreSkippedAndWhatIsHiddenIsReadAndCounted() {
        Reading<Sheet> reading =
                filled(
                        sheet -> {
                            row(sheet, 3, "SB-1", "Ann");
                            row(sheet, 4, " ", "\u00A0");
                            row(sheet, 5, "SB-2", "Bob").setZeroHeight(true);
                            row(sheet, 6, "SB-3", "Cec").setZeroHeight(true);
                            sheet.createRow(6).setZeroHeight(true);
                            sheet.setColumnHidden(1, true);
                        });
        assertThat(sheet(reading).rows()).extracting(Row::number).containsExactly(3, 5, 6);
        assertThat(codes(reading)).containsExactly(ROWS_HIDDEN, COLUMNS_HIDDEN);
        assertThat(reading.findings().get(0).fact()).startsWith("2 hidden");
        assertThat(reading.findings().get(0).place())
                .isEqualTo(new Place.InRow("week.xlsx", "Week 47", 5));
        assertThat(reading.findings().get(1).place())
                .isEqualTo(new Place.InColumn("week.xlsx", "Week 47", "Owner", "B"));
    }

    @Test
    void rowsOfTotalsAreLeftOutWithANote() {
        Reading<Sheet> reading =
                filled(
                        sheet -> {
                            row(sheet, 2, "SB-1", "Ann", null, 5);
                            row(sheet, 3).createCell(3).setCellFormula("SUM(D2:D2)");
                            row(sheet, 4).createCell(3).setCellFormula("SUBTOTAL(9,D2:D2)");
                            row(sheet, 5, null, "Totals", null, 5);
                            row(sheet, 6, "SB-2", "Bob").createCell(3).setCellFormula("SUM(D2:D2)");
                        });
        assertThat(sheet(reading).rows()).extracting(Row::number).containsExactly(2, 6);
        assertThat(codes(reading)).containsExactly(ROW_IGNORED, ROW_IGNORED, ROW_IGNORED);
    }

    @Test
    void textBesideTheListIsNoRow() {
        Reading<Sheet> reading =
                filled(
                        sheet -> {
                            row(sheet, 2, "SB-1", "Ann");
                            row(sheet, 3, null, null, null, null, null, "ring Ann");
                        });
        assertThat(sheet(reading).rows()).hasSize(1);
        assertThat(codes(reading)).containsExactly(ROW_IGNORED);
    }

    @Test
    void headingsWithoutRowsAreNothingToDo() {
        assertThat(codes(filled(sheet -> {}))).containsExactly(REGISTER_EMPTY);
        assertThat(codes(book(book -> book.createSheet("Sheet1"))))
                .containsExactly(HEADINGS_NOT_FOUND);
    }

    @Test
    void aSheetFilledToItsLastRowHasProbablyLostSome() {
        Consumer<org.apache.poi.ss.usermodel.Sheet> xlsx = sheet -> row(sheet, 1_048_576, "SB-1");
        assertThat(codes(filled(xlsx))).containsExactly(SHEET_FULL);
        byte[] xls = Books.xls(sheet -> row(sheet, 65_536, "SB-1", "Ann"));
        assertThat(codes(Books.read(folder, "week.xls", xls))).containsExactly(SHEET_FULL);
    }

    private byte[] twoSheets() {
        try (XSSFWorkbook book = new XSSFWorkbook()) {
            row(book.createSheet("Week 47"), 1, "Job", "Owner", "Date");
            row(book.getSheet("Week 47"), 2, "SB-1", "Ann");
            row(book.createSheet("Other"), 1, "Job", "Owner");
            row(book.getSheet("Other"), 2, "SB-2", "Bob");
            return Books.bytes(book);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private Reading<Sheet> book(Consumer<Workbook> fill) {
        try (XSSFWorkbook book = new XSSFWorkbook()) {
            fill.accept(book);
            return Books.read(folder, "week.xlsx", Books.bytes(book));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private Reading<Sheet> filled(Consumer<org.apache.poi.ss.usermodel.Sheet> fill) {
        return Books.read(folder, "week.xlsx", Books.xlsx(fill));
    }
}
