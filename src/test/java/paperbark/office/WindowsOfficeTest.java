package paperbark.office;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.FileSystem;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import paperbark.disk.Windows;

/** The ways of an office folder, but for its ledger, by the rules of Windows. */
class WindowsOfficeTest {
    private static final Instant NOW = Instant.parse("2026-11-23T01:00:00Z");

    private FileSystem drive;
    private Office office;

    @BeforeEach
    void makeAnOffice() throws IOException {
        drive = Windows.drive();
        Path root = Files.createDirectories(drive.getPath("C:\\Users\\Jörg Ä\\Dokumente\\office"));
        office = Office.in(root);
    }

    @AfterEach
    void close() throws IOException {
        drive.close();
    }

    private Path drop(String name) throws IOException {
        Path file = Files.writeString(office.intake().resolve(name), "Job,Owner\n");
        Files.setLastModifiedTime(file, FileTime.from(NOW.minusSeconds(60)));
        return file;
    }

    @Test
    void aRegisterIsTakenOnceItStayedTheSameAndNobodyHasItOpen() throws IOException {
        Path week = drop("Woche 48 (neu).XLSX");
        drop("~$Open.xlsx");
        drop("Open.xlsx");
        drop("THUMBS.DB");
        Intake intake = new Intake(office.intake(), Duration.ofSeconds(10));
        intake.look(NOW);
        Intake.Look look = intake.look(NOW.plusSeconds(11));

        assertThat(look.ready()).containsExactly(week);
        assertThat(look.waiting().keySet())
                .extracting(f -> f.getFileName().toString())
                .containsExactly("Open.xlsx");
    }

    @Test
    void aRegisterGoesToWorkAndBackToWhereAnotherOfItsNameLiesByNow() throws IOException {
        WorkItem item = WorkItem.take(office, drop("Week.csv"));
        assertThat(item.source().orElseThrow())
                .isEqualTo(office.work().resolve("0001\\source\\week.CSV"));
        drop("WEEK.csv");
        item.putBack(office);

        assertThat(office.intake().resolve("week-2.csv")).isRegularFile();
        assertThat(Office.list(office.intake())).hasSize(2);
        assertThat(Office.list(office.work())).isEmpty();
    }

    @Test
    void aRegisterThatCannotBeUsedGoesBackUnderANameThatWindowsTakes() throws IOException {
        WorkItem item = WorkItem.take(office, drop("Aux. - Liste.csv"));
        for (int i = 0; i < Handling.MOST_FAULTS; i++) {
            item.countFault();
        }
        Returned.unread(office, item, LocalDate.of(2026, 11, 23));

        List<Path> returned = Office.list(office.returned());
        assertThat(returned).hasSize(1);
        assertThat(returned.get(0).getFileName().toString())
                .isEqualTo("2026-11-23-aux-liste")
                .matches(Windows::takes);
        assertThat(returned.get(0).resolve("aux. - liste.csv")).isRegularFile();
    }

    @Test
    void oneProgramAttendsTheFolderAndIsAskedToStopByAFile() throws Exception {
        try (OfficeLock lock = OfficeLock.take(office, NOW)) {
            assertThat(lock.office().root()).isEqualTo(office.root());
            assertThat(Files.exists(office.lockInfo())).isTrue();
            StopRequest.make(office);
            assertThat(StopRequest.isMade(office)).isTrue();
            StopRequest.clear(office);
            assertThat(StopRequest.isMade(office)).isFalse();
        }
        assertThat(Files.exists(office.lockInfo())).isFalse();
    }

    @Test
    void aRegisterThatIsMovedOntoOneThatCameMeanwhileReplacesNothing() throws IOException {
        Path week = drop("week.csv");
        drop("WEEK-2.csv");
        assertThatThrownBy(
                        () -> paperbark.disk.Disk.move(week, office.intake().resolve("Week-2.CSV")))
                .isInstanceOf(IOException.class);
        assertThat(week).isRegularFile();
    }
}
