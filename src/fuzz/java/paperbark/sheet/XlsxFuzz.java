package paperbark.sheet;

import com.code_intelligence.jazzer.junit.FuzzTest;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import paperbark.finding.Place;

/**
 * A workbook with any rows is read or refused with a reason; read as a tree and read as a stream it
 * says the same, so that neither way loses a cell.
 */
class XlsxFuzz {
    private static final byte[] BOOK =
            Books.xlsx(sheet -> Books.row(sheet, 2, "SB-1", "Ann", "2026-11-20", 5));

    private static final List<String> WORDS =
            List.of(
                    "<row r=\"2\">",
                    "<row>",
                    "<row r=\"3\" hidden=\"1\">",
                    "</row>",
                    "<c r=\"A2\" t=\"s\">",
                    "<c t=\"inlineStr\">",
                    "<c r=\"B2\" t=\"str\">",
                    "<c>",
                    "<c r=\"D3\" s=\"0\">",
                    "<c t=\"b\">",
                    "<c t=\"e\">",
                    "</c>",
                    "<v>",
                    "</v>",
                    "<is><t>",
                    "</t></is>",
                    "<f>",
                    "</f>",
                    "<f t=\"shared\" si=\"0\"/>",
                    "<f t=\"shared\" ref=\"B2:B3\" si=\"0\">",
                    "<is><r><t>",
                    "</t></r></is>",
                    "<![CDATA[",
                    "]]>",
                    "&#x41;",
                    "_x0041_",
                    "1e5",
                    "<c r=\"C2\" t=\"d\">",
                    "<rPh sb=\"0\" eb=\"1\"><t>",
                    "</t></rPh>",
                    "<!-- -->");

    @FuzzTest(maxDuration = "10m")
    void bothWaysOfReadingSayTheSame(byte[] content) throws IOException {
        String rows = FuzzedFile.spelled(content, WORDS);
        if (rows.isEmpty()) {
            return;
        }
        byte[] book =
                Books.patched(
                        BOOK, Books.SHEET, xml -> xml.replace("</sheetData>", rows + "</sheetData>"));
        FuzzedFile.with(".xlsx", book, XlsxFuzz::compare);
    }

    private static void compare(Path file) {
        Place.InFile place = new Place.InFile("week.xlsx");
        if (FuzzedFile.readOrRefused(file).result().isEmpty()) {
            return;
        }
        Optional<String> stored =
                said(
                        () ->
                                WorkbookReader.stored(
                                        file,
                                        FileKind.WORKBOOK,
                                        place,
                                        Books.KNOWN,
                                        Optional.empty(),
                                        SheetRule.NONE));
        Optional<String> passing =
                said(
                        () ->
                                WorkbookReader.passing(
                                        file,
                                        place,
                                        Books.KNOWN,
                                        Optional.empty(),
                                        SheetRule.NONE));
        if (stored.isPresent() && passing.isPresent() && !stored.equals(passing)) {
            throw new AssertionError("as a tree " + stored + "\nas a stream " + passing);
        }
    }

    private interface Way {
        Reading<ReadList> read() throws Refused, IOException;
    }

    /** Empty where the library refuses, which the program tells as a finding. */
    private static Optional<String> said(Way way) {
        try {
            return way.read()
                    .result()
                    .map(list -> list.lines().stream().map(XlsxFuzz::cells).toList().toString());
        } catch (Refused | IOException | RuntimeException | AssertionError refused) {
            return Optional.empty();
        }
    }

    private static Map<Integer, Cell> cells(Row row) {
        Map<Integer, Cell> cells = new TreeMap<>(row.cells());
        cells.put(0, Cell.text(0, "", "row " + row.number()));
        return cells;
    }
}
