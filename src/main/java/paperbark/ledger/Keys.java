package paperbark.ledger;

import java.text.Normalizer;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import paperbark.job.Site;
import paperbark.value.Serial;

/** What jobs, serials and sites are compared by. */
public final class Keys {
    // A number goes on with letters and digits, or with more digits behind a sign.
    private static final String BEFORE = "(?<![\\p{L}\\p{Nd}])(?<![\\p{L}\\p{Nd}][/_-])";
    private static final String AFTER = "(?![\\p{L}\\p{Nd}])(?![/_-]\\p{Nd})";

    // Letters of other alphabets that look like Latin capitals, and the digits that letters are
    // taken for when somebody reads a plate.
    private static final String LOOKS =
            "\u0410\u0412\u0415\u041a\u041c\u041d\u041e\u0420\u0421\u0422\u0425\u0391\u0392\u0395\u0396\u0397\u0399\u039a\u039c\u039d\u039f\u03a1\u03a4\u03a5\u03a7OILSB";
    private static final String LIKE = "ABEKMHOPCTXABEZHIKMNOPTYX01158";

    private static final Pattern WORD = Pattern.compile("[\\p{L}\\p{Nd}/_-]+");
    private static final int MOST_WORDS = 4;

    private Keys() {}

    /** A job number without case, and in compatibility form. */
    public static String job(String reference) {
        return Normalizer.normalize(reference.strip(), Normalizer.Form.NFKC)
                .toUpperCase(Locale.ROOT);
    }

    /** Whether a remark on what a row corrects names a job; SB-12 does not name SB-1. */
    static boolean names(Optional<String> corrects, String reference) {
        Pattern whole = Pattern.compile(BEFORE + Pattern.quote(job(reference)) + AFTER);
        return corrects.map(text -> whole.matcher(job(text)).find()).orElse(false);
    }

    /**
     * The jobs and claims that such a remark names. A number may have spaces in it, so of what is
     * known the longest counts: where there is a job T 1, {@code T 1} does not name job 1.
     *
     * @param known whether there is such a job or claim
     */
    static List<String> named(Optional<String> corrects, Predicate<String> known) {
        Set<String> named = new LinkedHashSet<>();
        String text = job(corrects.orElse(""));
        List<MatchResult> words = WORD.matcher(text).results().toList();
        for (int i = 0; i < words.size(); i++) {
            for (int last = Math.min(i + MOST_WORDS, words.size()) - 1; last >= i; last--) {
                String run = text.substring(words.get(i).start(), words.get(last).end());
                if (known.test(run)) {
                    named.add(run);
                    i = last;
                    break;
                }
            }
        }
        return List.copyOf(named);
    }

    /** A serial with everything folded that is easily read for something else. */
    static String lookalike(Serial serial) {
        StringBuilder folded = new StringBuilder();
        for (char c : serial.key().toCharArray()) {
            int at = LOOKS.indexOf(c);
            char like = at < 0 ? c : LIKE.charAt(at);
            int again = LOOKS.indexOf(like);
            folded.append(again < 0 ? like : LIKE.charAt(again));
        }
        return folded.toString();
    }

    /** Address and position without case and punctuation; empty where the address is incomplete. */
    public static Optional<String> site(Site site) {
        if (!site.address().isComplete()) {
            return Optional.empty();
        }
        String all = site.address() + " " + site.position().orElse("");
        return Optional.of(
                Normalizer.normalize(all, Normalizer.Form.NFKC)
                        .toUpperCase(Locale.ROOT)
                        .replaceAll("[^\\p{L}\\p{Nd}]", ""));
    }
}
