package paperbark.output.paper;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * How many years of school a text asks for, after Flesch and Kincaid (1975): 0.39 x words a
 * sentence + 11.8 x syllables a word - 15.59.
 *
 * <p>Syllables are counted from the spelling: groups of vowels, less a silent e, more where two
 * vowels are spoken apart. A number counts as a word of two syllables.
 *
 * @param sentences how many
 * @param words how many
 * @param syllables how many
 */
record ReadingGrade(int sentences, int words, int syllables) {
    private static final Pattern WORD = Pattern.compile("[\\p{L}][\\p{L}'’]*|\\d[\\d.,]*");

    /** Words that are spoken otherwise than their like are. */
    private static final Map<String, Integer> KNOWN =
            Map.of("business", 2, "every", 2, "area", 3, "being", 2, "people", 2, "science", 2);

    /** The grade of some texts, each of whole sentences. */
    static ReadingGrade of(List<String> texts) {
        int sentences = 0;
        int words = 0;
        int syllables = 0;
        for (String sentence : texts.stream().flatMap(t -> sentences(t).stream()).toList()) {
            Matcher word = WORD.matcher(sentence);
            int before = words;
            while (word.find()) {
                words++;
                syllables += syllables(word.group());
            }
            sentences += words > before ? 1 : 0;
        }
        return new ReadingGrade(sentences, words, syllables);
    }

    /** The sentences of a text; an end mark counts where a space or the end comes after it. */
    static List<String> sentences(String text) {
        List<String> all = new ArrayList<>();
        for (String part : text.split("(?<=[.!?])[\"”)]*(?:\\s+|$)")) {
            if (!part.isBlank()) {
                all.add(part.strip());
            }
        }
        return all;
    }

    /** The grade: 8 can be read after eight years of school. */
    double grade() {
        return 0.39 * words / sentences + 11.8 * syllables / words - 15.59;
    }

    static int syllables(String word) {
        if (Character.isDigit(word.charAt(0))) {
            return 2;
        }
        String text = word.toLowerCase(Locale.ROOT).replaceAll("['’](?:s|t|re|ve|ll|d|m)?$", "");
        if (KNOWN.containsKey(text)) {
            return KNOWN.get(text);
        }
        int groups = count(text, "[aeiouy]+");
        // Spoken apart: idea, serial, certificate's like, react, quiet, manual, fluid, doing.
        groups +=
                count(
                        text,
                        "(?<![tcgl])i[ao](?!us)|eo|(?<!q)u(?:a|i(?=[dn]))|(?<=q)uie|ea(?=$|t(?:e|ion)$)|[aeiouy]ing");
        // Silent: made, pipes, called, safely, movement; but table, needed, washes.
        groups -= count(text, "[^aeiouyl]e$|[aeiouy]le$|[^aeiouytd]ed$|[^aeiouyszxgch]es$");
        groups -= count(text, "[^aeiouy]e(?=(?:ly|ment|less|ful)s?$)");
        return Math.max(1, groups);
    }

    private static int count(String text, String pattern) {
        return (int) Pattern.compile(pattern).matcher(text).results().count();
    }
}
