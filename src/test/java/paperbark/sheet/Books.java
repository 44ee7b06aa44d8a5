package paperbark.sheet;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Consumer;
import java.util.function.Predicate;
import java.util.function.UnaryOperator;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;
import java.util.zip.ZipOutputStream;
import org.apache.poi.hssf.usermodel.HSSFWorkbook;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.ss.usermodel.Sheet;
import org.apache.poi.ss.usermodel.Workbook;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import paperbark.finding.Finding;
import paperbark.finding.FindingCode;

/** Makes workbooks for tests and reads them with the headings Job, Owner, Date and Serial. */
final class Books {
    static final Predicate<String> KNOWN = Set.of("Job", "Owner", "Date", "Serial")::contains;
    static final String SHEET = "xl/worksheets/sheet1.xml";

    private Books() {}

    /** A workbook with one sheet "Week 47" whose row 1 holds the headings. */
    static byte[] xlsx(Consumer<Sheet> fill) {
        return bytes(new XSSFWorkbook(), fill);
    }

    /** The same as an .xls. */
    static byte[] xls(Consumer<Sheet> fill) {
        return bytes(new HSSFWorkbook(), fill);
    }

    private static byte[] bytes(Workbook book, Consumer<Sheet> fill) {
        try (book) {
            Sheet sheet = book.createSheet("Week 47");
            row(sheet, 1, "Job", "Owner", "Date", "Serial");
            fill.accept(sheet);
            return bytes(book);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    static byte[] bytes(Workbook book) {
        try {
            ByteArrayOutputStream out = new ByteArrayOutputStream();
            book.write(out);
            return out.toByteArray();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Text, numbers and blanks (null) in a 1-based row. */
    static Row row(Sheet sheet, int number, Object... values) {
        Row row = sheet.createRow(number - 1);
        for (int i = 0; i < values.length; i++) {
            if (values[i] instanceof Number n) {
                row.createCell(i).setCellValue(n.doubleValue());
            } else if (values[i] != null) {
                row.createCell(i).setCellValue(values[i].toString());
            }
        }
        return row;
    }

    /** One job whose serial cell, D2, is this piece of XML. */
    static byte[] withSerialCell(String xml) {
        byte[] book = xlsx(sheet -> row(sheet, 2, "SB-1", "Ann Example", "later", "HERE"));
        return patched(
                book,
                SHEET,
                text -> text.replaceFirst("<c r=\"D2\"[^>]*>.*?</c>", xml.replace("$", "\\$")));
    }

    /** The workbook with one part rewritten. */
    static byte[] patched(byte[] book, String part, UnaryOperator<String> change) {
        Map<String, byte[]> parts = parts(book);
        String before = new String(parts.get(part), StandardCharsets.UTF_8);
        String after = change.apply(before);
        if (after.equals(before)) {
            throw new IllegalStateException("the patch changes nothing: " + before);
        }
        parts.put(part, after.getBytes(StandardCharsets.UTF_8));
        return zip(parts);
    }

    static byte[] with(byte[] book, String part, byte[] content) {
        Map<String, byte[]> parts = parts(book);
        parts.put(part, content);
        return zip(parts);
    }

    static byte[] zip(Map<String, byte[]> parts) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try (ZipOutputStream zip = new ZipOutputStream(out)) {
            for (Map.Entry<String, byte[]> part : parts.entrySet()) {
                zip.putNextEntry(new ZipEntry(part.getKey()));
                zip.write(part.getValue());
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return out.toByteArray();
    }

    private static Map<String, byte[]> parts(byte[] book) {
        Map<String, byte[]> parts = new LinkedHashMap<>();
        try (ZipInputStream zip = new ZipInputStream(new ByteArrayInputStream(book))) {
            for (ZipEntry e = zip.getNextEntry(); e != null; e = zip.getNextEntry()) {
                parts.put(e.getName(), zip.readAllBytes());
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return parts;
    }

    static Reading<paperbark.sheet.Sheet> read(Path folder, String name, byte[] content) {
        return SheetReader.read(save(folder, name, content), KNOWN, Optional.empty());
    }

    static Path save(Path folder, String name, byte[] content) {
        try {
            Path file = folder.resolve(name);
            try (OutputStream out = Files.newOutputStream(file)) {
                out.write(content);
            }
            return file;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** The serial, the fourth column of the first row read. */
    static Cell serial(Reading<paperbark.sheet.Sheet> reading) {
        paperbark.sheet.Sheet sheet = sheet(reading);
        return sheet.rows().get(0).cell(sheet.columns().get(3));
    }

    static paperbark.sheet.Sheet sheet(Reading<paperbark.sheet.Sheet> reading) {
        return reading.result().orElseThrow(() -> new AssertionError(reading.findings()));
    }

    static List<FindingCode> codes(Reading<?> reading) {
        return reading.findings().stream().map(Finding::code).toList();
    }

    static List<FindingCode> codes(Cell cell) {
        return cell.troubles().stream().map(CellTrouble::code).toList();
    }

    static Reading<paperbark.sheet.Sheet> csv(String text) {
        return csv(text.getBytes(StandardCharsets.UTF_8));
    }

    static Reading<paperbark.sheet.Sheet> csv(byte[] content) {
        return SheetReader.readCsv("week.csv", content, KNOWN);
    }
}
