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
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.locks.LockSupport;
import paperbark.batch.Ending;
import paperbark.batch.SampleWeeks;
import paperbark.disk.Disk;

/**
 * An attended office that gets a register of 40 jobs again and again: how long it takes from a
 * register that is steady to its published batch, and until the office's own pages and letters tell
 * of it, in one process that comes to know the work. Run by {@code mvn -Pbench verify}; the aim is
 * 1.5 seconds to the batch once warm.
 */
final class WatchBench {
    private static final int REGISTERS = Integer.getInteger("bench.registers", 18);
    // The rest is the median's.
    private static final int WARM = REGISTERS * 2 / 3;
    private static final long MILLISECOND = 1_000_000;
    private static final PrintStream OUT = System.out;

    private WatchBench() {}

    /**
     * What one register took, nanoseconds.
     *
     * @param batch until its batch was there
     * @param all until the office was done with it
     */
    private record Taken(long batch, long all, long processor) {}

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
                        median(warm.stream().map(Taken::batch).toList()),
                        median(warm.stream().map(Taken::all).toList()),
                        median(warm.stream().map(Taken::processor).toList())));
        Disk.delete(folder);
    }

    private static Taken one(Attendant attendant, Office office, int week) throws IOException {
        SampleWeeks.write(office.intake().resolve("week-" + week + ".csv"), week, SampleWeeks.JOBS);
        // The first look finds it; unchanged at the second, it is steady.
        List<Ending> early = attendant.round().endings();
        CompletableFuture<Long> published =
                CompletableFuture.supplyAsync(() -> seen(office, "week-" + week));
        long start = System.nanoTime();
        long busy = processor();
        List<Ending> endings = attendant.round().endings();
        Taken taken =
                new Taken(published.join() - start, System.nanoTime() - start, processor() - busy);
        if (!early.isEmpty() || !endings.equals(List.of(Ending.HELD))) {
            throw new IllegalStateException("register " + week + ": " + early + endings);
        }
        return taken;
    }

    /** When the batch of a register is there. */
    private static long seen(Office office, String register) {
        Path batch = office.packs().resolve("2026-11-23-" + register);
        while (!Files.exists(batch)) {
            LockSupport.parkNanos(MILLISECOND);
        }
        return System.nanoTime();
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
                "%-22s %6.2f s to the batch, %6.2f s in all; %6.2f s of processor%n",
                what,
                taken.batch() / 1e9,
                taken.all() / 1e9,
                taken.processor() / 1e9);
    }
}
