package paperbark.office;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Which folder is an office, and where its things lie. */
class OfficeTest {
    @TempDir private Path folder;

    @ParameterizedTest
    @ValueSource(strings = {"intake", "tables", "tables.xlsx", "paperbark.db", "ledger.txt"})
    void oneOfTheseMakesAFolderAnOffice(String name) throws IOException {
        assertThat(Office.isOffice(folder)).isFalse();
        Files.createFile(folder.resolve(name));
        assertThat(Office.isOffice(folder)).isTrue();
    }

    @Test
    void whatIsMissingIsMade() throws IOException {
        Office office = Office.in(folder);
        assertThat(Office.list(office.root()))
                .extracting(f -> f.getFileName().toString())
                .containsExactly("filed", "intake", "packs", "returned", "scans", "work");
    }

    @Test
    void theTablesAreAWorkbookOnlyWhereThereIsNoFolder() throws IOException {
        Office office = Office.in(folder);
        assertThat(office.tables()).isEqualTo(office.root().resolve("tables"));
        Files.createFile(office.root().resolve("tables.xlsx"));
        assertThat(office.tables()).isEqualTo(office.root().resolve("tables.xlsx"));
        Files.createDirectory(office.root().resolve("tables"));
        assertThat(office.tables()).isEqualTo(office.root().resolve("tables"));
    }

    @Test
    void rulesLieBesideTheWorkbookOrInTheFolderOfTables() throws IOException {
        Office office = Office.in(folder);
        assertThat(office.rules()).isEmpty();
        Path beside = Files.createDirectory(office.root().resolve("rules"));
        assertThat(office.rules()).contains(beside);
        Files.createDirectory(office.root().resolve("tables"));
        assertThat(office.rules()).isEmpty();
        Path within = Files.createDirectory(office.root().resolve("tables/rules"));
        assertThat(office.rules()).contains(within);
        assertThat(office.templates()).isEmpty();
        Path templates = Files.createDirectory(office.root().resolve("templates"));
        assertThat(office.templates()).contains(templates);
    }

    @Test
    void twoJobsNeverHaveOneFolderOfSignedPapers() {
        assertThat(Office.signedFolder("SB-1")).isEqualTo("SB-1");
        assertThat(Office.signedFolder("SB/1")).matches("SB-1-[0-9a-f]{6}");
        assertThat(Office.signedFolder("SB 1"))
                .startsWith("SB-1-")
                .isNotEqualTo(Office.signedFolder("SB/1"));
        assertThat(Office.signedFolder("sb/1").substring(5))
                .isEqualTo(Office.signedFolder("SB/1").substring(5));
    }

    @Test
    void hiddenNamesBeginWithADot() {
        assertThat(Office.isHidden(folder.resolve(".week"))).isTrue();
        assertThat(Office.isHidden(folder.resolve("week"))).isFalse();
        assertThat(Office.isHidden(Path.of("/.hidden/week"))).isFalse();
    }

    @Test
    void whatIsAskedToStopIsAskedUntilItIsAnswered() throws IOException {
        Office office = Office.in(folder);
        assertThat(StopRequest.isMade(office)).isFalse();
        StopRequest.make(office);
        assertThat(StopRequest.isMade(office)).isTrue();
        StopRequest.clear(office);
        assertThat(StopRequest.isMade(office)).isFalse();
        StopRequest.clear(office);
    }

    @Test
    void theManualIsWrittenWhereItIsMissingOrDiffersAndOnlyThere() throws IOException {
        assertThat(ManualCopy.renew(folder)).isTrue();
        Path index = folder.resolve("manual/index.html");
        assertThat(index).isNotEmptyFile();
        assertThat(ManualCopy.renew(folder)).isFalse();
        byte[] shipped = Files.readAllBytes(index);
        Files.writeString(index, "an earlier program's");
        assertThat(ManualCopy.renew(folder)).isTrue();
        assertThat(Files.readAllBytes(index)).isEqualTo(shipped);
    }

    @ParameterizedTest
    @CsvSource({"Windows 11, WINDOWS", "Mac OS X, MAC", "Linux, LINUX", "FreeBSD, LINUX"})
    void thePlatformIsToldByTheSystemsName(String name, Platform platform) {
        assertThat(Platform.of(name)).isEqualTo(platform);
    }
}
