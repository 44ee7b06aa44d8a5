package paperbark.sheet;

import static paperbark.finding.FindingCode.COLUMNS_HIDDEN;
import static paperbark.finding.FindingCode.DATES_FROM_1904;
import static paperbark.finding.FindingCode.FILE_HAS_MACROS;
import static paperbark.finding.FindingCode.FILE_MISLABELLED;
import static paperbark.finding.FindingCode.FILE_UNREADABLE;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Predicate;
import org.apache.poi.EncryptedDocumentException;
import org.apache.poi.hssf.OldExcelFormatException;
import org.apache.poi.hssf.usermodel.HSSFWorkbook;
import org.apache.poi.ss.usermodel.Date1904Support;
import org.apache.poi.ss.usermodel.Workbook;
import org.apache.poi.ss.usermodel.WorkbookFactory;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import paperbark.finding.Finding;
import paperbark.finding.Place;

/** Reads a workbook that has passed the gates. Opens it for reading only. */
final class WorkbookReader {
    private WorkbookReader() {}

    /** The sheets that are meant: one unless the firm's rule means several. */
    static Reading<ReadList> read(
            Path file,
            FileKind kind,
            Place place,
            Predicate<String> isKnown,
            Optional<String> sheetName,
            SheetRule rule)
            throws Refused, IOException {
        return kind == FileKind.WORKBOOK && PassingBook.isNeeded(file)
                ? passing(file, place, isKnown, sheetName, rule)
                : stored(file, kind, place, isKnown, sheetName, rule);
    }

    /** Each sheet that is named, whatever is the matter with the others. */
    static Map<String, Reading<Sheet>> named(
            Path file, FileKind kind, Place place, Map<String, Predicate<String>> wanted)
            throws Refused, IOException {
        Map<String, Reading<Sheet>> named = new LinkedHashMap<>();
        if (kind == FileKind.TEXT) {
            throw Refused.because(
                    FILE_MISLABELLED,
                    place,
                    "The file is no workbook but plain text.",
                    "Save it as .xlsx, or put a CSV file for each table into a folder.");
        }
        if (kind == FileKind.WORKBOOK && PassingBook.isNeeded(file)) {
            try (PassingBook book = PassingBook.open(file)) {
                CellReader reader = new CellReader(0, book.frame().isDate1904());
                SheetLines.Way way = sheet -> new PassingLines(sheet, book, reader, place);
                wanted.forEach(
                        (name, known) ->
                                named.put(name, named(book.frame(), way, place, known, name)));
            }
        } else {
            try (Workbook book = open(file, kind, place)) {
                CellReader reader = new CellReader(sharedTexts(book), isFrom1904(book));
                SheetLines.Way way = sheet -> new StoredLines(sheet, reader, place);
                wanted.forEach(
                        (name, known) -> named.put(name, named(book, way, place, known, name)));
            }
        }
        return named;
    }

    private static Reading<Sheet> named(
            Workbook book,
            SheetLines.Way way,
            Place place,
            Predicate<String> isKnown,
            String name) {
        try {
            Reading<ReadList> read =
                    read(
                            book,
                            way,
                            place,
                            isKnown,
                            Optional.of(name),
                            SheetRule.NONE,
                            ReadList.Form.WORKBOOK);
            return new Reading<>(read.result().map(list -> list.sheets().get(0)), read.findings());
        } catch (Refused refused) {
            return Reading.refused(refused.findings());
        }
    }

    /** As a stream. */
    static Reading<ReadList> passing(
            Path file,
            Place place,
            Predicate<String> isKnown,
            Optional<String> sheetName,
            SheetRule rule)
            throws Refused, IOException {
        try (PassingBook book = PassingBook.open(file)) {
            CellReader reader = new CellReader(0, book.frame().isDate1904());
            return read(
                    book.frame(),
                    sheet -> new PassingLines(sheet, book, reader, place),
                    place,
                    isKnown,
                    sheetName,
                    rule,
                    ReadList.Form.PASSING);
        }
    }

    /** As a tree in memory. */
    static Reading<ReadList> stored(
            Path file,
            FileKind kind,
            Place place,
            Predicate<String> isKnown,
            Optional<String> sheetName,
            SheetRule rule)
            throws Refused, IOException {
        try (Workbook book = open(file, kind, place)) {
            CellReader reader = new CellReader(sharedTexts(book), isFrom1904(book));
            return read(
                    book,
                    sheet -> new StoredLines(sheet, reader, place),
                    place,
                    isKnown,
                    sheetName,
                    rule,
                    kind == FileKind.OPEN_SHEET || isXlsm(book)
                            ? ReadList.Form.CONVERTED
                            : ReadList.Form.WORKBOOK);
        }
    }

    private static boolean isFrom1904(Workbook book) {
        // The library asks its two kinds of workbooks in two ways.
        return book instanceof HSSFWorkbook old
                ? old.getInternalWorkbook().isUsing1904DateWindowing()
                : book instanceof Date1904Support b && b.isDate1904();
    }

    private static Reading<ReadList> read(
            Workbook book,
            SheetLines.Way way,
            Place place,
            Predicate<String> isKnown,
            Optional<String> sheetName,
            SheetRule rule,
            ReadList.Form form)
            throws Refused {
        boolean from1904 = isFrom1904(book);
        SheetChoice choice = new SheetChoice(book, way, place);
        List<SheetChoice.Chosen> chosen = chosen(choice, isKnown, sheetName, rule);
        List<Finding> findings = new ArrayList<>(choice.notes());
        if (from1904) {
            findings.add(
                    Finding.of(
                            DATES_FROM_1904,
                            place,
                            "The workbook counts its days from 1904, and its dates were read that way.",
                            ""));
        }
        if (holdsMacros(book)) {
            findings.add(
                    Finding.of(
                            FILE_HAS_MACROS,
                            place,
                            "The workbook holds macros; they were not run, and its cells were read as they were saved.",
                            ""));
        }
        List<Sheet> sheets = new ArrayList<>();
        List<Row> first = List.of();
        for (SheetChoice.Chosen each : chosen) {
            List<Line> lines = each.lines().first(Integer.MAX_VALUE);
            findings.addAll(each.lines().lost(place.file()));
            RowSieve sieve =
                    new RowSieve(place.file(), each.sheet().getSheetName(), each.headings());
            if (chosen.size() > 1 && !each.hasRows()) {
                continue;
            }
            Reading<Sheet> read = sieve.sift(lines);
            findings.addAll(read.findings());
            findings.addAll(hiddenColumns(place.file(), each));
            first = sheets.isEmpty() ? lines.stream().map(Line::row).toList() : first;
            read.result().map(sheet -> counting(sheet, from1904)).ifPresent(sheets::add);
        }
        return sheets.isEmpty()
                ? Reading.refused(findings)
                : Reading.of(new ReadList(form, sheets, first), findings);
    }

    /** A note on the columns that are read and not seen. */
    private static List<Finding> hiddenColumns(String file, SheetChoice.Chosen chosen) {
        List<Column> hidden =
                chosen.headings().known().stream()
                        .filter(column -> chosen.sheet().isColumnHidden(column.index() - 1))
                        .toList();
        if (hidden.isEmpty()) {
            return List.of();
        }
        Column first = hidden.get(0);
        return List.of(
                Finding.of(
                        COLUMNS_HIDDEN,
                        new Place.InColumn(
                                file,
                                chosen.sheet().getSheetName(),
                                first.heading(),
                                first.letters()),
                        hidden.size() == 1
                                ? "One hidden column was read like the others."
                                : "%d hidden columns were read like the others; this is the first."
                                        .formatted(hidden.size()),
                        ""));
    }

    private static List<SheetChoice.Chosen> chosen(
            SheetChoice choice,
            Predicate<String> isKnown,
            Optional<String> sheetName,
            SheetRule rule)
            throws Refused {
        if (sheetName.isPresent()) {
            return List.of(choice.named(sheetName.get(), isKnown));
        }
        if (rule.isNone()) {
            return List.of(choice.best(isKnown));
        }
        List<SheetChoice.Chosen> ruled = choice.ruled(rule, isKnown);
        // Where all are empty, the first says so.
        return ruled.stream().anyMatch(SheetChoice.Chosen::hasRows) ? ruled : ruled.subList(0, 1);
    }

    private static Sheet counting(Sheet sheet, boolean from1904) {
        return SheetBuilder.builder(sheet).from1904(from1904).build();
    }

    /** Without the last argument the library writes to the file when it is closed. */
    private static Workbook open(Path file, FileKind kind, Place place)
            throws Refused, IOException {
        if (kind == FileKind.OPEN_SHEET) {
            return OpenSheet.workbook(file, true, place);
        }
        try {
            return WorkbookFactory.create(file.toFile(), null, true);
        } catch (EncryptedDocumentException e) {
            throw OldWorkbookGate.encrypted(place);
        } catch (OldExcelFormatException e) {
            throw Refused.because(
                    FILE_UNREADABLE,
                    place,
                    "The workbook was saved by Excel 95 or older.",
                    "Open it, save it as .xlsx and use that file.");
        }
    }

    private static boolean isXlsm(Workbook book) {
        return book instanceof XSSFWorkbook xlsx && xlsx.isMacroEnabled();
    }

    private static boolean holdsMacros(Workbook book) {
        return book instanceof XSSFWorkbook
                ? isXlsm(book)
                : book instanceof HSSFWorkbook xls
                        && xls.getDirectory().hasEntry("_VBA_PROJECT_CUR");
    }

    private static int sharedTexts(Workbook book) {
        return book instanceof XSSFWorkbook xlsx
                ? xlsx.getSharedStringSource().getSharedStringItems().size()
                : 0;
    }
}
