package paperbark.value;

import java.text.ParsePosition;
import java.time.LocalDate;
import java.time.Month;
import java.time.format.DateTimeFormatter;
import java.time.format.DateTimeFormatterBuilder;
import java.time.format.DateTimeParseException;
import java.time.format.ResolverStyle;
import java.time.format.TextStyle;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.regex.Pattern;

/** Days as they are written: read strictly (31/02 does not exist), shown one way everywhere. */
public final class Days {
    private static final DateTimeFormatter SHOWN =
            DateTimeFormatter.ofPattern("d MMM uuuu", Locale.ENGLISH);
    private static final List<String> MONTHS =
            Arrays.stream(Month.values())
                    .map(m -> " " + m.getDisplayName(TextStyle.SHORT, Locale.ENGLISH) + " ")
                    .toList();
    private static final List<DateTimeFormatter> READ =
            List.of(
                    strict("uuuu-MM-dd"),
                    strict("d/M/uuuu"),
                    strict("d-M-uuuu"),
                    strict("d.M.uuuu"),
                    strict("d MMM uuuu"),
                    strict("d MMMM uuuu"),
                    strict("d-MMM-uuuu"));

    private static final Pattern WEEKDAY =
            Pattern.compile("^(?i)(mon|tue|wed|thu|fri|sat|sun)[a-z]*\\.?,? ");
    private static final Pattern SHORT_YEAR =
            Pattern.compile("^(.*[0-9]{1,2}[-/. ][0-9A-Za-z]+[-/. ])([0-9]{2})$");

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
        boolean plain = day.getYear() >= 1000 && day.getYear() <= 9999;
        // The same as the formatter says, which takes longer than most of what it is asked for.
        return plain
                ? day.getDayOfMonth() + MONTHS.get(day.getMonthValue() - 1) + day.getYear()
                : SHOWN.format(day);
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

    /** Likewise, where a year of two digits is known to be one of this century. */
    public static Parsed<LocalDate> parseOfThisCentury(String text) {
        return parse(SHORT_YEAR.matcher(text.strip()).replaceFirst("$120$2"));
    }

    /** A failed parse costs far more than a look. */
    private static boolean hasForm(String text, DateTimeFormatter format) {
        ParsePosition at = new ParsePosition(0);
        return format.parseUnresolved(text, at) != null && at.getIndex() == text.length();
    }

    /**
     * Reads day, month, four-digit year in the Australian order, or an ISO date. Two-digit years
     * are refused.
     */
    public static Parsed<LocalDate> parse(String text) {
        String plain = WEEKDAY.matcher(text.strip()).replaceFirst("");
        for (DateTimeFormatter format : READ) {
            try {
                if (hasForm(plain, format)) {
                    return Parsed.ok(LocalDate.parse(plain, format));
                }
            } catch (DateTimeParseException e) {
                // A day that does not exist has the form of one; the next form is tried.
            }
        }
        return Parsed.bad(
                plain.matches("[0-9]{1,2}[-/. ].+[-/. ][0-9]{2}")
                        ? "The year has two digits, so the century is not certain."
                        : "The text is not a day of the calendar.",
                "Type the date as day/month/year with four digits for the year.");
    }
}
