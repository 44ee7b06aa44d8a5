package paperbark.batch;

import java.io.IOException;
import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import paperbark.finding.Finding;
import paperbark.firm.FirmTables;
import paperbark.firm.Offer;
import paperbark.firm.OfferTerms;
import paperbark.job.Job;
import paperbark.job.Register;
import paperbark.output.BatchInfo;
import paperbark.output.BatchView;
import paperbark.output.CaseFile;
import paperbark.value.DateRange;
import paperbark.value.ExactMoney;
import paperbark.value.Money;
import paperbark.value.SchemeName;

/** Case files put together as a batch does it, for tests of what is made of them. */
public final class Assembled {
    private static final BatchInfo INFO = new BatchInfo("week", "week.csv", Register.TODAY, "test");

    private Assembled() {}

    /** The job of a register with one row, under the sample firm's headings. */
    public static Job read(String register) throws IOException {
        Path file = Files.createTempFile("register", ".csv");
        try {
            Files.writeString(file, register);
            return Inputs.read(SampleWeek.request(file, Path.of("target")))
                    .result()
                    .orElseThrow()
                    .jobs()
                    .get(0);
        } finally {
            Files.delete(file);
        }
    }

    /** The case file of a job with more findings than reading it gave. */
    public static CaseFile job(Job job, FirmTables tables, Finding... more) {
        return new Cases(INFO, tables, Register.RULES, false)
                .of(job, List.of(more), job.reference() + ".pdf");
    }

    /** The sample firm's tables with one offer for STCs, by Pipit and Wren, without fees. */
    public static FirmTables payingForStcs(String price) {
        FirmTables t = Register.TABLES;
        Offer offer =
                new Offer(
                        "Pipit and Wren",
                        SchemeName.STC,
                        DateRange.ALWAYS,
                        new ExactMoney(new BigDecimal(price)),
                        Money.ZERO,
                        Optional.empty(),
                        Optional.empty(),
                        14,
                        OfferTerms.PLAIN,
                        2);
        return new FirmTables(
                t.firm(),
                t.people(),
                t.makers(),
                t.products(),
                t.sellers(),
                t.buyers(),
                List.of(offer),
                t.statePapers(),
                t.accounts());
    }

    /** The case files of the sample week, and what a batch makes of them. */
    public static BatchView week(Predicate<Job> wanted) throws IOException {
        Request request = SampleWeek.request(SampleWeek.CSV, Path.of("target"));
        Inputs inputs = Inputs.read(request).result().orElseThrow();
        Cases cases = new Cases(INFO, inputs.tables(), inputs.rulebook(), false);
        return view(
                inputs.jobs().stream()
                        .filter(wanted)
                        .map(j -> cases.of(j, inputs.findingsOf(j), j.reference() + ".pdf"))
                        .toList());
    }

    /** The batch of these case files. */
    public static BatchView view(List<CaseFile> cases) {
        return new BatchView(
                INFO,
                Register.TABLES.firm(),
                cases,
                cases.stream().flatMap(c -> c.findings().stream()).toList(),
                List.of());
    }
}
