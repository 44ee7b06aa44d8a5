package paperbark.sheet;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static paperbark.finding.FindingCode.FILE_ENCRYPTED;
import static paperbark.finding.FindingCode.FILE_HAS_MACROS;
import static paperbark.finding.FindingCode.FILE_MISLABELLED;
import static paperbark.finding.FindingCode.FILE_TOO_LARGE;
import static paperbark.finding.FindingCode.FILE_UNREADABLE;
import static paperbark.finding.FindingCode.REGISTER_EMPTY;
import static paperbark.sheet.Books.codes;
import static paperbark.sheet.Books.row;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.SocketTimeoutException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.apache.poi.hssf.record.crypto.Biff8EncryptionKey;
import org.apache.poi.hssf.usermodel.HSSFWorkbook;
import org.apache.poi.poifs.crypt.EncryptionInfo;
import org.apache.poi.poifs.crypt.EncryptionMode;
import org.apache.poi.poifs.crypt.Encryptor;
import org.apache.poi.poifs.filesystem.POIFSFileSystem;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.junit.jupiter.api.Assertions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import paperbark.finding.Finding;
import paperbark.finding.FindingCode;
import paperbark.finding.Severity;

/** Files made to harm, or of another kind than their name says: one finding each, and fast. */
class HostileFileTest {
    private static final byte[] GOOD = Books.xlsx(s -> row(s, 2, "SB-1", "Ann", "later", "TD-1"));
    private static final Duration SOON = Duration.ofSeconds(5);

    @TempDir Path folder;

    @Test
    void outsideEntitiesAreRefusedAndNobodyIsCalled() throws IOException {
        try (ServerSocket listener = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
            listener.setSoTimeout(300);
            String url = "http://127.0.0.1:" + listener.getLocalPort() + "/x";
            String type = "<!DOCTYPE x [<!ENTITY e SYSTEM \"" + url + "\">]>";
            for (String part :
                    new String[] {Books.SHEET, "xl/sharedStrings.xml", "xl/styles.xml"}) {
                assertRefused("week.xlsx", withDoctype(part, type), FILE_UNREADABLE);
            }
            assertThatThrownBy(listener::accept).isInstanceOf(SocketTimeoutException.class);
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {Books.SHEET, "xl/sharedStrings.xml", "xl/workbook.xml"})
    void entitiesThatMultiplyAreRefused(String part) {
        StringBuilder type = new StringBuilder("<!DOCTYPE x [<!ENTITY a0 \"ha\">");
        for (int i = 1; i < 40; i++) {
            type.append("<!ENTITY a").append(i).append(" \"");
            type.append(("&a" + (i - 1) + ";").repeat(10)).append("\">");
        }
        byte[] book = withDoctype(part, type.append("]>").toString());
        book = Books.patched(book, part, text -> text.replaceFirst("</", "&a39;</"));
        assertRefused("week.xlsx", book, FILE_UNREADABLE);
    }

    @Test
    void aZipBombIsRefusedWithoutBeingUnpacked() {
        byte[] zeros = new byte[320 * 1024 * 1024];
        byte[] book = Books.with(GOOD, "xl/media/picture.bin", zeros);
        assertThat(book.length).isLessThan(1024 * 1024);
        assertRefused("week.xlsx", book, FILE_TOO_LARGE);
    }

    @Test
    void aSheetThatUnpacksToMillionsOfCellsIsRefused() {
        StringBuilder rows = new StringBuilder();
        for (int row = 3; row < 400_000; row++) {
            rows.append("<row r=\"").append(row).append("\"><c s=\"0\"/><c s=\"0\"/></row>");
        }
        byte[] book =
                Books.patched(
                        GOOD, Books.SHEET, t -> t.replace("</sheetData>", rows + "</sheetData>"));
        Finding finding = assertRefused("week.xlsx", book, FILE_TOO_LARGE);
        assertThat(finding.fact()).contains("formatted");
    }

    @Test
    void twoMillionTextsThatNoCellShowsAreRefusedBeforeTheyAreLoaded() {
        byte[] book =
                Books.patched(
                        GOOD,
                        "xl/sharedStrings.xml",
                        t -> t.replace("</sst>", "<si><t>x</t></si>".repeat(2_000_000) + "</sst>"));
        assertThat(assertRefused("week.xlsx", book, FILE_TOO_LARGE).fact())
                .contains("table of texts");
    }

    @Test
    void tooManyRowsAndColumnsAreRefused() {
        StringBuilder rows = new StringBuilder();
        for (int row = 3; row < 20_010; row++) {
            rows.append("<row r=\"" + row + "\"><c r=\"A" + row + "\"><v>1</v></c></row>");
        }
        byte[] book =
                Books.patched(
                        GOOD, Books.SHEET, t -> t.replace("</sheetData>", rows + "</sheetData>"));
        assertThat(assertRefused("week.xlsx", book, FILE_TOO_LARGE).fact()).contains("rows");
        byte[] wide = Books.xlsx(s -> row(s, 2, "SB-1").createCell(200).setCellValue("x"));
        assertThat(assertRefused("week.xlsx", wide, FILE_TOO_LARGE).fact()).contains("GS");
        byte[] old = Books.xls(s -> row(s, 2, "SB-1").createCell(200).setCellValue("x"));
        assertRefused("week.xls", old, FILE_TOO_LARGE);
    }

    @Test
    void tooManyPartsAreRefused() {
        Map<String, byte[]> parts = new LinkedHashMap<>();
        for (int i = 0; i < 1500; i++) {
            parts.put("xl/media/p" + i, new byte[1]);
        }
        parts.put("[Content_Types].xml", new byte[1]);
        parts.put("xl/workbook.xml", new byte[1]);
        assertRefused("week.xlsx", Books.zip(parts), FILE_TOO_LARGE);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {"../evil.xml", "xl/../../evil", "/xl/x", "xl\\..\\y", "XL/Workbook.xml"})
    void partsWithNamesThatLeadElsewhereOrRepeatAreRefused(String name) {
        assertRefused("week.xlsx", Books.with(GOOD, name, "<x/>".getBytes(UTF_8)), FILE_UNREADABLE);
    }

    @Test
    void aDeeplyNestedSheetIsOneFinding() {
        byte[] book =
                Books.patched(
                        GOOD,
                        Books.SHEET,
                        t ->
                                t.replace(
                                        "</worksheet>",
                                        "<extLst>"
                                                + "<a>".repeat(200_000)
                                                + "</a>".repeat(200_000)
                                                + "</extLst></worksheet>"));
        Assertions.assertTimeout(
                SOON, () -> assertThat(Books.read(folder, "week.xlsx", book)).isNotNull());
    }

    @Test
    void aHugeMergedBlockIsRefusedOrIgnoredQuickly() {
        StringBuilder blocks = new StringBuilder("<mergeCells>");
        for (int i = 0; i < 5_000; i++) {
            blocks.append("<mergeCell ref=\"A1:XFD1048576\"/>");
        }
        byte[] book =
                Books.patched(
                        GOOD,
                        Books.SHEET,
                        t -> t.replace("</sheetData>", "</sheetData>" + blocks + "</mergeCells>"));
        Assertions.assertTimeout(
                SOON, () -> assertThat(Books.read(folder, "week.xlsx", book)).isNotNull());
    }

    @ParameterizedTest
    @ValueSource(strings = {"week.xlsm", "week.xlsx"})
    void workbooksWithMacrosAreReadAsDataAndSaySo(String name) {
        Reading<paperbark.sheet.Sheet> reading = Books.read(folder, name, withMacros());
        assertThat(Books.sheet(reading).rows()).isEqualTo(rowsOf("plain.xlsx", GOOD));
        assertThat(reading.findings())
                .singleElement()
                .satisfies(f -> assertThat(f.code()).isEqualTo(FILE_HAS_MACROS))
                .satisfies(f -> assertThat(f.severity()).isEqualTo(Severity.NOTE));
    }

    @Test
    void theCopyOfAWorkbookWithMacrosHasNone() throws IOException {
        Path file = Books.save(folder, "week.xlsm", withMacros());
        byte[] copy = SheetReader.asWorkbook(file).result().orElseThrow();
        Reading<paperbark.sheet.Sheet> reading = Books.read(folder, "copy.xlsx", copy);
        assertThat(Books.sheet(reading).rows()).isEqualTo(rowsOf("plain.xlsx", GOOD));
        assertThat(reading.findings()).isEmpty();
        assertThat(new String(copy, StandardCharsets.ISO_8859_1)).doesNotContain("vbaProject");
        assertThat(Files.readAllBytes(file)).isEqualTo(withMacros());
    }

    private List<paperbark.sheet.Row> rowsOf(String name, byte[] content) {
        return Books.sheet(Books.read(folder, name, content)).rows();
    }

    private static byte[] withMacros() {
        try (XSSFWorkbook book = new XSSFWorkbook(new ByteArrayInputStream(GOOD))) {
            book.setVBAProject(new ByteArrayInputStream(new byte[10]));
            return Books.bytes(book);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"secret", "VelvetSweatshop"})
    void lockedWorkbooksAreRefusedAndNoPasswordIsTried(String password) throws Exception {
        try (POIFSFileSystem container = new POIFSFileSystem()) {
            Encryptor encryptor = new EncryptionInfo(EncryptionMode.agile).getEncryptor();
            encryptor.confirmPassword(password);
            try (OutputStream out = encryptor.getDataStream(container)) {
                out.write(GOOD);
            }
            ByteArrayOutputStream locked = new ByteArrayOutputStream();
            container.writeFilesystem(locked);
            Finding finding = assertRefused("week.xlsx", locked.toByteArray(), FILE_ENCRYPTED);
            assertThat(finding.remedy()).contains("remove the password");
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"secret", "VelvetSweatshop"})
    void lockedOldWorkbooksAreRefusedAndNoPasswordIsTried(String password) throws IOException {
        Biff8EncryptionKey.setCurrentUserPassword(password);
        byte[] locked;
        try (HSSFWorkbook book = new HSSFWorkbook()) {
            row(book.createSheet("Week 47"), 1, "Job", "Owner");
            locked = Books.bytes(book);
        } finally {
            Biff8EncryptionKey.setCurrentUserPassword(null);
        }
        assertRefused("week.xls", locked, FILE_ENCRYPTED);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            textBlock =
                    """
                    week.xlsx | <html><table>              | web page
                    week.xls  | <!DOCTYPE html><table>     | web page
                    week.csv  | <html>                     | web page
                    week.xlsx | %PDF-1.7                   | PDF document
                    week.xlsx | <?xml version="1.0"?><a/>  | XML document
                    week.xlsx | {\\rtf1                    | rich-text
                    week.xlsx | Job,Owner                  | plain text
                    week.xls  | Job,Owner                  | plain text
                    """)
    void aFileThatDoesNotFitItsEndingIsRefusedNamingBoth(
            String name, String content, String words) {
        Finding finding = assertRefused(name, content.getBytes(UTF_8), FILE_MISLABELLED);
        assertThat(finding.fact()).contains(words).contains(name.substring(name.lastIndexOf('.')));
    }

    @Test
    void onlyWhatASpreadsheetProgramOpensIsToBeSavedAgain() {
        byte[] page = "<html><table>".getBytes(UTF_8);
        assertThat(assertRefused("week.xlsx", page, FILE_MISLABELLED).remedy()).contains("Open it");
        byte[] pdf = "%PDF-1.7".getBytes(UTF_8);
        assertThat(assertRefused("week.xlsx", pdf, FILE_MISLABELLED).remedy())
                .doesNotContain("Open it");
    }

    @Test
    void workbooksUnderEachOthersEndingsAreRefused() {
        byte[] old = Books.xls(s -> row(s, 2, "SB-1", "Ann"));
        assertRefused("week.xls", GOOD, FILE_MISLABELLED);
        assertRefused("week.csv", GOOD, FILE_MISLABELLED);
        assertRefused("week.xlsx", old, FILE_MISLABELLED);
    }

    @Test
    void aWorkbookIsKnownByItsContentWhereTheEndingSaysNothing() {
        assertThat(Books.read(folder, "week", GOOD).result()).isPresent();
        assertThat(Books.read(folder, "week.backup", GOOD).result()).isPresent();
        assertThat(Books.read(folder, "WEEK.XLSX", GOOD).result()).isPresent();
    }

    @Test
    void otherContainersAreNamed() {
        Map<String, byte[]> zip = new LinkedHashMap<>(Map.of("week.xlsx", GOOD));
        assertRefused("week.zip", Books.zip(zip), FILE_UNREADABLE);
        assertRefused("week.xlsx", Books.zip(zip), FILE_MISLABELLED);
        Map<String, byte[]> word = Map.of("word/document.xml", new byte[1]);
        Finding finding = assertRefused("week.xlsx", Books.zip(word), FILE_MISLABELLED);
        assertThat(finding.fact()).contains("Word document");
        Map<String, byte[]> ods = Map.of("mimetype", new byte[1], "content.xml", new byte[1]);
        assertThat(assertRefused("week.odt", Books.zip(ods), FILE_UNREADABLE).fact())
                .contains("OpenDocument");
        Map<String, byte[]> binary = Map.of("xl/workbook.bin", new byte[1]);
        assertRefused("week.xlsb", Books.zip(binary), FILE_UNREADABLE);
    }

    @Test
    void theStrictVariantIsNamed() {
        byte[] strict =
                Books.patched(
                        GOOD,
                        "xl/workbook.xml",
                        t ->
                                t.replace(
                                        "http://schemas.openxmlformats.org/spreadsheetml/2006/main",
                                        "http://purl.oclc.org/ooxml/spreadsheetml/main"));
        assertThat(assertRefused("week.xlsx", strict, FILE_UNREADABLE).remedy()).contains("Strict");
    }

    @Test
    void onlyRegularFilesAreOpened() throws Exception {
        Files.createDirectory(folder.resolve("week.xlsx"));
        assertUnopened(folder.resolve("week.xlsx"));
        assertUnopened(folder.resolve("missing.xlsx"));
        Path pipe = folder.resolve("pipe.csv");
        assertThat(new ProcessBuilder("mkfifo", pipe.toString()).start().waitFor()).isZero();
        assertUnopened(pipe);
        assertUnopened(Files.createSymbolicLink(folder.resolve("link.csv"), pipe));
        assertUnopened(Path.of("/dev/zero"));
        assertThat(codes(Books.read(folder, "empty.xlsx", new byte[0])))
                .containsExactly(REGISTER_EMPTY);
    }

    private static void assertUnopened(Path file) {
        Assertions.assertTimeoutPreemptively(
                SOON,
                () ->
                        assertThat(codes(SheetReader.read(file, Books.KNOWN, Optional.empty())))
                                .containsExactly(FILE_UNREADABLE));
    }

    private Finding assertRefused(String name, byte[] content, FindingCode code) {
        ThreadMXBean threads = ManagementFactory.getThreadMXBean();
        long before = threads.getCurrentThreadCpuTime();
        Reading<Sheet> reading = Books.read(folder, name, content);
        // Processor time: what else the machine does is no fault of the reader's.
        assertThat(threads.getCurrentThreadCpuTime() - before).isLessThan(SOON.toNanos());
        assertThat(reading.result()).isEmpty();
        assertThat(codes(reading)).containsExactly(code);
        return reading.findings().get(0);
    }

    private static byte[] withDoctype(String part, String type) {
        return Books.patched(
                GOOD,
                part,
                text -> {
                    int end = text.startsWith("<?xml") ? text.indexOf("?>") + 2 : 0;
                    return text.substring(0, end) + type + text.substring(end);
                });
    }
}
