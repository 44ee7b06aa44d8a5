package paperbark.job;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Supplier;
import java.util.regex.Pattern;
import paperbark.finding.Finding;
import paperbark.finding.FindingCode;
import paperbark.firm.Buyer;
import paperbark.firm.FirmTables;
import paperbark.firm.Person;
import paperbark.firm.Seller;
import paperbark.sheet.Column;
import paperbark.sheet.ColumnNames;
import paperbark.sheet.Row;
import paperbark.sheet.Sheet;
import paperbark.value.SchemeName;
import paperbark.value.State;
import paperbark.value.Trade;

/**
 * Reads rows of a register as jobs. A fact that is missing or cannot be read is simply not known;
 * everything wrong with a row is gathered in one pass.
 */
public final class JobReader {
    private static final Pattern NONE_YET =
            Pattern.compile("(?i)tb[acd]|n/?a|none|nil|pending|to come|later|awaiting.*|[-?.x]+");

    /** The line of the table of columns by which several rows may make one job. */
    private static final String ROW_A_CERTIFICATE = "row-a-certificate";

    private final FirmTables tables;
    private final LocalDate today;

    /**
     * A reader that looks names up in the firm's tables; today bounds the dates that can be meant.
     */
    public JobReader(FirmTables tables, LocalDate today) {
        this.tables = tables;
        this.today = today;
    }

    /**
     * Jobs read, and what was noticed.
     *
     * @param jobs in the order of the rows; a row without a job number yields none
     * @param findings of all rows
     * @param references the number of the job in a row, by the row's number
     */
    public record Jobs(List<Job> jobs, List<Finding> findings, Map<Integer, String> references) {

        /** Keeps the collections from being changed. */
        public Jobs {
            jobs = List.copyOf(jobs);
            findings = List.copyOf(findings);
            references = Map.copyOf(references);
        }
    }

    /** Whether the list has a row a certificate. */
    public static boolean isRowEach(ColumnNames<Field> names) {
        return names.says(ROW_A_CERTIFICATE);
    }

    /**
     * Reads all rows of a sheet.
     *
     * @param names what the firm's table of columns says of every row
     */
    public Jobs read(Sheet sheet, Map<Field, Column> columns, ColumnNames<Field> names) {
        List<Job> jobs = new ArrayList<>();
        Map<Integer, List<Finding>> noticed = new HashMap<>();
        List<Finding> findings = new ArrayList<>();
        OneDate oneDate = new OneDate(columns, tables.words(), today);
        OneScheme oneScheme = new OneScheme(tables.words());
        boolean rowEach = isRowEach(names);
        for (Row row : rowEach ? RowsOfJob.completed(sheet.rows(), columns) : sheet.rows()) {
            Map<Field, Column> meant = oneScheme.columns(row, oneDate.columns(row));
            Origin origin =
                    new Origin(
                            sheet.file(),
                            sheet.name(),
                            row.number(),
                            meant,
                            sheet.from1904(),
                            Set.of(),
                            rowEach ? RowsOfJob.elsewhere(row, meant) : Map.of());
            RowFacts facts = new RowFacts(sheet, row, origin, names, tables.words(), today);
            if (rowEach) {
                OneScheme.refuseUntold(facts);
            }
            Optional<String> reference = facts.text(Field.JOB);
            if (reference.isPresent()) {
                jobs.add(job(reference.get(), facts));
                noticed.put(row.number(), facts.findings());
            } else {
                findings.addAll(facts.findings());
                findings.add(unnamed(origin, facts.unread()));
            }
        }
        Jobs read = named(jobs, noticed, names, findings);
        return rowEach ? RowsOfJob.joined(read) : read;
    }

    /** The jobs under the numbers that they go by, with what was noticed in their rows. */
    private static Jobs named(
            List<Job> jobs,
            Map<Integer, List<Finding>> noticed,
            ColumnNames<Field> names,
            List<Finding> findings) {
        Optional<JobNumbers> numbers = JobNumbers.asked(names);
        List<Job> named = new ArrayList<>();
        Map<Integer, String> references = new HashMap<>();
        for (Job job : numbers.map(n -> n.give(jobs)).orElse(jobs)) {
            List<Finding> ofRow = noticed.get(job.origin().row());
            if (numbers.filter(n -> n.isWanted(job)).isPresent()) {
                findings.addAll(ofRow);
                findings.add(unnamed(job.origin(), Set.of()));
            } else {
                named.add(job);
                references.put(job.origin().row(), job.reference());
                ofRow.forEach(f -> findings.add(f.forJob(job.reference())));
            }
        }
        return new Jobs(named, findings, references);
    }

    private static Finding unnamed(Origin origin, Set<Field> unread) {
        return Finding.of(
                FindingCode.JOB_UNNAMED,
                origin.cell(Field.JOB),
                unread.contains(Field.JOB)
                        ? "The row's job number cannot be used."
                        : "The row has no job number.",
                "Give the row the firm's job number, or delete it if it is no job.");
    }

    private Job job(String reference, RowFacts facts) {
        Optional<LocalDate> installedOn = facts.day(Field.INSTALLED_DATE);
        Visit visit =
                new Visit(
                        facts.day(Field.VISIT_DATE),
                        facts.text(Field.CREW),
                        facts.whole(Field.VISIT_ORDER),
                        facts.text(Field.OFFICE_NOTE));
        Stage stage =
                facts.choice(Field.STAGE, Stage.values(), Stage::word)
                        .orElse(
                                installedOn.isPresent()
                                                || facts.unread().contains(Field.INSTALLED_DATE)
                                        ? Stage.INSTALLED
                                        : Stage.BOOKED);
        Site site = PartiesReader.site(facts);
        return new Job(
                facts.origin(),
                reference,
                stage,
                visit,
                installedOn,
                facts.day(Field.SIGNED_DATE),
                facts.text(Field.CORRECTS),
                PartiesReader.owner(facts, site.address()),
                site,
                HeaterReader.of(facts, tables),
                trades(facts, site.address().state(), installedOn.or(visit::on)),
                compliance(facts),
                oldHeater(facts),
                claims(facts, stage),
                payment(facts),
                facts.unread());
    }

    private Trades trades(RowFacts facts, Optional<State> state, Optional<LocalDate> day) {
        Supplier<List<String>> people = () -> tables.people().stream().map(Person::name).toList();
        var plumber =
                facts.named(Field.PLUMBER, FindingCode.PERSON_UNKNOWN, tables::person, people);
        var electrician =
                facts.named(Field.ELECTRICIAN, FindingCode.PERSON_UNKNOWN, tables::person, people);
        return new Trades(
                plumber,
                plumber.flatMap(
                        p -> state.flatMap(s -> day.flatMap(d -> p.licence(Trade.PLUMBING, s, d)))),
                electrician,
                electrician.flatMap(
                        p ->
                                state.flatMap(
                                        s -> day.flatMap(d -> p.licence(Trade.ELECTRICAL, s, d)))),
                facts.named(
                        Field.SELLER,
                        FindingCode.SELLER_UNKNOWN,
                        tables::seller,
                        () -> tables.sellers().stream().map(Seller::name).toList()));
    }

    private static Compliance compliance(RowFacts facts) {
        return new Compliance(
                number(facts, Field.PLUMBING_CERTIFICATE),
                facts.day(Field.PLUMBING_CERTIFICATE_DATE),
                number(facts, Field.ELECTRICAL_CERTIFICATE),
                facts.day(Field.ELECTRICAL_CERTIFICATE_DATE));
    }

    /** A number, unless the cell only says that there is none yet. */
    private static Optional<String> number(RowFacts facts, Field field) {
        return facts.text(field).filter(text -> !NONE_YET.matcher(text).matches());
    }

    private static Optional<OldHeater> oldHeater(RowFacts facts) {
        Optional<OldKind> kind = facts.choice(Field.OLD_KIND, OldKind.values(), OldKind::word);
        OldHeater old =
                new OldHeater(
                        kind.orElse(OldKind.UNTOLD),
                        facts.text(Field.OLD_MAKER),
                        facts.text(Field.OLD_MODEL),
                        facts.text(Field.OLD_SERIAL),
                        facts.text(Field.OLD_DISABLED),
                        facts.text(Field.OLD_DISPOSAL),
                        facts.day(Field.OLD_REMOVED_DATE));
        return old.equals(OldHeater.UNKNOWN) ? Optional.empty() : Optional.of(old);
    }

    private Map<SchemeName, Claim> claims(RowFacts facts, Stage stage) {
        Map<SchemeName, Claim> claims = new EnumMap<>(SchemeName.class);
        for (SchemeName scheme : SchemeName.values()) {
            claims.put(scheme, claim(facts, stage, scheme));
        }
        return claims;
    }

    private Claim claim(RowFacts facts, Stage stage, SchemeName scheme) {
        Field claimed = Field.of(scheme, ClaimFact.CLAIM);
        Optional<SchemeName> only =
                facts.choice(Field.SCHEME, SchemeName.values(), SchemeName::word);
        // An answer that cannot be read holds the paper; it does not drop it unseen.
        boolean wanted =
                only.map(named -> named == scheme)
                        .or(() -> facts.yesNo(claimed))
                        .orElseGet(
                                () ->
                                        facts.unread().contains(claimed)
                                                || facts.unread().contains(Field.SCHEME));
        return new Claim(
                wanted && stage.claims(),
                facts.named(
                        Field.of(scheme, ClaimFact.BUYER),
                        FindingCode.BUYER_UNKNOWN,
                        tables::buyer,
                        () -> tables.buyers().stream().map(Buyer::name).toList()),
                Field.find(scheme, ClaimFact.ZONE).flatMap(facts::whole),
                facts.whole(Field.of(scheme, ClaimFact.COUNT)),
                facts.money(Field.of(scheme, ClaimFact.BENEFIT)));
    }

    private static Payment payment(RowFacts facts) {
        return new Payment(
                facts.money(Field.FULL_PRICE),
                facts.money(Field.CO_PAYMENT),
                facts.choice(Field.BENEFIT_FORM, BenefitForm.values(), BenefitForm::word),
                facts.text(Field.ACCOUNT_NAME),
                facts.bsb(Field.BSB),
                facts.account());
    }
}
