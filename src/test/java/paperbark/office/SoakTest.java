package paperbark.office;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import paperbark.batch.Ending;

/**
 * Many registers through one process: memory stays flat, no file stays open, no temporary file is
 * left. {@code -Dsoak.registers=500} sets how many.
 */
@Tag("slow")
class SoakTest {
    private static final int REGISTERS = Integer.getInteger("soak.registers", 40);
    private static final double FLAT = 1.10;
    private static final Path OPEN_FILES = Path.of("/proc/self/fd");

    @TempDir private Path folder;

    private Office office;
    private Instant now = Instant.parse("2026-11-23T01:00:00Z");

    private void registers(Attendant attendant, int from, int to) throws Exception {
        for (int i = from; i < to; i++) {
            // Mostly one job each; now and then one that goes back.
            String content =
                    i % 10 == 9 ? "Job,Owner,Model\nJ-%d,A,B\n".formatted(i) : Offices.register(i);
            Files.writeString(office.intake().resolve("r-" + i + ".csv"), content);
            now = now.plusSeconds(1);
            List<Ending> endings = new ArrayList<>(attendant.round().endings());
            now = now.plusSeconds(1);
            endings.addAll(attendant.round().endings());
            assertThat(endings).containsExactly(i % 10 == 9 ? Ending.REFUSED : Ending.DONE);
        }
    }

    @Test
    void memoryStaysFlatAndNothingStaysOpenOrLeft() throws Exception {
        Path said = folder.resolve("said.txt");
        Path temporary = Files.createDirectory(folder.resolve("temporary"));
        // A process and a temporary folder of its own, in which nobody else leaves anything.
        Process process =
                Child.start(
                        said,
                        List.of("java.io.tmpdir=" + temporary, "soak.registers=" + REGISTERS),
                        SoakTest.class,
                        folder.resolve("office").toString());
        assertThat(process.waitFor()).as(Files.readString(said)).isZero();
        System.out.print(Files.readString(said));
    }

    /** The process: attends the office folder of that name. */
    public static void main(String[] arguments) throws Exception {
        new SoakTest().attend(Path.of(arguments[0]));
        System.exit(0);
    }

    private void attend(Path root) throws Exception {
        office = Offices.make(root);
        try (OfficeLock lock = OfficeLock.take(office, now)) {
            Attendant attendant =
                    new Attendant(
                            lock,
                            new Attendant.World(
                                    () -> now,
                                    () -> LocalDate.of(2026, 11, 23),
                                    Duration.ZERO,
                                    30,
                                    "test",
                                    line -> {}));
            int warm = REGISTERS / 3;
            registers(attendant, 0, warm);
            long heap = heap();
            List<Path> open = open();
            List<Path> temporary = temporary();
            registers(attendant, warm, REGISTERS);
            long heapAtLast = heap();
            System.out.printf(
                    "%d registers: %.1f MB, at last %.1f MB; open files %d, at last %d%n",
                    REGISTERS, heap / 1e6, heapAtLast / 1e6, open.size(), open().size());
            assertThat(heapAtLast).isLessThan((long) (heap * FLAT));
            assertThat(open().size()).as("%s, before %s", open(), open).isEqualTo(open.size());
            assertThat(temporary()).isSubsetOf(temporary);
        }
        assertThat(Office.list(office.work())).isEmpty();
        assertThat(Office.list(office.packs()))
                .noneMatch(p -> Office.isHidden(p) && Files.isDirectory(p));
        assertThat(Office.list(office.root()))
                .extracting(f -> f.getFileName().toString())
                .noneMatch(name -> name.endsWith(".part"));
    }

    /** What is really in use, once everything else is cleared away. */
    private static long heap() throws InterruptedException {
        long least = Long.MAX_VALUE;
        for (int i = 0; i < 5; i++) {
            System.gc();
            Thread.sleep(100);
            Runtime runtime = Runtime.getRuntime();
            least = Math.min(least, runtime.totalMemory() - runtime.freeMemory());
        }
        return least;
    }

    /** The files under the office or for the moment that this process has open. */
    private static List<Path> open() throws IOException {
        List<Path> open = new ArrayList<>();
        if (Files.isDirectory(OPEN_FILES)) {
            try (Stream<Path> handles = Files.list(OPEN_FILES)) {
                for (Path handle : handles.toList()) {
                    if (Files.isSymbolicLink(handle)) {
                        Path to = Files.readSymbolicLink(handle);
                        if (to.toString().startsWith("/") && !to.startsWith("/proc")) {
                            open.add(to);
                        }
                    }
                }
            }
        }
        return open;
    }

    private static List<Path> temporary() throws IOException {
        return Office.list(Path.of(System.getProperty("java.io.tmpdir")));
    }
}
