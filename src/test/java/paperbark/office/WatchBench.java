package paperbark.office;

import java.io.IOException;
import java.io.PrintStream;
import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import paperbark.batch.Ending;
import paperbark.batch.SampleWeeks;
import paperbark.disk.Disk;

/**
 * An attended office that gets a register of 40 jobs again and again: how long it takes from a
 * register that is steady to its published batch, in one process that comes to know the work. Run
 * by {@code mvn -Pbench verify}; the aim is 1.5 seconds once warm.
 */
final class WatchBench {
    private static final int REGISTERS = Integer.getInteger("bench.registers", 18);
    // The rest is the median's.
    private static final int WARM = REGISTERS * 2 / 3;
    private static final PrintStream OUT = System.out;

    private WatchBench() {}

    /** What one register took, nanoseconds. */
    private record Taken(long wall, long processor) {}

    /** Measures and prints. */
    public static void main(String[] arguments) throws Exception {
        Path folder = Files.createTempDirectory("watch");
        Office office = Offices.make(folder.resolve("office"));
        List<Taken> all = new ArrayList<>();
        try (OfficeLock lock = OfficeLock.take(office, Instant.EPOCH)) {
            Attendant attendant =
                    new Attendant(
                            lock,
                            new Attendant.World(
                                    Instant::now,
                                    () -> LocalDate.of(2026, 11, 23),
                                    Duration.ZERO,
                                    30,
                                    "bench",
                                    line -> {}));
            for (int week = 0; week < REGISTERS; week++) {
                Taken taken = one(attendant, office, week);
                print("register " + (week + 1), taken);
                all.add(taken);
            }
        }
        List<Taken> warm = all.subList(WARM, all.size());
        print(
                "median of the last " + warm.size(),
                new Taken(
                        median(warm.stream().map(Taken::wall).toList()),
                        median(warm.stream().map(Taken::processor).toList())));
        Disk.delete(folder);
    }

    private static Taken one(Attendant attendant, Office office, int week) throws IOException {
        SampleWeeks.write(office.intake().resolve("week-" + week + ".csv"), week, SampleWeeks.JOBS);
        // The first look finds it; unchanged at the second, it is steady.
        List<Ending> early = attendant.round().endings();
        long start = System.nanoTime();
        long busy = processor();
        List<Ending> endings = attendant.round().endings();
        Taken taken = new Taken(System.nanoTime() - start, processor() - busy);
        if (!early.isEmpty() || !endings.equals(List.of(Ending.HELD))) {
            throw new IllegalStateException("register " + week + ": " + early + endings);
        }
        return taken;
    }

    private static long median(List<Long> values) {
        List<Long> sorted = new ArrayList<>(values);
        Collections.sort(sorted);
        return sorted.get(sorted.size() / 2);
    }

    // Of the process, which other programs on the machine do not lengthen.
    private static long processor() {
        return ((com.sun.management.OperatingSystemMXBean)
                        ManagementFactory.getOperatingSystemMXBean())
                .getProcessCpuTime();
    }

    private static void print(String what, Taken taken) {
        OUT.printf(
                Locale.ROOT,
                "%-22s %6.2f s of wall, %6.2f s of processor%n",
                what,
                taken.wall() / 1e9,
                taken.processor() / 1e9);
    }
}
