package paperbark.office;

import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import paperbark.ledger.Keys;

/**
 * Finds job numbers in the names of files and folders, in any letter case and with any signs
 * between their parts: {@code sb_1032 tank} names SB-1032, and {@code SB-10321} does not. Where
 * SB-1032-2 is a job too, {@code SB-1032-2 tank} names it alone. A number without a letter counts
 * at the beginning of a name only, because cameras number their pictures.
 */
final class JobNames {
    private static final String SIGNS = "[^\\p{L}\\p{M}\\p{Nd}]+";

    private final Map<String, Set<String>> jobs = new HashMap<>();

    /** For the jobs that there are. */
    JobNames(Collection<String> references) {
        for (String reference : references) {
            String folded = String.join("-", parts(reference));
            if (!folded.isEmpty()) {
                jobs.computeIfAbsent(folded, f -> new TreeSet<>()).add(reference);
            }
        }
    }

    /** The jobs that a name tells of; several where it is not clear which one is meant. */
    Set<String> in(String name) {
        List<String> parts = parts(name);
        List<Found> all = new ArrayList<>();
        for (int from = 0; from < parts.size(); from++) {
            for (int to = from + 1; to <= parts.size(); to++) {
                String words = String.join("-", parts.subList(from, to));
                if (jobs.containsKey(words) && (from == 0 || hasLetter(words))) {
                    all.add(new Found(from, to, words));
                }
            }
        }
        return all.stream()
                .filter(found -> all.stream().noneMatch(found::isWithin))
                .flatMap(found -> jobs.get(found.words()).stream())
                .collect(Collectors.toCollection(TreeSet::new));
    }

    /** A number, and which parts of the name it is. */
    private record Found(int from, int to, String words) {
        boolean isWithin(Found other) {
            return !equals(other) && other.from <= from && to <= other.to;
        }
    }

    private static boolean hasLetter(String words) {
        return words.codePoints().anyMatch(Character::isLetter);
    }

    private static List<String> parts(String text) {
        List<String> parts = new ArrayList<>(List.of(Keys.job(text).split(SIGNS)));
        parts.removeIf(String::isEmpty);
        return parts;
    }
}
