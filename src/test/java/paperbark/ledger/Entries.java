package paperbark.ledger;

import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import paperbark.value.Money;
import paperbark.value.SchemeName;
import paperbark.value.Serial;

/** Ledger entries made up for tests. */
public final class Entries {
    /** Day of every batch. */
    public static final LocalDate DAY = LocalDate.of(2026, 11, 23);

    private static final Instant AT = Instant.parse("2026-11-23T01:00:00Z");

    private Entries() {}

    /** Makes a new, empty ledger in a file. */
    public static void create(Path file, Instant at) {
        Ledger.create(new LedgerPlace.InFile(file), at);
    }

    /** Takes in a batch as a run does: rehearsed first. */
    public static void enter(Ledger ledger, BatchEntry batch) {
        ledger.enter(batch, ledger.rehearse(batch));
    }

    /** A batch of these jobs. */
    public static BatchEntry batch(String name, JobEntry... jobs) {
        return new BatchEntry(
                name,
                "week.xlsx",
                "11",
                DAY,
                AT,
                "test",
                "22",
                "here",
                ".hidden",
                "salt",
                List.of(jobs));
    }

    /** A batch named "one" that an office publishes into the output folder with this id. */
    public static BatchEntry batchAt(String place, JobEntry... jobs) {
        return new BatchEntry(
                "one",
                "week.xlsx",
                "11",
                DAY,
                AT,
                "test",
                "22",
                place,
                ".hidden",
                "salt",
                List.of(jobs));
    }

    /** An installed job whose papers went out. */
    public static JobEntry job(String reference, ClaimEntry... claims) {
        return new JobEntry(
                reference,
                2,
                Optional.empty(),
                JobOutcome.ISSUED,
                "packs/" + reference + ".pdf",
                Optional.of(DAY),
                Optional.of(DAY.plusYears(5)),
                "SITE OF " + reference,
                new Prints("", Map.of("owner-name", "ab12")),
                Optional.of(new Sale(DAY, Money.of("4620.00"), Money.of("420.00"))),
                List.of(claims),
                Set.of(),
                List.of(new PaperEntry("warranty", "form: default\n")));
    }

    /** The same job saying that it corrects another. */
    public static JobEntry correcting(String other, JobEntry job) {
        return new JobEntry(
                job.reference(),
                job.row(),
                Optional.of("replaces " + other),
                job.outcome(),
                job.pack(),
                job.installedOn(),
                job.warrantyUntil(),
                job.siteKey(),
                job.prints(),
                job.sale(),
                job.claims(),
                job.held(),
                job.papers());
    }

    /** An installed job that is held, and with it its claims under these schemes. */
    public static JobEntry held(String reference, SchemeName... schemes) {
        JobEntry job = job(reference);
        return new JobEntry(
                job.reference(),
                job.row(),
                job.corrects(),
                JobOutcome.HELD,
                job.pack(),
                job.installedOn(),
                job.warrantyUntil(),
                job.siteKey(),
                job.prints(),
                job.sale(),
                job.claims(),
                Set.of(schemes),
                job.papers());
    }

    /** The same job at another site. */
    static JobEntry at(String siteKey, JobEntry job) {
        return new JobEntry(
                job.reference(),
                job.row(),
                job.corrects(),
                job.outcome(),
                job.pack(),
                job.installedOn(),
                job.warrantyUntil(),
                siteKey,
                job.prints(),
                job.sale(),
                job.claims(),
                job.held(),
                job.papers());
    }

    /** The same job with a paper of that kind and no other. */
    public static JobEntry printing(String kind, JobEntry job) {
        return withPaper(new PaperEntry(kind, "form: default\n"), job);
    }

    /** The same job, which takes a paper back and prints none. */
    static JobEntry holding(String kind, JobEntry job) {
        return withPaper(PaperEntry.takenBack(kind), job);
    }

    private static JobEntry withPaper(PaperEntry paper, JobEntry job) {
        return new JobEntry(
                job.reference(),
                job.row(),
                Optional.empty(),
                job.outcome(),
                job.pack(),
                job.installedOn(),
                job.warrantyUntil(),
                job.siteKey(),
                job.prints(),
                job.sale(),
                job.claims(),
                job.held(),
                List.of(paper));
    }

    /** A claim due a week later and to be lodged within the year. */
    public static ClaimEntry claim(SchemeName scheme, String serial, String expected) {
        return new ClaimEntry(
                scheme,
                "Kestrel Certificates",
                14,
                DAY,
                Optional.of(DAY.plusYears(1)),
                List.of(Serial.parse(serial).toOptional().orElseThrow()),
                new Promise(
                        Money.of(expected), Money.ZERO, Money.ZERO, Optional.of(DAY.plusDays(7))));
    }

    /** Where an advice comes from. */
    public static AdviceBook.Source advice(String sha256) {
        return new AdviceBook.Source("advice.csv", sha256, DAY.plusYears(1), AT, "test");
    }

    /** A pile of scanned pages. */
    public static ScanEntry scan(String sha256, ScanEntry.Page... pages) {
        return new ScanEntry("pile.pdf", sha256, List.of(pages), DAY.plusDays(3), AT, "test");
    }

    /** A page of the warranty registration, which has two. */
    public static ScanEntry.Page page(int place, String job, int version, int page, int blank) {
        return new ScanEntry.Page(place, job, version, "warranty", page, 2, blank);
    }
}
