package paperbark.ledger;

import com.sun.management.OperatingSystemMXBean;
import java.io.IOException;
import java.io.PrintStream;
import java.io.UncheckedIOException;
import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Supplier;
import paperbark.disk.Disk;
import paperbark.office.Attendant;
import paperbark.office.Office;
import paperbark.office.OfficeLock;
import paperbark.office.Offices;
import paperbark.outside.Postgres;
import paperbark.settle.Owing;
import paperbark.settle.Quarter;
import paperbark.value.Money;
import paperbark.value.SchemeName;
import paperbark.value.Serial;

/**
 * A ledger of 100,000 claims, half of them paid: how long each report takes, in a file and, through
 * {@code .ci/with-postgres}, on a server, and a register of one job in an office that has it. Run
 * by {@code mvn -Pbench verify}; the promise is two seconds a report.
 */
public final class LedgerBench {
    private static final int BATCHES = 1_250;
    private static final int JOBS = 40;
    private static final LocalDate FIRST = LocalDate.of(2024, 7, 1);
    private static final PrintStream OUT = System.out;
    private static final OperatingSystemMXBean PROCESS =
            ManagementFactory.getPlatformMXBean(OperatingSystemMXBean.class);

    private LedgerBench() {}

    /** Measures and prints. */
    public static void main(String[] arguments) throws Exception {
        Path folder = Files.createTempDirectory("ledger");
        Office office = Offices.make(folder.resolve("office"));
        fill(office.ledger());
        measure(office.ledger());
        OUT.printf("%.0f MB%n", Files.size(office.root().resolve("paperbark.db")) / 1e6);
        if (System.getenv(Postgres.SERVER) != null) {
            onServer(office.ledger(), folder);
        }
        attend(office);
        Disk.delete(folder);
    }

    /**
     * What the server has is what the file has: to take it over is faster than to enter it again.
     */
    private static void onServer(LedgerPlace filled, Path folder) {
        try (Postgres server = Postgres.schema()) {
            OUT.println("the same on a server");
            LedgerPlace place = new LedgerPlace.OnServer(server.url(), folder);
            try (Ledger ledger = Ledger.open(filled)) {
                timed("taken over", () -> takenOver(ledger, place));
            }
            measure(place);
            try (Ledger ledger = Ledger.open(place)) {
                timed("copy", () -> copied(ledger, folder.resolve("copy.db")));
            }
        }
    }

    private static int takenOver(Ledger ledger, LedgerPlace place) {
        ledger.takenOverBy(place);
        return BATCHES;
    }

    private static int copied(Ledger ledger, Path file) {
        ledger.copyTo(file);
        return 1;
    }

    private static void measure(LedgerPlace place) {
        try (Ledger ledger = Ledger.open(place)) {
            LocalDate asOf = FIRST.plusDays(BATCHES / 2);
            for (int run = 0; run < 2; run++) {
                timed("owed", () -> Owing.of(ledger.claims(asOf), asOf).open().size());
                timed(
                        "quarters",
                        () ->
                                Quarter.ofYear(
                                                2026,
                                                ledger.income().sales(LocalDate.of(9999, 12, 31)),
                                                ledger.claims(LocalDate.of(9999, 12, 31)),
                                                ledger.income()
                                                        .receipts(LocalDate.of(9999, 12, 31)))
                                        .size());
                timed("one advice", () -> pay(ledger, "last"));
                timed("proof", () -> proved(ledger));
                timed("export", () -> Export.of(ledger).size());
            }
        }
    }

    private static void attend(Office office) throws Exception {
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
            timed("start", () -> round(attendant));
            for (int n = 0; n < 4; n++) {
                Files.writeString(
                        office.intake().resolve("week-" + n + ".csv"),
                        Offices.register(1_000_000 + n));
                round(attendant);
                timed("register", () -> round(attendant));
            }
        }
    }

    private static int round(Attendant attendant) {
        try {
            return attendant.round().endings().size();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static int proved(Ledger ledger) {
        ledger.verify();
        return 1;
    }

    private static void fill(LedgerPlace place) {
        try (Ledger ledger = Ledger.open(place)) {
            timed("taking in", () -> fill(ledger));
        }
    }

    private static int fill(Ledger ledger) {
        for (int b = 0; b < BATCHES; b++) {
            Entries.enter(ledger, batch(b));
            if (b % 2 == 0) {
                pay(ledger, "b" + b);
            }
        }
        return BATCHES;
    }

    /** One batch of many, of 40 jobs with a claim of each scheme. */
    public static BatchEntry batch(int b) {
        List<JobEntry> jobs = new ArrayList<>();
        for (int j = 0; j < JOBS; j++) {
            jobs.add(job(b * JOBS + j, FIRST.plusDays(b / 2)));
        }
        return new BatchEntry(
                "batch-" + b,
                "week.xlsx",
                "" + b,
                FIRST.plusDays(b / 2),
                Instant.EPOCH,
                "bench",
                "m",
                "here",
                ".hidden",
                "salt",
                jobs);
    }

    private static JobEntry job(int n, LocalDate day) {
        List<ClaimEntry> claims = new ArrayList<>();
        for (SchemeName scheme : SchemeName.values()) {
            claims.add(
                    new ClaimEntry(
                            scheme,
                            "Buyer " + n % 7,
                            10 + n % 9,
                            day,
                            Optional.of(day.plusYears(1)),
                            List.of(
                                    Serial.parse("T-" + (1_000_000 + n))
                                            .toOptional()
                                            .orElseThrow()),
                            new Promise(
                                    Money.ofCents(36_000 + n % 500),
                                    Money.ZERO,
                                    Money.ZERO,
                                    Optional.of(day.plusDays(14)))));
        }
        return new JobEntry(
                "J-" + n,
                2,
                Optional.empty(),
                JobOutcome.ISSUED,
                "packs/J-" + n + ".pdf",
                Optional.of(day),
                Optional.of(day.plusYears(7)),
                "SITE" + n,
                new Prints("k", Map.of("owner-name", "ab12", "tank-serial", "cd34")),
                Optional.of(new Sale(day, Money.of("4400.00"), Money.of("400.00"))),
                claims,
                Set.of(),
                List.of());
    }

    /** Pays the claims of the newest batch by reference. */
    private static int pay(Ledger ledger, String name) {
        return ledger.settle(
                Entries.advice(name),
                book -> {
                    int paid = 0;
                    int newest =
                            name.equals("last") ? BATCHES - 1 : Integer.parseInt(name.substring(1));
                    for (int j = 0; j < JOBS; j++) {
                        for (SchemeName scheme : SchemeName.values()) {
                            String reference =
                                    ClaimEntry.reference("J-" + (newest * JOBS + j), scheme);
                            ClaimState claim = book.byReference(reference).get(0);
                            AdviceLine line =
                                    new AdviceLine(
                                            name + reference + System.nanoTime(),
                                            2,
                                            claim.claimedOn().plusDays(20),
                                            claim.expected(),
                                            reference);
                            book.match(
                                    book.enter(line),
                                    line,
                                    claim,
                                    AdviceStatus.PAID,
                                    line.amount(),
                                    "reference",
                                    "",
                                    "");
                            paid++;
                        }
                    }
                    return paid;
                });
    }

    /** The processor's time too, which other programs on the machine do not lengthen. */
    private static void timed(String what, Supplier<Integer> work) {
        long start = System.nanoTime();
        long busy = PROCESS.getProcessCpuTime();
        int result = work.get();
        OUT.printf(
                "%-10s %6d  %6.2f s, processor %6.2f s%n",
                what,
                result,
                (System.nanoTime() - start) / 1e9,
                (PROCESS.getProcessCpuTime() - busy) / 1e9);
    }
}
