package paperbark.batch;

import java.io.IOException;
import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import paperbark.finding.Finding;
import paperbark.finding.FindingCode;
import paperbark.finding.Place;
import paperbark.firm.FirmTables;
import paperbark.firm.Offer;
import paperbark.firm.OfferTerms;
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
    private static final Map<String, Inputs> READ = new HashMap<>();

    private Assembled() {}

    /** The case files of the sample week. */
    public static List<CaseFile> week() throws IOException {
        return cases(SampleWeek.request(SampleWeek.CSV, Path.of("target")));
    }

    /** The case files of a register; none where it is refused. */
    static List<CaseFile> cases(Request request) {
        return Inputs.read(request)
                .result()
                .map(inputs -> new Cases(inputs, "week", request).all())
                .orElse(List.of());
    }

    /**
     * The case file of the one job of a register under the sample firm's headings.
     *
     * @param tables the firm's tables
     * @param more findings about its row
     */
    public static CaseFile job(String register, FirmTables tables, Finding... more)
            throws IOException {
        Path file = Files.createTempFile("register", ".csv");
        try {
            Files.writeString(file, register);
            Request request = SampleWeek.request(file, Path.of("target"));
            if (!READ.containsKey(register)) {
                READ.put(register, Inputs.read(request).result().orElseThrow());
            }
            Inputs read = READ.get(register);
            List<Finding> findings = new ArrayList<>(read.findings());
            for (Finding finding : more) {
                findings.add(finding.forJob(read.jobs().get(0).reference()));
            }
            Inputs inputs =
                    new Inputs(
                            tables,
                            read.rulebook(),
                            read.names(),
                            read.sheet(),
                            read.copied(),
                            read.jobs(),
                            findings,
                            Optional.empty());
            return new Cases(inputs, "week", request).all().get(0);
        } finally {
            Files.delete(file);
        }
    }

    /** A finding about the first row below the headings. */
    public static Finding finding(FindingCode code) {
        return Finding.of(
                code, new Place.InRow("week.csv", "", 2), "Something is wrong.", "Mend it.");
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
                t.words(),
                t.accounts());
    }

    /** The batch of these case files. */
    public static BatchView view(List<CaseFile> cases) {
        return new BatchView(
                new BatchInfo("week", "week.csv", Register.TODAY, "test"),
                Register.TABLES.firm(),
                cases,
                cases.stream().flatMap(c -> c.findings().stream()).toList(),
                List.of(),
                List.of());
    }
}
