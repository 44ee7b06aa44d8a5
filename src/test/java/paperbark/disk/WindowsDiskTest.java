package paperbark.disk;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileSystem;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.Map;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.Stream;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** Writing, renaming, publishing and locking by the rules of Windows. */
class WindowsDiskTest {
    private static final byte[] TEXT = "text".getBytes(StandardCharsets.UTF_8);

    private FileSystem drive;
    private Path office;

    @BeforeEach
    void openADrive() {
        drive = Windows.drive();
        office = drive.getPath("C:\\Büro für Heißwasser\\office");
    }

    @AfterEach
    void close() throws IOException {
        drive.close();
    }

    @Test
    void theJudgeOfNamesKnowsWhatWindowsRefuses() {
        assertThat(Stream.of("CON", "nul.pdf", "Com1.txt", "a.", "a ", "a:b", "a?", "", "x\ty"))
                .noneMatch(Windows::takes);
        assertThat(Stream.of("console.pdf", "SB-1102.pdf", "Büro (2)", ".lock"))
                .allMatch(Windows::takes);
    }

    @Property(tries = 300)
    void aNameMadeOfAnyTextIsOneThatWindowsTakesBehindADay(@ForAll String text) {
        assertThat(Windows.takes("2026-11-23-" + FileNames.slug(text))).isTrue();
        assertThat(Windows.takes(FileNames.slug(text) + "-checked.xlsx")).isTrue();
    }

    @Test
    void caseDoesNotTellTwoFilesApart() throws IOException {
        Disk.replace(office.resolve("Week.xlsx"), TEXT);
        assertThat(FileNames.free(office, "WEEK.XLSX").getFileName()).hasToString("WEEK-2.XLSX");
        assertThatThrownBy(
                        () -> Disk.move(office.resolve("Week.xlsx"), office.resolve("week.XLSX")))
                .isInstanceOf(IOException.class)
                .hasMessageContaining("appeared meanwhile");
        assertThat(office.resolve("week.xlsx")).isRegularFile();
    }

    @Test
    void aFileIsReplacedWholeAndNothingIsLeftBeside() throws IOException {
        Disk.replace(office.resolve("status.html"), TEXT);
        Disk.replace(office.resolve("status.html"), "other".getBytes(StandardCharsets.UTF_8));
        assertThat(office.resolve("status.html")).hasContent("other");
        try (Stream<Path> all = Files.list(office)) {
            assertThat(all).hasSize(1);
        }
    }

    @Test
    void aBatchFolderAppearsByOneRenameOrNotAtAll() throws IOException {
        Path batch = office.resolve("packs").resolve("2026-11-23-week");
        try (Staging staging = Staging.of(batch)) {
            staging.write("packs/SB-1.pdf", TEXT);
            staging.settle();
            staging.keep();
            assertThat(batch).doesNotExist();
            staging.publish();
        }
        assertThat(batch.resolve("packs\\SB-1.pdf")).hasContent("text");

        try (Staging staging = Staging.of(office.resolve("packs").resolve("2026-11-24-week"))) {
            staging.write("packs/SB-2.pdf", TEXT);
        }
        try (Stream<Path> all = Files.list(office.resolve("packs"))) {
            assertThat(all).containsExactly(batch);
        }
    }

    @Test
    void nothingIsWrittenOutsideABatchFolderByAPathOfEitherKind() throws IOException {
        try (Staging staging = Staging.of(office.resolve("packs").resolve("b"))) {
            for (String name : new String[] {"..\\x", "../x", "a/../../x"}) {
                assertThatThrownBy(() -> staging.write(name, TEXT))
                        .isInstanceOf(IllegalArgumentException.class);
            }
        }
    }

    @Test
    void aFolderIsLockedByOneRunAtATime() throws IOException {
        try (FolderLock lock = FolderLock.take(office)) {
            assertThat(lock.isOf(drive.getPath("c:\\BÜRO FÜR HEISSWASSER\\OFFICE")))
                    .as("another folder: ß is not SS in a name")
                    .isFalse();
            assertThat(lock.isOf(drive.getPath("c:\\büro für heißwasser\\OFFICE"))).isTrue();
        }
    }

    @Test
    void rightsOfUnixAreLeftAlone() throws IOException {
        Disk.replace(office.resolve("start.cmd"), TEXT);
        Rights.letStart(office.resolve("start.cmd"));
        Rights.keepPrivate(office);
        assertThat(Rights.readers(office)).isEmpty();
    }

    @Test
    void aFileThatAViewerHasOpenForAMomentIsTriedAgain() throws IOException {
        AtomicInteger tries = new AtomicInteger();
        Files.createDirectories(office);
        Patience.with(
                office,
                () -> {
                    if (tries.incrementAndGet() < 3) {
                        throw new AccessDeniedException("a.pdf");
                    }
                });
        assertThat(tries).hasValue(3);
    }

    @Test
    void oneThatStaysOpenIsToldAfterSomeTriesAndWhatIsGoneAtOnce() throws IOException {
        AtomicInteger tries = new AtomicInteger();
        Files.createDirectories(office);
        assertThatThrownBy(
                        () ->
                                Patience.with(
                                        office,
                                        () -> {
                                            tries.incrementAndGet();
                                            throw new FileSystemException("a.pdf");
                                        }))
                .isExactlyInstanceOf(FileSystemException.class);
        assertThat(tries).hasValue(10);
        assertThatThrownBy(
                        () ->
                                Patience.with(
                                        office,
                                        () -> {
                                            tries.incrementAndGet();
                                            throw new NoSuchFileException("a.pdf");
                                        }))
                .isInstanceOf(NoSuchFileException.class);
        assertThat(tries).hasValue(11);
    }

    @Test
    void elsewhereAnOpenFileHindersNobodyAndNothingIsTriedAgain() {
        AtomicInteger tries = new AtomicInteger();
        assertThatThrownBy(
                        () ->
                                Patience.with(
                                        Path.of("/"),
                                        () -> {
                                            tries.incrementAndGet();
                                            throw new AccessDeniedException("a.pdf");
                                        }))
                .isInstanceOf(AccessDeniedException.class);
        assertThat(tries).hasValue(1);
    }

    @Test
    void namesThatGoTogetherGetTheSameNumber() throws IOException {
        Disk.replace(
                office.resolve("ADVICE-settled.csv"), "other".getBytes(StandardCharsets.UTF_8));
        Map<String, Path> free =
                FileNames.freeFor(Map.of(".xlsx", TEXT, ".csv", TEXT), office, "advice-settled");
        assertThat(free.get(".xlsx").getFileName()).hasToString("advice-settled-2.xlsx");
    }
}
