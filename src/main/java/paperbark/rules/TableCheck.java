package paperbark.rules;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;
import java.util.stream.Stream;
import paperbark.rules.RulebookException.Fault;
import paperbark.value.Days;

/** Proves that the rows of a table neither contradict each other nor leave days out. */
final class TableCheck {
    private TableCheck() {}

    /** Rows of one file that speak of the same day and key. */
    static List<Fault> overlaps(List<RuleRow> rows) {
        List<Fault> faults = new ArrayList<>();
        for (int i = 0; i < rows.size(); i++) {
            for (int j = 0; j < i; j++) {
                RuleRow row = rows.get(i);
                RuleRow earlier = rows.get(j);
                if (row.key().overlaps(earlier.key())
                        && row.inForce().overlaps(earlier.inForce())) {
                    faults.add(fault(row, "overlaps row " + earlier.ref().row()));
                }
            }
        }
        return faults;
    }

    /** Days between the first and the last row of a key for which no row, of any file, speaks. */
    static List<Fault> holes(List<RuleRow> rows) {
        TreeSet<String> keys = new TreeSet<>();
        rows.forEach(r -> keys.addAll(List.of(r.key().first(), r.key().last())));
        return keys.stream().flatMap(key -> holes(rows, key)).distinct().toList();
    }

    private static Stream<Fault> holes(List<RuleRow> rows, String key) {
        String plain = KeyRange.plain(key);
        List<RuleRow> inOrder =
                rows.stream()
                        .filter(r -> r.key().contains(plain))
                        .sorted(Comparator.comparing(r -> r.inForce().from().orElse(LocalDate.MIN)))
                        .toList();
        List<Fault> faults = new ArrayList<>();
        Optional<LocalDate> covered = inOrder.get(0).inForce().to();
        for (RuleRow row : inOrder.subList(1, inOrder.size())) {
            if (covered.isEmpty()) {
                break;
            }
            LocalDate next = covered.get().plusDays(1);
            LocalDate from = row.inForce().from().orElse(LocalDate.MIN);
            if (from.isAfter(next)) {
                faults.add(fault(row, hole(key, next, from.minusDays(1))));
            }
            covered = later(covered.get(), row.inForce().to());
        }
        return faults.stream();
    }

    private static Optional<LocalDate> later(LocalDate one, Optional<LocalDate> other) {
        return other.map(o -> o.isAfter(one) ? o : one);
    }

    private static String hole(String key, LocalDate first, LocalDate last) {
        String what = KeyRange.inWords(key);
        return "no row speaks for %s%s to %s"
                .formatted(
                        what.isEmpty() ? "" : what + " from ", Days.show(first), Days.show(last));
    }

    private static Fault fault(RuleRow row, String what) {
        return new Fault(row.ref().table(), row.ref().row(), what);
    }
}
