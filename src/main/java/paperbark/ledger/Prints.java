package paperbark.ledger;

import java.util.LinkedHashSet;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import paperbark.job.Field;
import paperbark.job.Job;
import paperbark.job.JobFact;

/**
 * The facts of a job as short keyed digests: enough to say which of them changed since, without
 * keeping the facts themselves.
 *
 * @param key name of the key that they are made with; empty text where there are none
 * @param byFact each by the fact's name; facts that are not known have none
 */
public record Prints(String key, Map<String, String> byFact) {
    /** Nothing kept: prints of earlier programs are emptied. */
    static final Prints NONE = new Prints("", Map.of());

    /** Keeps the prints from being changed. */
    public Prints {
        byFact = Map.copyOf(byFact);
    }

    /** The prints of a job. Those of one value differ from job to job and from fact to fact. */
    static Prints of(Job job, PrintKey key) {
        Map<String, String> prints = new TreeMap<>();
        for (JobFact fact : JobFact.ALL) {
            fact.in(job)
                    .map(
                            text ->
                                    String.join(
                                            "\u001f", Keys.job(job.reference()), fact.name(), text))
                    .ifPresent(text -> prints.put(fact.name(), key.print(text)));
        }
        return new Prints(key.id(), prints);
    }

    /**
     * The facts in which a job differs from these, in the order of the fields.
     *
     * @param mine the key of today; empty where there is none
     * @return empty where it cannot be told, because nothing was kept or another key was used
     */
    Optional<Set<JobFact>> changedIn(Job job, Optional<PrintKey> mine) {
        return mine.filter(m -> m.id().equals(key)).map(m -> changed(of(job, m).byFact()));
    }

    /** The facts of a job that were not known then, so that papers had empty boxes for them. */
    Set<JobFact> unknown() {
        return JobFact.ALL.stream()
                .filter(fact -> fact.leavesABox() && !byFact.containsKey(fact.name()))
                .collect(Collectors.toSet());
    }

    private Set<JobFact> changed(Map<String, String> now) {
        Predicate<JobFact> differs =
                fact ->
                        !Optional.ofNullable(byFact.get(fact.name()))
                                .equals(Optional.ofNullable(now.get(fact.name())));
        // Of a plan nothing is printed once it is over, which says nothing of what it was.
        boolean moved = JobFact.of(Field.STAGE).stream().anyMatch(differs);
        return JobFact.ALL.stream()
                .filter(fact -> differs.test(fact) && !(moved && fact.isOfPlan()))
                .collect(Collectors.toCollection(LinkedHashSet::new));
    }

    /** As the ledger stores them, a line each. */
    String text() {
        return new TreeMap<>(byFact)
                .entrySet().stream()
                        .map(e -> e.getKey() + "=" + e.getValue())
                        .collect(Collectors.joining("\n"));
    }

    static Prints stored(String key, String text) {
        return new Prints(
                key,
                text.lines()
                        .collect(
                                Collectors.toMap(
                                        l -> l.substring(0, l.indexOf('=')),
                                        l -> l.substring(l.indexOf('=') + 1))));
    }
}
