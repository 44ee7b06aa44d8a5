package paperbark.finding;

import io.soabase.recordbuilder.core.RecordBuilder;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;

/**
 * One problem or note about the user's data, tables or templates.
 *
 * @param code what kind of problem; the catalogue knows why it matters
 * @param severity usually the catalogue's, sometimes milder
 * @param place where it is
 * @param job the job's reference, when known
 * @param seen the value as the eye sees it, shortened and with control characters made visible;
 *     empty where there is none
 * @param fact what is wrong, one sentence, no advice
 * @param remedy what to do, one imperative sentence; empty only for a note
 * @param holds what is not produced because of it; empty unless a stop
 * @param rule the rule row that spoke, if one did
 * @param also other places involved, e.g. the first row with the same serial
 */
@RecordBuilder
public record Finding(
        FindingCode code,
        Severity severity,
        Place place,
        Optional<String> job,
        String seen,
        String fact,
        String remedy,
        Set<Concern> holds,
        Optional<RuleRef> rule,
        List<Place> also) {

    /** File, sheet, row, column, code: the order in which people read. */
    public static final Comparator<Finding> READING_ORDER =
            Comparator.comparing((Finding f) -> f.place.file())
                    .thenComparing(f -> f.place.sheetName())
                    .thenComparing(f -> f.place.rowNumber())
                    .thenComparing(f -> f.place.cellAddress().length())
                    .thenComparing(f -> f.place.cellAddress())
                    .thenComparing(Finding::code)
                    .thenComparing(Finding::fact);

    /** Checks that a finding says what to do unless it is a note. */
    public Finding {
        Objects.requireNonNull(code);
        Objects.requireNonNull(place);
        if (fact.isBlank() || (severity != Severity.NOTE && remedy.isBlank())) {
            throw new IllegalArgumentException(
                    "a finding needs a fact and, unless a note, a remedy: " + code);
        }
        seen = Seen.shown(seen);
        fact = Seen.visible(fact);
        remedy = Seen.visible(remedy);
        holds = severity == Severity.STOP ? Set.copyOf(holds) : Set.of();
        also = List.copyOf(also);
    }

    /**
     * A finding with the catalogue's severity and concerns, without job, value, rule or other
     * places.
     */
    public static Finding of(FindingCode code, Place place, String fact, String remedy) {
        return new Finding(
                code,
                code.severity(),
                place,
                Optional.empty(),
                "",
                fact,
                remedy,
                code.holds(),
                Optional.empty(),
                List.of());
    }

    /** The same finding about the given job. */
    public Finding forJob(String reference) {
        return FindingBuilder.builder(this).job(Optional.of(reference)).build();
    }

    /** The same finding with the value that was seen. */
    public Finding seeing(String value) {
        return FindingBuilder.builder(this).seen(value).build();
    }

    /** The same finding with another severity. */
    public Finding as(Severity other) {
        return FindingBuilder.builder(this).severity(other).holds(code.holds()).build();
    }

    /** The same finding holding other papers than the catalogue says. */
    public Finding holding(Set<Concern> concerns) {
        return FindingBuilder.builder(this).holds(concerns).build();
    }

    /** The same finding naming the rule row that spoke. */
    public Finding by(RuleRef ref) {
        return FindingBuilder.builder(this).rule(Optional.of(ref)).build();
    }

    /** The same finding naming other places involved. */
    public Finding alsoAt(List<Place> places) {
        return FindingBuilder.builder(this).also(places).build();
    }

    /** Why it matters, from the catalogue. */
    public String why() {
        return code.why();
    }

    /** The place in words. */
    public String where() {
        return place.inWords();
    }

    /** What was seen, for terminals and logs: contact details are nobody else's business. */
    public String seenOnTerminal() {
        return code == FindingCode.PHONE_WRONG || code == FindingCode.EMAIL_WRONG ? "" : seen;
    }

    /** Whether it is a stop. */
    public boolean stops() {
        return severity == Severity.STOP;
    }

    /** Sorted for reading, the same code at the same place with the same words kept once. */
    public static List<Finding> inOrder(List<Finding> findings) {
        Map<List<Object>, Finding> once = new LinkedHashMap<>();
        findings.forEach(f -> once.putIfAbsent(List.of(f.code, f.place, f.job, f.fact), f));
        return once.values().stream().sorted(READING_ORDER).toList();
    }
}
