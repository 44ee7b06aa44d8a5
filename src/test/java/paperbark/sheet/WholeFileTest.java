package paperbark.sheet;

import static org.assertj.core.api.Assertions.assertThat;
import static paperbark.finding.FindingCode.FILE_MAY_BE_CUT;
import static paperbark.finding.FindingCode.FILE_UNREADABLE;
import static paperbark.sheet.Books.codes;
import static paperbark.sheet.Books.row;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import org.apache.poi.ss.usermodel.Sheet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Half-copied and damaged files are refused, and reading leaves no trace in the file. */
class WholeFileTest {
    private static final Consumer<Sheet> JOBS =
            sheet -> {
                for (int i = 2; i < 200; i++) {
                    row(sheet, i, "SB-" + i, "Owner " + i * 7919, i, "TD-" + i * 104_729);
                }
            };
    private static final byte[] XLSX = Books.xlsx(JOBS);
    private static final byte[] XLS = Books.xls(JOBS);

    @TempDir Path folder;

    @ParameterizedTest
    @ValueSource(ints = {50, 90, 98})
    void aWorkbookCutShortIsRefused(int percent) {
        byte[] cut = Arrays.copyOf(XLSX, XLSX.length * percent / 100);
        assertThat(codes(Books.read(folder, "week.xlsx", cut))).containsExactly(FILE_MAY_BE_CUT);
        byte[] old = Arrays.copyOf(XLS, XLS.length * percent / 100);
        assertThat(codes(Books.read(folder, "week.xls", old))).containsExactly(FILE_MAY_BE_CUT);
    }

    @Test
    void aWorkbookOneByteShortIsRefused() {
        byte[] cut = Arrays.copyOf(XLSX, XLSX.length - 1);
        assertThat(codes(Books.read(folder, "week.xlsx", cut))).containsExactly(FILE_MAY_BE_CUT);
    }

    @Test
    void anOldWorkbookCutAnywhereIsRefusedOrHasAllItsRows() {
        int refused = 0;
        List<Row> rows = Books.sheet(Books.read(folder, "week.xls", XLS)).rows();
        for (int lost = 1; lost < XLS.length; lost += 211) {
            byte[] cut = Arrays.copyOf(XLS, XLS.length - lost);
            Reading<paperbark.sheet.Sheet> reading = Books.read(folder, "week.xls", cut);
            refused += reading.result().isEmpty() ? 1 : 0;
            reading.result()
                    .ifPresent(
                            sheet -> assertThat(sheet.rows()).as("-" + cut.length).isEqualTo(rows));
        }
        assertThat(refused).isGreaterThan(XLS.length / 211 * 9 / 10);
    }

    @Test
    void noCutOfAnyLengthIsAcceptedAsAWorkbook() {
        for (int length = 1; length < XLSX.length; length += 97) {
            Reading<paperbark.sheet.Sheet> reading =
                    Books.read(folder, "week.xlsx", Arrays.copyOf(XLSX, length));
            assertThat(reading.result()).as(length + " bytes").isEmpty();
            assertThat(reading.findings()).hasSize(1);
        }
    }

    @Test
    void aWorkbookWhoseEndIsZerosIsRefused() {
        byte[] zeros = XLSX.clone();
        Arrays.fill(zeros, zeros.length / 2, zeros.length, (byte) 0);
        assertThat(codes(Books.read(folder, "week.xlsx", zeros))).containsExactly(FILE_MAY_BE_CUT);
    }

    @Test
    void aFlippedByteNeverLosesARowSilently() {
        int refused = 0;
        for (int at = 100; at < XLSX.length; at += 101) {
            byte[] flipped = XLSX.clone();
            flipped[at] ^= 0x10;
            Reading<paperbark.sheet.Sheet> reading = Books.read(folder, "week.xlsx", flipped);
            refused += reading.result().isEmpty() ? 1 : 0;
            reading.result().ifPresent(sheet -> assertThat(sheet.rows()).hasSize(198));
            assertThat(reading.findings().size()).isLessThanOrEqualTo(1);
        }
        assertThat(refused).isPositive();
    }

    @Test
    void xmlThatIsCutInsideAWholeZipIsRefused() {
        byte[] book =
                Books.patched(XLSX, Books.SHEET, text -> text.substring(0, text.length() / 2));
        assertThat(codes(Books.read(folder, "week.xlsx", book))).containsExactly(FILE_UNREADABLE);
    }

    @ParameterizedTest
    @ValueSource(strings = {"week.xlsx", "week.xls", "week.csv"})
    void readingChangesNeitherTheBytesNorTheTimeOfTheFile(String name) throws IOException {
        byte[] content =
                switch (name) {
                    case "week.xlsx" -> XLSX;
                    case "week.xls" -> XLS;
                    default -> "Job,Owner\nSB-1,Ann\n".getBytes(StandardCharsets.UTF_8);
                };
        Path file = Books.save(folder, name, content);
        FileTime time = FileTime.from(Instant.parse("2026-11-20T01:02:03Z"));
        Files.setLastModifiedTime(file, time);
        assertThat(SheetReader.read(file, Books.KNOWN, Optional.empty()).result()).isPresent();
        assertThat(Files.readAllBytes(file)).isEqualTo(content);
        assertThat(Files.getLastModifiedTime(file)).isEqualTo(time);
        try (var files = Files.list(folder)) {
            assertThat(files).containsExactly(file);
        }
    }

    @Test
    void anOldWorkbookReadsLikeANewOne() {
        paperbark.sheet.Sheet fromNew = Books.sheet(Books.read(folder, "week.xlsx", XLSX));
        paperbark.sheet.Sheet fromOld = Books.sheet(Books.read(folder, "week.xls", XLS));
        assertThat(fromOld.rows()).isEqualTo(fromNew.rows()).hasSize(198);
        assertThat(fromOld.columns()).isEqualTo(fromNew.columns());
    }
}
