package paperbark.value;

import java.util.Arrays;

/** How long money is overdue. */
public enum DebtAge {
    NOT_DUE("not due", Long.MIN_VALUE, 0),
    TO_30("1-30 days", 1, 30),
    TO_60("31-60 days", 31, 60),
    TO_90("61-90 days", 61, 90),
    OVER_90("over 90 days", 91, Long.MAX_VALUE);

    private final String words;
    private final long first;
    private final long last;

    DebtAge(String words, long first, long last) {
        this.words = words;
        this.first = first;
        this.last = last;
    }

    /** For people. */
    public String words() {
        return words;
    }

    /** The fewest days overdue. */
    public long first() {
        return first;
    }

    /** The most days overdue. */
    public long last() {
        return last;
    }

    /** The age of money that many days past its due day; 0 or fewer is not due. */
    public static DebtAge of(long daysOverdue) {
        return Arrays.stream(values()).filter(a -> daysOverdue <= a.last).findFirst().orElseThrow();
    }
}
