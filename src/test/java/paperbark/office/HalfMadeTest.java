package paperbark.office;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import paperbark.cli.Program;
import paperbark.disk.FolderLock;
import paperbark.disk.Staging;

/** Folders that a run which was cut short leaves hidden in packs hold people's data and go. */
class HalfMadeTest {
    @TempDir private Path folder;

    private Office office;

    @BeforeEach
    void makeAnOffice() throws IOException {
        office = Offices.make(folder.resolve("office"));
    }

    private Path halfMade(String name) throws IOException {
        Path packs = Files.createDirectories(office.packs().resolve(name).resolve("packs"));
        Files.writeString(packs.resolve("J-1.pdf"), "somebody's pack");
        return packs.getParent();
    }

    private Program.Run run(String... words) {
        return Program.run(office.root(), words);
    }

    private Program.Run watch() {
        return run("watch", ".", "--once", "--quiet-for", "0");
    }

    @Test
    void whatAKilledRunLeftIsClearedByTheNextStart() throws IOException {
        Path left = halfMade(".2026-11-23-one-123");
        assertThat(run("doctor", ".").out()).contains("in no ledger; the next watch clears it");
        assertThat(watch().exitCode()).isZero();
        assertThat(left).doesNotExist();
    }

    @Test
    void forgetClearsItToo() throws IOException {
        Files.writeString(office.intake().resolve("one.csv"), Offices.register(1));
        assertThat(watch().exitCode()).isZero();
        Path left = halfMade(".2026-11-23-one-123");
        Instant late = Instant.parse("2041-01-01T12:00:00Z");
        assertThat(Program.run(late, office.root(), "forget", "J-1").exitCode()).isZero();
        assertThat(left).doesNotExist();
    }

    @Test
    void whatARunAtWorkMakesIsLeftAloneAndNobodyIsToldToDeleteIt() throws IOException {
        Path atWork = halfMade(".2026-11-23-one-123");
        try (FolderLock lock = FolderLock.take(office.packs())) {
            assertThat(lock.isOf(office.packs())).isTrue();
            assertThat(run("doctor", ".").out()).contains("another run is at work here; leave it");
            assertThat(watch().exitCode()).isZero();
        }
        assertThat(atWork).isDirectory();
    }

    @Test
    void aHiddenFolderThatALedgerKnowsIsNeverDeleted() throws IOException {
        Files.writeString(office.intake().resolve("one.csv"), Offices.register(1));
        assertThat(watch().exitCode()).isZero();
        Path another = office.packs().resolve(".2026-11-23-one-77");
        Offices.copy(office.packs().resolve("2026-11-23-one"), another);
        assertThat(run("doctor", ".").out()).contains("may be the only copy of a batch; leave it");
        assertThat(watch().exitCode()).isZero();
        assertThat(another).isDirectory();
    }

    /** Waits in the middle of its papers until it is told to end. */
    @Test
    @Tag("slow")
    void aProcessThatIsToldToEndLeavesNoHiddenFolder() throws Exception {
        Files.writeString(office.intake().resolve("one.csv"), Offices.register(1, 2));
        Path trace = folder.resolve("trace");
        Process watch =
                Child.watch(
                        office,
                        folder.resolve("said"),
                        "paperbark.fault=PAPER:pause",
                        "paperbark.trace=" + trace);
        while (watch.isAlive() && hidden().isEmpty()) {
            Thread.sleep(50);
        }
        assertThat(hidden()).hasSize(1);
        watch.destroy();
        watch.waitFor();
        assertThat(hidden()).isEmpty();
        assertThat(watch().exitCode()).isZero();
        assertThat(office.packs().resolve("2026-11-23-one")).isDirectory();
    }

    private List<Path> hidden() throws IOException {
        return Office.list(office.packs()).stream()
                .filter(f -> Office.isHidden(f) && Files.isDirectory(f))
                .toList();
    }

    @Test
    void aFolderThatIsKeptIsNoLongerDeleted() throws IOException {
        Path target = folder.resolve("batch");
        try (Staging staging = Staging.of(target)) {
            staging.write("a.txt", new byte[] {1});
            staging.keep();
        }
        assertThat(Office.list(folder))
                .anyMatch(f -> f.getFileName().toString().startsWith(".batch-"));
    }
}
