package paperbark.sheet;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.Predicate;
import java.util.stream.Stream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import paperbark.finding.FindingCode;
import paperbark.finding.Place;

/** A large workbook is read as a stream: whatever it holds, the same comes out as from the tree. */
class PassingBookTest {
    private static final Predicate<String> KNOWN =
            List.of("Job", "Job no.", "Owner", "Client", "Town", "Tank serial", "Tank S/N", "Stage")
                    ::contains;

    /** Each row of cells is one of the many ways in which a cell can be stored. */
    private static final String ROWS =
            """
            <row r="1"><c r="A1" t="s"><v>0</v></c><c r="B1" t="s"><v>1</v></c>\
            <c r="C1" t="inlineStr"><is><t>Town</t></is></c></row>
            <row r="2"><c r="A2" t="inlineStr"><is><r><t>SB-</t></r><r><t>1</t></r></is></c>\
            <c r="B2"><v>12.5</v></c><c r="C2" s="1"><v>46000</v></c></row>
            <row r="3" hidden="1"><c r="A3" t="str"><v>SB_x002D_2</v></c><c r="B3" t="b"><v>1</v></c>\
            <c r="C3" t="e"><v>#REF!</v></c></row>
            <row><c><v>4</v></c><c t="s"><v>99</v></c><c t="s"></c></row>
            <row r="5"><c r="A5"><f t="shared" ref="A5:A6" si="0">SUM(B2:B3)</f><v>5</v></c>\
            <c r="B5"><f>[1]Other!A1</f><v>7</v></c><c r="C5"><f>B5+1</f></c></row>
            <row r="6"><c r="A6"><f t="shared" si="0"/><v>6</v></c></row>
            <row r="7"><c r="A7" t="d"><v>2026-11-20</v></c><c r="B7"><f>B1</f><v>x</v></c>\
            <c r="C7" t="str"><f>C1</f><v>Town</v></c></row>
            <row r="8"><c r="A8" t="inlineStr"><is><t>SB-8</t></is></c><c r="A8"><v>9</v></c>\
            <c r="C8"><v>123456789012345678</v></c></row>
            <row r="9"><c r="A9" t="inlineStr"><is><t>SB-9</t></is></c>\
            <c r="B9" t="inlineStr"><is><t>Ann</t></is></c></row>
            <row r="10"><c r="A10" t="inlineStr"><is><t>SB-10</t></is></c><c r="B10" s="1"/></row>
            <row r="10"><c r="A10" t="inlineStr"><is><t>SB-10a</t></is></c></row>
            <row r="11"><c r="A11" t="s"><v>2</v></c><c r="B11" s="1"><v>3</v></c></row>
            <row r="12"><c><is><t>SB-12</t></is></c><c t="str"><is><t>Ann</t></is></c></row>
            <row r="13"><c t="inlineStr"><v>x</v></c><c t="inlineStr"><is><t>y</t></is><v>z</v></c></row>
            """;

    @TempDir private Path folder;

    static List<Path> workbooks() throws IOException {
        try (var gallery = Files.walk(Path.of("src/test/resources/findings"));
                var samples = Files.list(Path.of("input-samples"))) {
            return Stream.concat(gallery, samples)
                    .filter(file -> file.toString().endsWith(".xlsx"))
                    .filter(PassingBookTest::passesTheGates)
                    .sorted()
                    .toList();
        }
    }

    private static boolean passesTheGates(Path file) {
        try {
            return FileGate.pass(file, place(file)) == FileKind.WORKBOOK;
        } catch (Refused | IOException e) {
            return false;
        }
    }

    private static Place place(Path file) {
        return new Place.InFile(file.getFileName().toString());
    }

    @ParameterizedTest
    @MethodSource("workbooks")
    void theWorkbooksAtHandReadTheSameAsAStream(Path file) throws IOException {
        assertThat(passing(file)).isEqualTo(stored(file));
    }

    @Test
    void everyWayOfStoringACellReadsTheSameAsAStream() throws IOException {
        Path file = workbook(ROWS);
        String read = passing(file);

        assertThat(read).isEqualTo(stored(file));
        assertThat(read)
                .contains("SB-2", "2025-12-09", "B10 is merged with B9", "Ann", "SB-10a")
                .contains(FindingCode.ROW_TWICE.code(), FindingCode.ROW_IGNORED.code())
                .contains("A12, kind=UNUSABLE", "B12, kind=UNUSABLE");
    }

    /** As no spreadsheet program writes it; what follows the inner end must not get lost. */
    @ParameterizedTest
    @ValueSource(
            strings = {
                "<row><c><c/><v>1</v></c></row>",
                "<row><c><v>1</v></c><row/><c><v>2</v></c></row>"
            })
    void aCellWithinACellAndARowWithinARowAreDamage(String rows) throws IOException {
        Path file = workbook(ROWS + rows);
        assertThatThrownBy(() -> passing(file)).isInstanceOf(UncheckedIOException.class);
    }

    @Test
    void aTableOfTextsThatNoCellNeedsCostsNothingButItsOwnLetters() throws IOException {
        Path file = folder.resolve("unused.xlsx");
        write(
                file,
                "<row r=\"1\"><c r=\"A1\" t=\"s\"><v>0</v></c><c r=\"B1\" t=\"s\"><v>1</v></c></row>"
                        + "<row r=\"2\"><c r=\"A2\" t=\"s\"><v>2</v></c></row>",
                "<si><t>in no cell</t></si>".repeat(1_000_000));

        Reading<Sheet> read = SheetReader.read(file, KNOWN, Optional.empty());

        assertThat(PassingBook.isNeeded(file)).isTrue();
        assertThat(read.findings()).isEmpty();
        assertThat(read.result().orElseThrow().rows()).hasSize(1);
    }

    private Path workbook(String rows) throws IOException {
        Path file = folder.resolve("ways.xlsx");
        write(file, rows, "");
        return file;
    }

    private static void write(Path file, String rows, String texts) throws IOException {
        String main = "xmlns=\"http://schemas.openxmlformats.org/spreadsheetml/2006/main\"";
        String relations = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";
        String types = "application/vnd.openxmlformats-officedocument.spreadsheetml.";
        String links =
                "<Relationships xmlns=\"http://schemas.openxmlformats.org/package/2006/relationships\">";
        try (ZipOutputStream zip = new ZipOutputStream(Files.newOutputStream(file))) {
            part(
                    zip,
                    "[Content_Types].xml",
                    "<Types xmlns=\"http://schemas.openxmlformats.org/package/2006/content-types\">"
                            + "<Default Extension=\"rels\" ContentType=\"application/vnd.openxmlformats-package.relationships+xml\"/>"
                            + type("xl/workbook.xml", types + "sheet.main+xml")
                            + type("xl/sheet.xml", types + "worksheet+xml")
                            + type("xl/styles.xml", types + "styles+xml")
                            + type("xl/texts.xml", types + "sharedStrings+xml")
                            + "</Types>");
            part(
                    zip,
                    "_rels/.rels",
                    links + link("r1", relations + "/officeDocument", "xl/workbook.xml"));
            part(
                    zip,
                    "xl/_rels/workbook.xml.rels",
                    links
                            + link("r1", relations + "/worksheet", "sheet.xml")
                                    .replace("</Relationships>", "")
                            + link("r2", relations + "/styles", "styles.xml")
                                    .replace("</Relationships>", "")
                            + link("r3", relations + "/sharedStrings", "texts.xml"));
            part(
                    zip,
                    "xl/workbook.xml",
                    "<workbook "
                            + main
                            + " xmlns:r=\""
                            + relations
                            + "\"><sheets>"
                            + "<sheet name=\"Week\" sheetId=\"1\" r:id=\"r1\"/></sheets></workbook>");
            part(
                    zip,
                    "xl/styles.xml",
                    "<styleSheet "
                            + main
                            + "><cellXfs count=\"2\"><xf numFmtId=\"0\"/>"
                            + "<xf numFmtId=\"14\"/></cellXfs></styleSheet>");
            part(
                    zip,
                    "xl/texts.xml",
                    "<sst "
                            + main
                            + "><si><t>Job</t></si><si><t>Owner</t><rPh sb=\"0\" eb=\"1\"><t>said</t></rPh></si>"
                            + "<si><t>SB-11</t></si>"
                            + texts
                            + "</sst>");
            part(
                    zip,
                    "xl/sheet.xml",
                    "<worksheet "
                            + main
                            + "><sheetData>"
                            + rows
                            + "</sheetData><mergeCells count=\"1\"><mergeCell ref=\"B9:B10\"/></mergeCells></worksheet>");
        }
    }

    private static String type(String part, String type) {
        return "<Override PartName=\"/" + part + "\" ContentType=\"" + type + "\"/>";
    }

    private static String link(String id, String type, String target) {
        return "<Relationship Id=\""
                + id
                + "\" Type=\""
                + type
                + "\" Target=\""
                + target
                + "\"/></Relationships>";
    }

    private static void part(ZipOutputStream zip, String name, String xml) throws IOException {
        zip.putNextEntry(new ZipEntry(name));
        zip.write(xml.getBytes(StandardCharsets.UTF_8));
        zip.closeEntry();
    }

    private static String passing(Path file) throws IOException {
        try {
            return shown(
                    WorkbookReader.passing(
                            file, place(file), KNOWN, Optional.empty(), SheetRule.NONE));
        } catch (Refused e) {
            return e.findings().toString();
        }
    }

    private static String stored(Path file) throws IOException {
        try {
            return shown(
                    WorkbookReader.stored(
                            file,
                            FileKind.WORKBOOK,
                            place(file),
                            KNOWN,
                            Optional.empty(),
                            SheetRule.NONE));
        } catch (Refused e) {
            return e.findings().toString();
        }
    }

    private static String shown(Reading<ReadList> read) {
        StringBuilder text = new StringBuilder();
        read.findings().forEach(f -> text.append(f.code().code()).append(f).append('\n'));
        for (Sheet sheet : read.result().map(ReadList::sheets).orElse(List.of())) {
            text.append(sheet.name()).append(sheet.headingRow()).append(sheet.columns());
            sheet.rows()
                    .forEach(
                            row ->
                                    text.append(row.number())
                                            .append(new TreeMap<>(row.cells()))
                                            .append('\n'));
        }
        return text.toString();
    }
}
