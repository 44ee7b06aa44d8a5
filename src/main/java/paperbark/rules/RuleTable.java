package paperbark.rules;

import java.time.LocalDate;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import paperbark.value.Days;

/**
 * A proven rule table. It answers for a day and a key or not at all; there is no default.
 *
 * @param <K> what rows are looked up by
 * @param <R> what a row says
 */
public final class RuleTable<K, R> {

    /** A raw row and, unless it is a gap on purpose, what it says. */
    record Entry<R>(RuleRow raw, Optional<R> row) {
        Dated<R> dated() {
            return new Dated<>(row.orElseThrow(), raw.ref(), raw.inForce(), raw.note());
        }
    }

    private final String name;
    private final Function<K, String> keyText;
    private final List<Entry<R>> entries;
    // Thousands of jobs ask for a few keys; who looks up a key gets its rows in their order.
    private final Map<String, List<Entry<R>>> asked = new ConcurrentHashMap<>();

    /** Takes the firm's entries first: where two speak, the first wins. */
    RuleTable(String name, Function<K, String> keyText, List<Entry<R>> entries) {
        this.name = name;
        this.keyText = keyText;
        this.entries = List.copyOf(entries);
    }

    /** Its file name, e.g. {@code stc/years.csv}. */
    public String name() {
        return name;
    }

    /** The row for a day and key; empty where there is none or it was left empty on purpose. */
    public Optional<Dated<R>> on(LocalDate day, K key) {
        return speaking(day, keyText.apply(key)).filter(e -> e.row().isPresent()).map(Entry::dated);
    }

    /** Whether any row speaks of the key, on whatever day. */
    public boolean knows(K key) {
        return of(keyText.apply(key)).findAny().isPresent();
    }

    /** The last row for a key that ended before the day, where none speaks for the day. */
    public Optional<Dated<R>> endedBefore(LocalDate day, K key) {
        String text = keyText.apply(key);
        if (speaking(day, text).isPresent()) {
            return Optional.empty();
        }
        return of(text).filter(e -> e.row().isPresent())
                .filter(e -> e.raw().inForce().to().map(day::isAfter).orElse(false))
                .max(Comparator.comparing(e -> e.raw().inForce().to().orElseThrow()))
                .map(Entry::dated);
    }

    /**
     * Why {@link #on} found nothing, as the end of a sentence that names table, key, day and the
     * nearest row: {@code stc/years.csv has no row for 31 Mar 2001; the nearest is 1 Apr 2001 to 31
     * Dec 2021 (row 2)}.
     */
    public String missing(LocalDate day, K key) {
        String text = keyText.apply(key);
        String what = KeyRange.inWords(text);
        String when = (what.isEmpty() ? "" : what + " on ") + Days.show(day);
        return speaking(day, text)
                .map(
                        e ->
                                "%s has no value for %s (row %d: %s)"
                                        .formatted(name, when, e.raw().ref().row(), e.raw().note()))
                .orElseGet(() -> "%s has no row for %s%s".formatted(name, when, near(day, text)));
    }

    private String near(LocalDate day, String key) {
        return of(key).min(Comparator.comparing(e -> distance(e.raw(), day)))
                .map(
                        e ->
                                "; the nearest is %s (row %d)"
                                        .formatted(e.raw().inForce(), e.raw().ref().row()))
                .orElse("");
    }

    private static long distance(RuleRow row, LocalDate day) {
        return Stream.of(row.inForce().from(), row.inForce().to())
                .flatMap(Optional::stream)
                .mapToLong(end -> Math.abs(end.toEpochDay() - day.toEpochDay()))
                .min()
                .orElse(0);
    }

    Optional<Entry<R>> speaking(LocalDate day, String key) {
        for (Entry<R> entry : about(key)) {
            if (entry.raw().inForce().contains(day)) {
                return Optional.of(entry);
            }
        }
        return Optional.empty();
    }

    private Stream<Entry<R>> of(String key) {
        return about(key).stream();
    }

    private List<Entry<R>> about(String key) {
        return asked.computeIfAbsent(
                KeyRange.plain(key),
                plain -> entries.stream().filter(e -> e.raw().key().contains(plain)).toList());
    }

    /** All rows in words, the firm's first. */
    public List<RuleLine> lines() {
        return entries.stream().map(e -> line(e.raw())).toList();
    }

    private static RuleLine line(RuleRow raw) {
        String values =
                raw.values().stream()
                        .filter(v -> !raw.text(v).isEmpty())
                        .map(v -> v + " " + raw.text(v))
                        .collect(Collectors.joining(", "));
        return new RuleLine(
                raw.ref(),
                raw.key().toString(),
                values,
                raw.inForce(),
                raw.confirmedOn(),
                raw.note());
    }

    /**
     * Rows of which the last day lies between two days, both included, and after which no row
     * speaks for the same key.
     */
    public List<RuleLine> ending(LocalDate from, LocalDate to) {
        return lines().stream()
                .filter(
                        line ->
                                line.inForce()
                                        .to()
                                        .filter(last -> !last.isBefore(from) && !last.isAfter(to))
                                        .filter(last -> !goesOn(line, last))
                                        .isPresent())
                .toList();
    }

    private boolean goesOn(RuleLine ended, LocalDate last) {
        return lines().stream()
                .filter(line -> line.key().equals(ended.key()))
                .anyMatch(line -> line.inForce().contains(last.plusDays(1)));
    }

    List<RuleRow> rows() {
        return entries.stream().map(Entry::raw).toList();
    }
}
