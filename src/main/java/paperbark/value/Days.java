package paperbark.value;

import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.time.format.DateTimeFormatterBuilder;
import java.time.format.DateTimeParseException;
import java.time.format.ResolverStyle;
import java.util.List;
import java.util.Locale;

/** Days as they are written: read strictly (31/02 does not exist), shown one way everywhere. */
public final class Days {
    private static final DateTimeFormatter SHOWN =
            DateTimeFormatter.ofPattern("d MMM uuuu", Locale.ENGLISH);
    private static final List<DateTimeFormatter> READ =
            List.of(
                    strict("uuuu-MM-dd"),
                    strict("d/M/uuuu"),
                    strict("d-M-uuuu"),
                    strict("d.M.uuuu"),
                    strict("d MMM uuuu"),
                    strict("d MMMM uuuu"),
                    strict("d-MMM-uuuu"));

    private Days() {}

    private static DateTimeFormatter strict(String pattern) {
        return new DateTimeFormatterBuilder()
                .parseCaseInsensitive()
                .appendPattern(pattern)
                .toFormatter(Locale.ENGLISH)
                .withResolverStyle(ResolverStyle.STRICT);
    }

    /** As printed: {@code 3 Nov 2026}. */
    public static String show(LocalDate day) {
        return SHOWN.format(day);
    }

    /** The quarter of a day as printed: {@code Oct to Dec 2026}. */
    public static String quarter(LocalDate day) {
        LocalDate first = firstOfQuarter(day);
        String from = show(first).split(" ")[1];
        String last = show(first.plusMonths(2));
        return from + " to " + last.substring(last.indexOf(' ') + 1);
    }

    /** The first day of a day's quarter. */
    public static LocalDate firstOfQuarter(LocalDate day) {
        return LocalDate.of(day.getYear(), (day.getMonthValue() - 1) / 3 * 3 + 1, 1);
    }

    /**
     * Reads day, month, four-digit year in the Australian order, or an ISO date. Two-digit years
     * are refused.
     */
    public static Parsed<LocalDate> parse(String text) {
        String plain = text.strip().replaceFirst("^(?i)(mon|tue|wed|thu|fri|sat|sun)[a-z]*,? ", "");
        for (DateTimeFormatter format : READ) {
            try {
                return Parsed.ok(LocalDate.parse(plain, format));
            } catch (DateTimeParseException e) {
                // The next form is tried.
            }
        }
        return Parsed.bad(
                plain.matches("[0-9]{1,2}[-/. ].+[-/. ][0-9]{2}")
                        ? "The year has two digits, so the century is not certain."
                        : "The text is not a day of the calendar.",
                "Type the date as day/month/year with four digits for the year.");
    }
}
