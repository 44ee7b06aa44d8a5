package paperbark.sheet;

import java.time.YearMonth;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Which sheets of a workbook are meant where nobody names one, as the firm's table of columns says:
 * those named like one of some patterns, in which {@code *} stands for anything, or those of the
 * newest month.
 *
 * @param patterns the patterns; the words {@code newest month} are one too; none leaves the choice
 *     to the headings
 */
public record SheetRule(List<String> patterns) {
    /** A firm without a rule. */
    public static final SheetRule NONE = new SheetRule(List.of());

    private static final String NEWEST = "newest month";
    private static final List<String> MONTHS =
            List.of(
                    "jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov",
                    "dec");
    private static final Pattern NAMED =
            Pattern.compile(
                    "(?i)(?<![a-z])(jan|feb|mar|apr|may|jun|jul|aug|sep|oct|nov|dec)[a-z]*[ ._'/-]*(20[0-9]{2}|[0-9]{2})(?![0-9])");
    private static final Pattern YEAR_FIRST =
            Pattern.compile("(?<![0-9])(20[0-9]{2})[ ._/-]?(0[1-9]|1[0-2])(?![0-9])");
    private static final Pattern MONTH_FIRST =
            Pattern.compile("(?<![0-9])(0?[1-9]|1[0-2])[ ._/-](20[0-9]{2})(?![0-9])");

    /** Keeps the patterns from being changed. */
    public SheetRule {
        patterns = List.copyOf(patterns);
    }

    /** The sheets of the newest month alone. */
    public static final SheetRule NEWEST_MONTH = new SheetRule(List.of("newest month"));

    /** Whether nothing is said of sheets. */
    public boolean isNone() {
        return patterns.isEmpty();
    }

    /** The names that are meant, in the order given. */
    List<String> chosen(List<String> names) {
        List<String> chosen = new ArrayList<>();
        Optional<YearMonth> newest =
                names.stream().flatMap(name -> month(name).stream()).max(Comparator.naturalOrder());
        for (String name : names) {
            boolean meant =
                    patterns.stream()
                            .anyMatch(
                                    pattern ->
                                            pattern.equalsIgnoreCase(NEWEST)
                                                    ? newest.isPresent()
                                                            && month(name).equals(newest)
                                                    : isLike(name, pattern));
            if (meant) {
                chosen.add(name);
            }
        }
        return chosen;
    }

    /** The month that a sheet is named after, such as {@code Nov 2026} or {@code 2026-11}. */
    static Optional<YearMonth> month(String name) {
        Matcher named = NAMED.matcher(name);
        if (named.find()) {
            int month = 1 + MONTHS.indexOf(named.group(1).toLowerCase(Locale.ROOT));
            int year = Integer.parseInt(named.group(2));
            return Optional.of(YearMonth.of(year < 100 ? 2000 + year : year, month));
        }
        Matcher yearFirst = YEAR_FIRST.matcher(name);
        if (yearFirst.find()) {
            return Optional.of(month(yearFirst.group(1), yearFirst.group(2)));
        }
        Matcher monthFirst = MONTH_FIRST.matcher(name);
        return monthFirst.find()
                ? Optional.of(month(monthFirst.group(2), monthFirst.group(1)))
                : Optional.empty();
    }

    private static YearMonth month(String year, String month) {
        return YearMonth.of(Integer.parseInt(year), Integer.parseInt(month));
    }

    private static boolean isLike(String name, String pattern) {
        StringBuilder expression = new StringBuilder("(?iu)");
        for (String part : pattern.strip().split("(?<=\\*)|(?=\\*)")) {
            expression.append(part.equals("*") ? ".*" : Pattern.quote(part));
        }
        return name.strip().matches(expression.toString());
    }
}
