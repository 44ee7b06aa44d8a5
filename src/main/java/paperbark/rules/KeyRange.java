package paperbark.rules;

import java.util.Locale;

/**
 * The keys that a row speaks of, from the first to the last, both included. Keys are compared as
 * text whatever the case and spacing, so numbers in a range need the same number of digits, as
 * postcodes have.
 *
 * @param first the first key
 * @param last the last key; the same as the first for all but ranges
 */
record KeyRange(String first, String last) {

    static KeyRange single(String key) {
        return new KeyRange(key, key);
    }

    boolean contains(String key) {
        return order(first, key) <= 0 && order(key, last) <= 0;
    }

    boolean overlaps(KeyRange other) {
        return order(first, other.last) <= 0 && order(other.first, last) <= 0;
    }

    boolean isBackwards() {
        return order(first, last) > 0;
    }

    private static int order(String one, String other) {
        return plain(one).compareTo(plain(other));
    }

    private static String plain(String key) {
        return key.strip().replaceAll("\\s+", " ").toLowerCase(Locale.ROOT);
    }

    /** For people: the parts of a key with commas between them; empty for a table without keys. */
    static String inWords(String key) {
        return key.replace("|", ", ");
    }

    @Override
    public String toString() {
        return inWords(first.equals(last) ? first : first + " to " + last);
    }
}
