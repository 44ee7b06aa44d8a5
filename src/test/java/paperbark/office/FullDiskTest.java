package paperbark.office;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import paperbark.cli.Program;
import paperbark.outside.Outside;

/** An office on a disk of its own that runs full, or may not be written. */
@Tag("outside")
@Tag("slow")
class FullDiskTest {
    @TempDir private Path folder;

    private Office office;
    private Path disk;
    private List<String> dropped;

    private void mount(String options) throws IOException {
        disk = Files.createDirectories(folder.resolve("disk"));
        Outside.Result mounted =
                Outside.run(
                        folder, "mount", "-t", "tmpfs", "-o", options, "tmpfs", disk.toString());
        boolean may = mounted.exitCode() == 0;
        if (!may) {
            disk = null;
        }
        Assumptions.assumeTrue(may, "no right to mount a small disk; run as root for this test");
        office = Offices.make(disk.resolve("office"));
        Path register =
                Files.writeString(office.intake().resolve("week.csv"), Offices.register(1, 2));
        dropped = List.of(Invariants.sha256(register));
    }

    private void remount(String options) {
        assertThat(
                        Outside.run(folder, "mount", "-o", "remount," + options, disk.toString())
                                .exitCode())
                .isZero();
    }

    @AfterEach
    void unmount() {
        if (disk != null) {
            Outside.run(folder, "umount", "-l", disk.toString());
        }
    }

    private Program.Run watch() {
        return Program.run(folder, "watch", office.root().toString(), "--once", "--quiet-for", "0");
    }

    private void goesThroughOnceThereIsRoom() throws IOException {
        Program.Run run = watch();
        assertThat(run.exitCode()).as(run.err()).isZero();
        Invariants.hold(office.root(), dropped);
        Invariants.atRest(office.root(), 2);
        assertThat(Office.list(office.packs()))
                .noneMatch(p -> Office.isHidden(p) && Files.isDirectory(p));
    }

    /** Full before the start, at the first paper, among the papers, and at the ledger's end. */
    @ParameterizedTest
    @ValueSource(ints = {0, 16, 128, 384, 512, 576, 640, 704, 768})
    void aFullDiskLeavesTheRegisterInTheIntakeUntilThereIsRoom(int roomInKilobytes)
            throws Exception {
        mount("size=32m");
        Path filler = fill(roomInKilobytes);
        Program.Run run = watch();
        if (run.exitCode() == 0) {
            // So much was enough; that it is not always so is what the smaller sizes show.
            assertThat(roomInKilobytes).isGreaterThanOrEqualTo(256);
        } else {
            assertThat(run.exitCode()).as(run.err()).isEqualTo(22);
            assertThat(run.err().lines().count()).as(run.err()).isEqualTo(2);
            assertThat(run.err()).contains("could not be written").doesNotContain("Exception");
            Invariants.hold(office.root(), dropped);
            boolean published = Files.exists(office.packs().resolve("2026-11-23-week"));
            assertThat(published || Files.exists(office.intake().resolve("week.csv"))).isTrue();
        }
        Files.delete(filler);
        goesThroughOnceThereIsRoom();
    }

    private Path fill(int roomInKilobytes) throws IOException {
        Path filler = disk.resolve("filler");
        long free = Files.getFileStore(disk).getUsableSpace() - roomInKilobytes * 1024L;
        Files.write(filler, new byte[(int) free]);
        return filler;
    }

    @Test
    void aFolderThatMayOnlyBeReadIsNamedAndNothingIsTouched() throws Exception {
        mount("size=32m");
        remount("ro");
        Program.Run run = watch();
        assertThat(run.exitCode()).as(run.err()).isEqualTo(22);
        assertThat(run.err()).contains("could not be written", "office.lock");
        assertThat(Program.run(folder, "doctor", office.root().toString()).exitCode())
                .isEqualTo(22);
        remount("rw");
        Invariants.hold(office.root(), dropped);
        goesThroughOnceThereIsRoom();
    }
}
