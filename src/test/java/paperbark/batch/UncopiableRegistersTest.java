package paperbark.batch;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.UnaryOperator;
import java.util.stream.Stream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;
import java.util.zip.ZipOutputStream;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.poi.hssf.record.NameRecord;
import org.apache.poi.hssf.usermodel.HSSFName;
import org.apache.poi.hssf.usermodel.HSSFWorkbook;
import org.apache.poi.ss.formula.ptg.Ptg;
import org.apache.poi.ss.formula.ptg.Ref3DPtg;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.ss.usermodel.Sheet;
import org.apache.poi.ss.usermodel.Workbook;
import org.apache.poi.xssf.usermodel.XSSFCell;
import org.apache.poi.xssf.usermodel.XSSFComment;
import org.apache.poi.xssf.usermodel.XSSFSheet;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import paperbark.ledger.Proof;

/**
 * Registers that can be read and not, or hardly, be copied: two jobs of the sample week, the second
 * with a wrong postcode, in workbooks as other programs write or harm them.
 */
class UncopiableRegistersTest {
    private static final String SHEET = "Week 47";

    @TempDir private Path folder;

    static Stream<Arguments> registers() throws IOException {
        return Stream.of(
                xlsx(
                        "styles without cellStyleXfs",
                        "xl/styles.xml",
                        t -> t.replaceAll("(?s)<cellStyleXfs.*?</cellStyleXfs>", "")),
                xlsx(
                        "styles without cellStyleXfs and without cellStyles",
                        "xl/styles.xml",
                        t ->
                                t.replaceAll("(?s)<cellStyleXfs.*?</cellStyleXfs>", "")
                                        .replaceAll("(?s)<cellStyles.*?</cellStyles>", "")
                                        .replaceAll(" xfId=\"0\"", "")),
                xlsx("damaged docProps/app.xml", "docProps/app.xml", t -> "<Other/>"),
                xlsx(
                        "a relation of the sheet that points outside",
                        "xl/worksheets/_rels/sheet1.xml.rels",
                        t ->
                                "<Relationships xmlns=\"http://schemas.openxmlformats.org/package/"
                                        + "2006/relationships\"><Relationship Id=\"rId1\" Type=\""
                                        + "http://schemas.openxmlformats.org/officeDocument/2006/"
                                        + "relationships/comments\" Target=\"file:///c:/x.xml\""
                                        + " TargetMode=\"External\"/></Relationships>"),
                xlsx(
                        "no sheetFormatPr",
                        "xl/worksheets/sheet1.xml",
                        t -> t.replaceAll("<sheetFormatPr[^>]*/>", "")),
                xls(
                        "a style without a number format",
                        b -> {
                            for (int i = 0; i < b.getNumCellStyles(); i++) {
                                b.getInternalWorkbook()
                                        .getExFormatAt(i)
                                        .setFormatIndex((short) 999);
                            }
                        }),
                xls(
                        "no fonts",
                        b -> {
                            while (b.getInternalWorkbook().getNumberOfFontRecords() > 0) {
                                b.getInternalWorkbook()
                                        .removeFontRecord(
                                                b.getInternalWorkbook().getFontRecordAt(0));
                            }
                        }),
                xls(
                        "an index of an external sheet that is not there",
                        b -> {
                            var cell = b.getSheetAt(0).getRow(0).createCell(70);
                            cell.setCellFormula("1+1");
                            b.getSheetAt(0)
                                    .getSheet()
                                    .getCellValueIterator()
                                    .forEachRemaining(
                                            v -> {
                                                if (v
                                                        instanceof
                                                        org.apache.poi.hssf.record.aggregates
                                                                        .FormulaRecordAggregate
                                                                f) {
                                                    f.setParsedExpression(
                                                            new Ptg[] {new Ref3DPtg("A1", 99)});
                                                }
                                            });
                        }),
                xls(
                        "a name without a formula",
                        b -> {
                            HSSFName name = b.createName();
                            name.setNameName("Crews");
                            NameRecord record = b.getInternalWorkbook().getNameRecord(0);
                            record.setNameDefinition(Ptg.EMPTY_PTG_ARRAY);
                        }));
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("registers")
    void isCheckedWithEveryFindingInACopy(String what, String name, byte[] content)
            throws IOException {
        Path register = Files.write(folder.resolve(name), content);
        Outcome outcome =
                new Batch((w, done, of) -> {})
                        .check(SampleWeek.request(register, folder.resolve("out")));
        assertThat(outcome.ending()).isEqualTo(Ending.HELD);
        assertThat(outcome.counts().jobs()).isEqualTo(2);
        assertThat(outcome.published()).as("%s", outcome.findings()).isPresent();
        try (XSSFWorkbook copy =
                new XSSFWorkbook(Files.newInputStream(outcome.published().get()))) {
            XSSFSheet sheet = copy.getSheet(SHEET);
            assertThat(sheet.getRow(1).getCell(0).getStringCellValue()).isEqualTo("SB-1101");
            XSSFCell postcode = sheet.getRow(2).getCell(22);
            assertThat(postcode.getStringCellValue()).isEqualTo("33");
            assertThat(postcode.getCellComment().getString().getString())
                    .contains("postcode-wrong");
            for (XSSFComment comment : sheet.getCellComments().values()) {
                assertThat(comment.getClientAnchor().getRow2())
                        .as("how far down the box of a comment goes")
                        .isLessThan(300);
            }
            Sheet list = copy.getSheet("Findings");
            assertThat(list.getLastRowNum()).isEqualTo(outcome.findings().size() + 2);
        }
        assertThat(Files.readAllBytes(register)).isEqualTo(content);
    }

    @Test
    void aRegisterThatCannotBeCopiedIsPublishedWithAPlainCopyThatSaysSo() throws IOException {
        Arguments harmed = xlsx("damaged docProps", "docProps/app.xml", t -> "<Other/>");
        Path register = Files.write(folder.resolve("week.xlsx"), (byte[]) harmed.get()[2]);
        Outcome outcome =
                new Batch((w, done, of) -> {})
                        .prepare(SampleWeek.request(register, folder.resolve("out")));
        assertThat(outcome.published())
                .as("%s %s", outcome.ending(), outcome.findings())
                .isPresent();
        Path batch = outcome.published().get();
        assertThat(outcome.findings())
                .filteredOn(f -> f.code().code().equals("side-file-lacking"))
                .singleElement()
                .satisfies(f -> assertThat(f.fact()).contains("not copied with its looks"));
        assertThat(batch.resolve("print-run.pdf")).isRegularFile();
        assertThat(batch.resolve("summary.xlsx")).isRegularFile();
        assertThat(batch.resolve("register-checked.xlsx")).isRegularFile();
        assertThat(Files.readString(batch.resolve("index.html"))).contains("side-file-lacking");
    }

    @Test
    void whatIsBegunBesideACopyThatLacksSomethingTellsOfItAsIfItWasBegunAfter() throws IOException {
        Arguments harmed = xlsx("damaged docProps", "docProps/app.xml", t -> "<Other/>");
        Path register = Files.write(folder.resolve("week.xlsx"), (byte[]) harmed.get()[2]);
        Path alone = prepared(register, 1);
        Path beside = prepared(register, 3);
        try (Stream<Path> files = Files.walk(alone)) {
            assertThat(files.filter(Files::isRegularFile).toList())
                    .hasSizeGreaterThan(8)
                    .allSatisfy(
                            file ->
                                    assertThat(beside.resolve(alone.relativize(file)))
                                            .hasSameBinaryContentAs(file));
        }
    }

    private Path prepared(Path register, int threads) throws IOException {
        return new Batch((w, done, of) -> {}, new Proof(), Optional.of(threads))
                .prepare(SampleWeek.request(register, folder.resolve("by-" + threads)))
                .published()
                .orElseThrow();
    }

    private static Arguments xlsx(String what, String part, UnaryOperator<String> harm)
            throws IOException {
        Map<String, byte[]> parts = new LinkedHashMap<>();
        byte[] good = bytes(new XSSFWorkbook());
        try (ZipInputStream zip = new ZipInputStream(new ByteArrayInputStream(good))) {
            for (ZipEntry e = zip.getNextEntry(); e != null; e = zip.getNextEntry()) {
                parts.put(e.getName(), zip.readAllBytes());
            }
        }
        String before = new String(parts.getOrDefault(part, new byte[0]), StandardCharsets.UTF_8);
        String after = harm.apply(before);
        assertThat(after).as(what).isNotEqualTo(before);
        parts.put(part, after.getBytes(StandardCharsets.UTF_8));
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try (ZipOutputStream zip = new ZipOutputStream(out)) {
            for (Map.Entry<String, byte[]> entry : parts.entrySet()) {
                zip.putNextEntry(new ZipEntry(entry.getKey()));
                zip.write(entry.getValue());
            }
        }
        return Arguments.of(what, "week.xlsx", out.toByteArray());
    }

    private static Arguments xls(String what, Consumer<HSSFWorkbook> harm) throws IOException {
        HSSFWorkbook book = new HSSFWorkbook();
        fill(book);
        harm.accept(book);
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        book.write(out);
        return Arguments.of(what, "week.xls", out.toByteArray());
    }

    private static byte[] bytes(Workbook book) throws IOException {
        try (book) {
            fill(book);
            ByteArrayOutputStream out = new ByteArrayOutputStream();
            book.write(out);
            return out.toByteArray();
        }
    }

    private static void fill(Workbook book) throws IOException {
        Sheet sheet = book.createSheet(SHEET);
        try (CSVParser lines =
                CSVParser.parse(
                        SampleWeek.only("SB-1101", "SB-1102").replace("\uFEFF", ""),
                        CSVFormat.RFC4180)) {
            for (List<String> line : lines.stream().map(r -> r.toList()).toList()) {
                Row row = sheet.createRow(sheet.getPhysicalNumberOfRows());
                for (int i = 0; i < line.size(); i++) {
                    row.createCell(i).setCellValue(line.get(i));
                }
            }
        }
        sheet.getRow(2).getCell(22).setCellValue("33");
    }
}
