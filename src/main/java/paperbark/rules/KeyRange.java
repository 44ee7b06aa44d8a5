package paperbark.rules;

import paperbark.value.NameKey;

/**
 * The keys that a row speaks of, from the first to the last, both included. Keys are compared as
 * text whatever the case and spacing, so numbers in a range need the same number of digits, as
 * postcodes have.
 *
 * @param first the first key
 * @param last the last key; the same as the first for all but ranges
 * @param plainFirst the first key as it is compared; kept, because tables are asked often
 * @param plainLast the last key as it is compared
 */
record KeyRange(String first, String last, String plainFirst, String plainLast) {

    static KeyRange of(String first, String last) {
        return new KeyRange(first, last, plain(first), plain(last));
    }

    static KeyRange single(String key) {
        return of(key, key);
    }

    /** Whether the range holds a key that was made {@link #plain}. */
    boolean contains(String plainKey) {
        return plainFirst.compareTo(plainKey) <= 0 && plainKey.compareTo(plainLast) <= 0;
    }

    boolean overlaps(KeyRange other) {
        return plainFirst.compareTo(other.plainLast) <= 0
                && other.plainFirst.compareTo(plainLast) <= 0;
    }

    boolean isBackwards() {
        return plainFirst.compareTo(plainLast) > 0;
    }

    /** A key as it is compared. */
    static String plain(String key) {
        return NameKey.of(key);
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
