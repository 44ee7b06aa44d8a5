package paperbark.packaged;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.ss.usermodel.Sheet;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import paperbark.outside.Typist;

/** A list with habits of its own, as an office has had it for years. */
final class OwnList {
    private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("d/M/uuuu");
    private static final DateTimeFormatter MONTH =
            DateTimeFormatter.ofPattern("MMM uuuu", Locale.ENGLISH);

    private static final String HEADINGS =
            "Ref|How far|When|Client name|Address|Mob|Brand|Unit|Cyl S/N|Plumber|Sparky|Plumbing cert"
                    + "|Electrical cert|STC buyer|STCs off the price|Discount or payment|Invoice total"
                    + "|Old unit|Rmk";

    /** A remark between jobs, one that was called off, and one whose certificate is yet to come. */
    private static final List<String> JOBS =
            List.of(
                    "K-301|finished|%s|Nora Nettle|3 Saucepan Court, Ballan VIC 3342|0491 570 156|Merganser|MG-315"
                            + "|MG-26-00412|Percy Plover|Tilly Teasel|P-7701|E-551|Teal|504.00|discount|4620.00|gas storage|",
                    "K-302|finished|%s|Otto Oakum|5 Teaspoon Lane, Ballan VIC 3342|0491 570 157|Merganser|MG-315"
                            + "|MG-26-00413|Percy Plover|Tilly Teasel|P-7702|E-552|Teal|504.00|discount|3990.00|electric storage|",
                    "gate code is with the office",
                    "K-303|on the board|%s|Quinn Quandong|2 Whisk Way, Ballan VIC 3342|0491 570 158|Shoveler|S-270"
                            + "||Dora Dotterel|Tilly Teasel|||Teal|504.00|discount|3990.00|gas storage|dog",
                    "K-304|pulled out|%s|Rex Ragwort|4 Ladle Lane, Gordon VIC 3345||Merganser|MG-315|||||||||||",
                    "K-305|finished|%s|Rhea Rushes|8 Whisk Way, Ballan VIC 3342|0491 570 159|Merganser|MG-315"
                            + "|MG-26-00414|Percy Plover|Tilly Teasel||E-553|Teal|504.00|discount|4100.00|gas storage|");

    private OwnList() {}

    /** The list in an old format, a tab a month, saved by LibreOffice. */
    static Path of(Path folder, String name, LocalDate today, Typist typist) throws IOException {
        Path typed = folder.resolve("typed.xlsx");
        try (XSSFWorkbook book = new XSSFWorkbook();
                OutputStream out = Files.newOutputStream(typed)) {
            tab(book, today.minusMonths(1), List.of(JOBS.get(0).replace("K-301", "K-280")));
            tab(book, today, JOBS);
            book.write(out);
        }
        Path list = folder.resolve(name);
        typist.typeAndSave(typed, Map.of(), list);
        return list;
    }

    private static void tab(XSSFWorkbook book, LocalDate month, List<String> jobs) {
        Sheet sheet = book.createSheet(MONTH.format(month));
        row(sheet, "Jobs " + MONTH.format(month));
        row(sheet, HEADINGS);
        int day = 12;
        for (String job : jobs) {
            boolean booked = job.contains("on the board");
            LocalDate when = booked ? month.plusDays(5) : month.minusDays(day--);
            row(sheet, job.formatted(DAY.format(when)));
        }
    }

    private static void row(Sheet sheet, String texts) {
        Row row = sheet.createRow(sheet.getPhysicalNumberOfRows());
        int column = 0;
        for (String text : texts.split("\\|", -1)) {
            row.createCell(column++).setCellValue(text);
        }
    }
}
