package paperbark.sheet;

import java.util.Collection;
import java.util.Comparator;
import java.util.Locale;
import java.util.Optional;

/** The name that was probably meant: the one with the fewest letters to change. */
final class Nearest {
    private Nearest() {}

    static Optional<String> to(String wanted, Collection<String> names) {
        return names.stream()
                .filter(name -> distance(wanted, name) <= Math.max(2, wanted.length() / 2))
                .min(Comparator.comparing(name -> distance(wanted, name)));
    }

    private static int distance(String one, String other) {
        String a = one.toLowerCase(Locale.ROOT);
        String b = other.toLowerCase(Locale.ROOT);
        int[] above = new int[b.length() + 1];
        for (int j = 0; j <= b.length(); j++) {
            above[j] = j;
        }
        for (int i = 1; i <= a.length(); i++) {
            int[] row = new int[b.length() + 1];
            row[0] = i;
            for (int j = 1; j <= b.length(); j++) {
                int change = a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1;
                row[j] = Math.min(above[j - 1] + change, Math.min(above[j], row[j - 1]) + 1);
            }
            above = row;
        }
        return above[b.length()];
    }
}
