package paperbark.office;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.CompletableFuture;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import paperbark.cli.Program;
import paperbark.fault.FaultPoint;

/**
 * The power is cut: what the program did not force to the disk is gone, other than when it is
 * killed. {@code -Dcut.power=all} cuts at every step and on three file systems, otherwise at a few
 * on one.
 */
@Tag("outside")
@Tag("slow")
class PowerCutTest {
    private static final boolean ALL = "all".equals(System.getProperty("cut.power"));
    private static final Set<FaultPoint> STEPS =
            ALL
                    ? EnumSet.complementOf(EnumSet.of(FaultPoint.SORTED, FaultPoint.PLACED))
                    : EnumSet.of(
                            FaultPoint.STAGED,
                            FaultPoint.COMMITTED,
                            FaultPoint.PUBLISHED,
                            FaultPoint.RETURNED);
    // More than twice what the file system may put off the order of things for. Cut at once,
    // nothing
    // that was not forced would be there, and nothing half done would show.
    private static final long AFTER_THE_INTERVAL = 2_500;
    private static final int REFUSED_ONE = 11;

    @TempDir private Path folder;

    private final List<String> dropped = new ArrayList<>();

    static Stream<String> fileSystems() {
        return ALL ? Stream.of("ext4", "xfs", "btrfs") : Stream.of("ext4");
    }

    /** One run with all its promises and one that forces nothing: that one has to fail. */
    @ParameterizedTest
    @MethodSource("fileSystems")
    void whateverStepThePowerIsCutAtTheNextStartMakesItWhole(String type) throws Exception {
        LoopDisk disk = LoopDisk.make(folder.resolve("disk"), type);
        LoopDisk weak = LoopDisk.make(folder.resolve("weak"), type);
        try {
            CompletableFuture<Map<String, Path>> weakened =
                    CompletableFuture.supplyAsync(() -> cuts(weak, Optional.of(Weakened.NO_SYNC)));
            Map<String, Path> cuts = cuts(disk, Optional.empty());
            assertThat(cuts).hasSameSizeAs(STEPS);
            assertThat(faults(disk, cuts)).isEmpty();
            List<String> noticed = faults(weak, weakened.get());
            System.out.printf(
                    "%s: the power cut at %d steps; without forcing %d of them are noticed%n",
                    type, cuts.size(), noticed.size());
            assertThat(noticed).as("without forcing").isNotEmpty();
        } finally {
            disk.unmount();
            weak.unmount();
        }
    }

    /** The disk at each step of a run that takes one register and gives one back. */
    private Map<String, Path> cuts(LoopDisk disk, Optional<Weakened> without) {
        try {
            Office office = office(disk);
            Path trace = disk.folder().resolve("trace.txt");
            Path said = disk.folder().resolve("said.txt");
            String[] properties = {"paperbark.fault=EACH:pause", "paperbark.trace=" + trace};
            Process run =
                    without.isPresent()
                            ? Child.watch(without.get(), office, said, properties)
                            : Child.watch(office, said, properties);
            Map<String, Path> cuts = new LinkedHashMap<>();
            while (run.isAlive()) {
                String step = step(trace);
                if (step.isEmpty()) {
                    Thread.sleep(20);
                    continue;
                }
                if (STEPS.contains(FaultPoint.valueOf(step)) && !cuts.containsKey(step)) {
                    Thread.sleep(AFTER_THE_INTERVAL);
                    cuts.put(step, disk.cut(step));
                }
                Files.delete(trace);
            }
            assertThat(run.exitValue()).as(Files.readString(said)).isEqualTo(REFUSED_ONE);
            disk.unmount();
            return cuts;
        } catch (IOException e) {
            throw new IllegalStateException(e);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException(e);
        }
    }

    private Office office(LoopDisk disk) throws IOException {
        Office office = Offices.make(disk.root().resolve("office"));
        synchronized (dropped) {
            dropped.clear();
            dropped.add(drop(office, "good.csv", Offices.register(1, 2)));
            dropped.add(drop(office, "short.csv", "Job,Owner,Model\nJ-9,Ada Amberwood,D270-A\n"));
        }
        disk.settle();
        return office;
    }

    private static String drop(Office office, String name, String content) throws IOException {
        return Invariants.sha256(Files.writeString(office.intake().resolve(name), content));
    }

    /** The step that the run waits at; other threads may write on meanwhile. */
    private static String step(Path trace) throws IOException {
        if (!Files.exists(trace)) {
            return "";
        }
        String all = Files.readString(trace);
        return all.substring(0, all.lastIndexOf('\n') + 1)
                .lines()
                .filter(line -> line.startsWith("PAUSE\t"))
                .map(line -> line.substring(line.indexOf('\t') + 1))
                .findFirst()
                .orElse("");
    }

    /** What is wrong on which disk. */
    private List<String> faults(LoopDisk disk, Map<String, Path> cuts) {
        List<String> faults = new ArrayList<>();
        Path office = disk.root().resolve("office");
        cuts.forEach(
                (step, image) -> {
                    try {
                        assertThat(disk.mount(image)).isTrue();
                        Invariants.hold(office, dropped);
                        Program.run(
                                folder, "watch", office.toString(), "--once", "--quiet-for", "0");
                        Invariants.hold(office, dropped);
                        Invariants.atRest(office, 2);
                    } catch (AssertionError | IOException | RuntimeException e) {
                        faults.add(step + ": " + e);
                    } finally {
                        disk.unmount();
                    }
                });
        return faults;
    }
}
