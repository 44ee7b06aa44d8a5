package paperbark.batch;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import paperbark.disk.Shipped;
import paperbark.finding.Concern;
import paperbark.finding.Finding;
import paperbark.finding.FindingCode;
import paperbark.finding.Place;
import paperbark.firm.Buyer;
import paperbark.firm.Firm;
import paperbark.firm.FirmTables;
import paperbark.firm.FirmTablesReader;
import paperbark.firm.Maker;
import paperbark.firm.Person;
import paperbark.firm.Seller;
import paperbark.firm.TableGuide;
import paperbark.firm.TableRows;
import paperbark.job.ClaimFact;
import paperbark.job.Field;
import paperbark.job.Job;
import paperbark.value.SchemeName;

/**
 * The invented firm that the program brings along. In the office of any other firm nothing of it
 * may stand on paper.
 */
public final class SampleFirm {
    private static final String TABLES = "tables/";
    private static final FirmTables SAMPLE = read();

    private final FirmTables tables;

    private SampleFirm(FirmTables tables) {
        this.tables = tables;
    }

    private static FirmTables read() {
        try {
            List<TableRows> tables = new ArrayList<>();
            for (TableGuide table : TableGuide.all()) {
                Shipped.one(Shipped.SAMPLES, TABLES + table.name() + ".csv")
                        .map(csv -> TableRows.ofCsv(table.name(), csv))
                        .ifPresent(tables::add);
            }
            return FirmTablesReader.of(tables).result().orElseThrow();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Whether these are the sample firm's own tables. */
    private boolean isSample() {
        Firm firm = tables.firm();
        return firm.abn().equals(SAMPLE.firm().abn())
                && key(firm.name()).equals(key(SAMPLE.firm().name()));
    }

    /** What of the sample firm is left in the tables of another, a phrase each. */
    public static List<String> left(FirmTables tables) {
        SampleFirm sample = new SampleFirm(tables);
        if (sample.isSample()) {
            return List.of();
        }
        List<String> left = new ArrayList<>(sample.facts());
        sample.people().forEach(name -> left.add("people: " + name));
        sample.makers().forEach(name -> left.add("makers: " + name));
        sample.buyers().forEach(name -> left.add("buyers: " + name));
        return left;
    }

    /** Every job whose papers would show something of the sample firm, with what that is. */
    static List<Finding> shown(List<Job> jobs, FirmTables tables) {
        SampleFirm sample = new SampleFirm(tables);
        return sample.isSample()
                ? List.of()
                : jobs.stream().flatMap(job -> sample.shown(job).stream()).toList();
    }

    private List<Finding> shown(Job job) {
        List<Finding> findings = new ArrayList<>();
        List<String> facts = facts();
        if (!facts.isEmpty()) {
            findings.add(
                    finding(
                            job,
                            job.origin().wholeRow(),
                            "Of the firm's table these are still the sample firm's: "
                                    + String.join(", ", facts)
                                    + ".",
                            "Replace them in the firm's table by your own, or clear them."));
        }
        Set<String> people = people();
        named(job, job.trades().plumber().map(Person::name), people, Field.PLUMBER)
                .ifPresent(findings::add);
        named(job, job.trades().electrician().map(Person::name), people, Field.ELECTRICIAN)
                .ifPresent(findings::add);
        named(job, job.heater().maker().map(Maker::name), makers(), Field.MAKER)
                .ifPresent(findings::add);
        Set<String> sellers =
                names(SAMPLE.sellers(), Seller::name).stream()
                        .filter(n -> !key(n).equals(key(tables.firm().name())))
                        .collect(Collectors.toSet());
        named(job, job.trades().seller().map(Seller::name), sellers, Field.SELLER)
                .ifPresent(findings::add);
        for (SchemeName scheme : SchemeName.values()) {
            if (job.claims().get(scheme).claimed()) {
                buyer(job, scheme).ifPresent(findings::add);
            }
        }
        return findings;
    }

    /** The one that the register names, or any that an offer could be taken of. */
    private Optional<Finding> buyer(Job job, SchemeName scheme) {
        Set<String> samples = buyers();
        Optional<String> named = job.claims().get(scheme).buyer().map(Buyer::name);
        Optional<String> shown =
                named.isPresent()
                        ? named.filter(name -> has(samples, name))
                        : tables.offers().stream()
                                .filter(o -> o.scheme() == scheme)
                                .map(o -> o.buyer())
                                .filter(name -> has(samples, name))
                                .findFirst();
        return named(job, shown, samples, Field.of(scheme, ClaimFact.BUYER))
                .map(f -> f.holding(Set.of(Concern.claim(scheme))));
    }

    private static Optional<Finding> named(
            Job job, Optional<String> name, Set<String> samples, Field field) {
        return name.filter(n -> has(samples, n))
                .map(
                        n ->
                                finding(
                                        job,
                                        job.origin().cell(field),
                                        n + " is one of the sample firm's invented names.",
                                        "Take its rows out of the firm's tables and name your own."));
    }

    private static Finding finding(Job job, Place place, String fact, String remedy) {
        return Finding.of(FindingCode.SAMPLE_SHOWN, place, fact, remedy).forJob(job.reference());
    }

    private Set<String> people() {
        return names(SAMPLE.people(), Person::name);
    }

    private Set<String> makers() {
        return names(SAMPLE.makers(), Maker::name);
    }

    private Set<String> buyers() {
        return names(SAMPLE.buyers(), Buyer::name);
    }

    /** Facts of the firm that are the sample firm's to the letter. */
    private List<String> facts() {
        Firm own = tables.firm();
        Firm other = SAMPLE.firm();
        Map<String, Boolean> same = new LinkedHashMap<>();
        same.put("name", key(own.name()).equals(key(other.name())));
        same.put("abn", own.abn().equals(other.abn()));
        same.put("street", same(own.address().street(), other.address().street()));
        same.put("phone", same(own.phone(), other.phone()));
        same.put("after hours", same(own.afterHours(), other.afterHours()));
        same.put("email", same(own.email(), other.email()));
        same.put("account name", same(own.accountName(), other.accountName()));
        same.put("account", same(own.account(), other.account()) && same(own.bsb(), other.bsb()));
        return same.entrySet().stream().filter(Map.Entry::getValue).map(Map.Entry::getKey).toList();
    }

    private static <T> boolean same(Optional<T> own, Optional<T> other) {
        return own.isPresent() && own.equals(other);
    }

    /** Those of the sample's names that these tables have too. */
    private <T> Set<String> names(List<T> samples, Function<T, String> name) {
        Set<String> own =
                Stream.of(
                                tables.people().stream().map(Person::name),
                                tables.makers().stream().map(Maker::name),
                                tables.sellers().stream().map(Seller::name),
                                tables.buyers().stream().map(Buyer::name))
                        .flatMap(all -> all)
                        .map(SampleFirm::key)
                        .collect(Collectors.toSet());
        return samples.stream()
                .map(name)
                .filter(n -> own.contains(key(n)))
                .collect(Collectors.toCollection(LinkedHashSet::new));
    }

    private static boolean has(Set<String> names, String name) {
        return names.stream().anyMatch(n -> key(n).equals(key(name)));
    }

    private static String key(String name) {
        return name.strip().replaceAll("\\s+", " ").toLowerCase(Locale.ROOT);
    }
}
