package paperbark.answer;

import com.fasterxml.jackson.annotation.JsonIgnore;
import com.fasterxml.jackson.annotation.JsonProperty;
import com.fasterxml.jackson.annotation.JsonUnwrapped;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import paperbark.entitlement.RulesInUse;
import paperbark.rules.RuleLine;
import paperbark.rules.RuleTable;
import paperbark.rules.Rulebook;

/**
 * The rule rows that speak on a day.
 *
 * @param asOf the day
 * @param withinDays how far to look ahead for rows that lapse
 * @param inForce every row in force, by table; the firm's before the shipped ones
 * @param lapsing those whose last day is the day or one of the days ahead, the first to lapse first
 * @param unconfirmed those that nobody compared with their source for a year, the oldest first
 * @param tables the names of all tables
 */
public record RulesInForce(
        LocalDate asOf,
        int withinDays,
        List<Row> inForce,
        List<Row> lapsing,
        List<Row> unconfirmed,
        @JsonIgnore List<String> tables) {
    /** After so many months without a look at its source, a row is listed as not confirmed. */
    public static final int OLD_AFTER_MONTHS = RulesInUse.OLD_AFTER_MONTHS;

    /** Keeps the lists from being changed. */
    public RulesInForce {
        inForce = List.copyOf(inForce);
        lapsing = List.copyOf(lapsing);
        unconfirmed = List.copyOf(unconfirmed);
        tables = List.copyOf(tables);
    }

    /**
     * A row and what stands beside it.
     *
     * @param line the row in words; the file of the firm's rows is named as theirs
     * @param goesOn whether a row for the same key begins the day after its last
     * @param beaten whether the firm has a row for the same key and day, which wins
     */
    public record Row(@JsonUnwrapped RuleLine line, boolean goesOn, boolean beaten) {

        /** The last day, where it has one. */
        @JsonProperty
        public Optional<LocalDate> lastDay() {
            return line.inForce().to();
        }
    }

    /**
     * Reads the shipped tables and the firm's.
     *
     * @param firmRules folder with the firm's tables, where it has any
     * @param asOf the day
     * @param withinDays how far to look ahead, not negative
     */
    public static RulesInForce on(Optional<Path> firmRules, LocalDate asOf, int withinDays) {
        Rulebook rulebook = Rulebook.load(firmRules);
        List<Row> rows = new ArrayList<>();
        for (RuleTable<?, ?> table : rulebook.all()) {
            List<RuleLine> lines = table.lines();
            lines.stream()
                    .filter(line -> line.inForce().contains(asOf))
                    .forEach(line -> rows.add(row(line, lines, asOf)));
        }
        LocalDate last = asOf.plusDays(withinDays);
        LocalDate old = asOf.minusMonths(OLD_AFTER_MONTHS);
        return new RulesInForce(
                asOf,
                withinDays,
                rows,
                rows.stream()
                        .filter(r -> r.lastDay().filter(day -> !day.isAfter(last)).isPresent())
                        .sorted(Comparator.comparing(r -> r.lastDay().orElseThrow()))
                        .toList(),
                rows.stream()
                        .filter(
                                r ->
                                        r.line()
                                                .confirmedOn()
                                                .filter(day -> !day.isBefore(old))
                                                .isEmpty())
                        .sorted(
                                Comparator.comparing(
                                        r -> r.line().confirmedOn().orElse(LocalDate.MIN)))
                        .toList(),
                rulebook.all().stream().<String>map(RuleTable::name).toList());
    }

    private static Row row(RuleLine line, List<RuleLine> table, LocalDate asOf) {
        Optional<LocalDate> last = line.inForce().to();
        List<RuleLine> sameKey =
                table.stream().filter(other -> other.key().equals(line.key())).toList();
        // The firm's rows come first, so whatever stands before the row beats it.
        boolean beaten =
                sameKey.stream()
                        .takeWhile(other -> !other.ref().equals(line.ref()))
                        .anyMatch(other -> other.inForce().contains(asOf));
        boolean goesOn =
                last.isPresent()
                        && sameKey.stream()
                                .anyMatch(o -> o.inForce().contains(last.get().plusDays(1)));
        return new Row(line, goesOn, beaten);
    }

    /** The same list narrowed to one table, named with or without folder and {@code .csv}. */
    public Optional<RulesInForce> of(String name) {
        return tables.stream()
                .filter(table -> isNamed(table, name))
                .findFirst()
                .map(
                        table ->
                                new RulesInForce(
                                        asOf,
                                        withinDays,
                                        only(table, inForce),
                                        only(table, lapsing),
                                        only(table, unconfirmed),
                                        List.of(table)));
    }

    private static boolean isNamed(String table, String name) {
        String bare = table.substring(0, table.length() - ".csv".length());
        return List.of(table, bare, bare.substring(bare.indexOf('/') + 1)).contains(name);
    }

    private static List<Row> only(String table, List<Row> rows) {
        // The firm's file is called "name (the firm's)".
        return rows.stream()
                .filter(row -> row.line().ref().table().split(" ")[0].equals(table))
                .toList();
    }
}
