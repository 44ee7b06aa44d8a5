package paperbark.output.form;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.concurrent.ConcurrentHashMap;
import paperbark.finding.Finding;
import paperbark.finding.Place;
import paperbark.firm.Maker;
import paperbark.offer.Expected;
import paperbark.output.BrokenTemplate;
import paperbark.output.CaseFile;
import paperbark.output.Paper;
import paperbark.output.PaperKind;
import paperbark.output.TemplateEngine;
import paperbark.value.SchemeName;

/**
 * What is typed into the pages of makers and buyers, or sent to them as a table, by the firm's
 * lists. A maker's list sees no account number.
 */
public final class Entries {
    private static final String FOLDER = "entries/";
    private static final Set<String> ACCOUNTS = Set.of("accountName", "bsb", "account");

    private final TemplateEngine engine;
    private final Map<String, Optional<EntryList>> lists = new ConcurrentHashMap<>();
    private final Set<Finding> findings = new LinkedHashSet<>();

    /**
     * By the lists of the firm's template folder and, behind them, the shipped ones.
     *
     * @param templates an existing folder; empty takes the shipped lists alone
     */
    public Entries(Optional<Path> templates) {
        engine = new TemplateEngine(templates);
    }

    /**
     * The entries of a paper.
     *
     * @param page whether a page to type from is wanted
     * @param table whether a table to send is wanted
     * @param all heading and value, in order
     */
    public record Filled(boolean page, boolean table, List<Entry> all) {
        /** Keeps the list from being changed. */
        public Filled {
            all = List.copyOf(all);
        }
    }

    /**
     * One entry.
     *
     * @param heading as the recipient calls it
     * @param value what is typed; empty text where the job lacks the fact
     */
    public record Entry(String heading, String value) {}

    /** Those of a job's warranty; empty where the maker takes none. */
    public Optional<Filled> ofWarranty(CaseFile file) {
        return file.job()
                .heater()
                .maker()
                .flatMap(Maker::entries)
                .flatMap(name -> filled(name, file, PaperKind.WARRANTY, false));
    }

    /** Those of a claim; empty where its buyer takes none. */
    public Optional<Filled> ofClaim(CaseFile file, SchemeName scheme) {
        return file.expected(scheme)
                .map(Expected::buyer)
                .flatMap(buyer -> buyer.entries())
                .flatMap(name -> filled(name, file, PaperKind.of(scheme), true));
    }

    /** What was noticed so far, each once however many jobs it met. */
    public List<Finding> findings() {
        return List.copyOf(findings);
    }

    private Optional<Filled> filled(String name, CaseFile file, PaperKind kind, boolean accounts) {
        Optional<Paper> paper = file.papers().stream().filter(p -> p.kind() == kind).findFirst();
        return paper.flatMap(
                p ->
                        lists.computeIfAbsent(name, this::list)
                                .map(l -> filled(l, file, p, accounts)));
    }

    private Optional<EntryList> list(String name) {
        String file = FOLDER + name + ".csv";
        try {
            Optional<String> text =
                    name.matches("[\\w-]{1,40}") ? engine.text(file) : Optional.empty();
            if (text.isEmpty()) {
                findings.add(
                        EntryList.beside(
                                new Place.InFile(file),
                                "The tables name this list of entries, and it is not there."));
                return Optional.empty();
            }
            List<Finding> noticed = new ArrayList<>();
            EntryList list = EntryList.read(file, text.get(), noticed);
            findings.addAll(noticed);
            return Optional.of(list).filter(l -> !l.rows().isEmpty());
        } catch (BrokenTemplate e) {
            findings.add(EntryList.beside(new Place.InFile(file), e.getMessage()));
            return Optional.empty();
        }
    }

    private Filled filled(EntryList list, CaseFile file, Paper paper, boolean accounts) {
        Map<String, Object> facts = FormModel.facts(file, paper);
        if (!accounts) {
            without(facts.get("firm"));
            without(facts.get("job") instanceof Map<?, ?> job ? job.get("payment") : null);
        }
        return new Filled(
                list.page(),
                list.table(),
                list.rows().stream()
                        .map(row -> new Entry(row.heading(), value(list, row, facts)))
                        .toList());
    }

    private static void without(Object facts) {
        if (facts instanceof Map<?, ?> map) {
            map.keySet().removeAll(ACCOUNTS);
        }
    }

    private String value(EntryList list, EntryList.EntryRow row, Map<String, Object> facts) {
        try {
            String value = engine.renderText(list.file(), row.value(), facts).orElse("").strip();
            return row.form().map(form -> DateForm.as(form, value)).orElse(value);
        } catch (BrokenTemplate e) {
            findings.add(
                    EntryList.beside(new Place.InRule(list.file(), row.row()), e.getMessage())
                            .seeing(row.value()));
            return "";
        }
    }

    /** SHA-256 of every list used so far, by name. */
    public Map<String, String> used() {
        return new TreeMap<>(engine.used());
    }
}
