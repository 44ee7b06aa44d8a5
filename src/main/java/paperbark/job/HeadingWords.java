package paperbark.job;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import paperbark.sheet.ColumnNames;
import paperbark.value.Nearest;
import paperbark.value.SchemeName;

/** What the words of a heading say of its column. */
final class HeadingWords {
    private static final int KNOWN = 90;
    private static final int MISSPELT = 60;
    private static final int SAME_WORDS = 65;

    /** With values that agree it stays below what is sure. */
    private static final int KNOWN_OF_PART = 34;

    /** Below this share of common words two headings have little to do with each other. */
    private static final int LEAST_PERCENT = 45;

    /** Words that a heading has exactly where its field is one of these. */
    private static final List<String> MARKS = marks();

    /** Words by what they stand for in headings; common practice, no source. */
    private static final Map<String, String> MEANINGS = meanings();

    private final String heading;
    private final ColumnNames<Field> usual;
    private final Set<String> words;

    HeadingWords(String heading, ColumnNames<Field> usual) {
        this.heading = heading;
        this.usual = usual;
        this.words = words(heading);
    }

    /**
     * What speaks for a field.
     *
     * @param points how much, from 0 to 90
     * @param because in words
     */
    record Evidence(int points, String because) {
        static final Evidence NONE = new Evidence(0, "");
    }

    Evidence speaksFor(Field field) {
        Optional<Field> known = usual.field(heading);
        if (known.isPresent()) {
            if (field.parts().contains(known.get()) && !isNameOfAnother(field)) {
                return new Evidence(KNOWN_OF_PART, "a usual heading of a part of it");
            }
            return known.get().equals(field)
                    ? new Evidence(KNOWN, "a usual heading")
                    : Evidence.NONE;
        }
        if (isOfOthers(field)) {
            return Evidence.NONE;
        }
        String normal = ColumnNames.normal(heading);
        boolean misspelt =
                normal.length() > 3 && Nearest.to(normal, usual.aliases(field)).isPresent();
        int alike =
                Stream.concat(usual.headings(field).stream(), Stream.of(field.label()))
                        .mapToInt(this::alike)
                        .max()
                        .orElse(0);
        int byWords = alike < LEAST_PERCENT ? 0 : SAME_WORDS * alike / 100;
        if (misspelt && MISSPELT >= byWords) {
            return new Evidence(MISSPELT, "nearly a usual heading");
        }
        return byWords == 0 ? Evidence.NONE : new Evidence(byWords, "words of a usual heading");
    }

    /** Whether a word of the heading, such as "old", says that it is about something else. */
    boolean isOfOthers(Field field) {
        return MARKS.stream().anyMatch(m -> words.contains(m) != field.key().startsWith(m));
    }

    /** Whether it is the name of another field, which no table can give to this one. */
    boolean isNameOfAnother(Field field) {
        String normal = ColumnNames.normal(heading);
        return Field.values().stream()
                .filter(other -> !other.equals(field))
                .flatMap(other -> Stream.of(other.key(), other.label()))
                .anyMatch(name -> ColumnNames.normal(name).equals(normal));
    }

    /** Common words as percent of the words of both. */
    private int alike(String other) {
        Set<String> others = words(other);
        Set<String> common = new HashSet<>(words);
        common.retainAll(others);
        int all = words.size() + others.size();
        return all == 0 ? 0 : 200 * common.size() / all;
    }

    private static Set<String> words(String text) {
        Set<String> words = new HashSet<>();
        String spaced = text.replaceAll("(?<=[a-z])(?=[A-Z])", " ").toLowerCase(Locale.ROOT);
        for (String word : spaced.split("[^\\p{L}\\p{Nd}/$]+")) {
            if (!word.isEmpty()) {
                String plain = word.length() > 3 ? word.replaceAll("s$", "") : word;
                String meant = MEANINGS.getOrDefault(plain, plain);
                words.addAll(Arrays.asList(meant.split(" ")));
            }
        }
        words.removeAll(Set.of("", "of", "the", "on", "for", "in"));
        return words;
    }

    private static List<String> marks() {
        List<String> marks = new ArrayList<>(List.of("postal", "old"));
        Arrays.stream(SchemeName.values()).map(SchemeName::key).forEach(marks::add);
        return List.copyOf(marks);
    }

    private static Map<String, String> meanings() {
        Map<String, String> all = new HashMap<>();
        List<String> lines = new ArrayList<>();
        lines.add("number: no nr num #");
        lines.add("serial: s/n sn ser plate");
        lines.add("phone: ph tel telephone mob mobile cell");
        lines.add("e-mail: mail email");
        lines.add("owner: customer cust client householder homeowner name");
        lines.add("site: install installation property job/site premise location");
        lines.add("street: st addr address road");
        lines.add("suburb: town city locality place");
        lines.add("postcode: pc p/code zip post/code pcode");
        lines.add("maker: brand make manufacturer mfr");
        lines.add("model: unit type system heater");
        lines.add("date: day when dt");
        lines.add("installed: inst done completed fitted finished");
        lines.add("visit: booked booking appointment appt scheduled planned");
        lines.add("price: amount amt invoice total $ cost value");
        lines.add("count: qty quantity how many");
        lines.add("plumber: installer tradie tech technician fitter");
        lines.add("electrician: sparky sparkie elec");
        lines.add("stage: status progress state/of/job");
        lines.add("old: existing previous removed replaced");
        lines.add("certificate: cert coc compliance");
        lines.add("benefit: discount rebate");
        lines.add("tank: cylinder");
        lines.add("collector: panel tube");
        lines.add("job: ref reference order");
        lines.add("note: comment remark");
        for (String line : lines) {
            String[] parts = line.split(": ");
            for (String word : parts[1].split(" ")) {
                all.put(word, parts[0]);
            }
        }
        return all;
    }
}
