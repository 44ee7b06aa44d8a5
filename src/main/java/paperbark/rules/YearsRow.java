package paperbark.rules;

import java.util.List;

/**
 * For how many years an installation counts.
 *
 * @param years 10 at most; 0 after the scheme's end
 */
public record YearsRow(int years) {
    static final TableLayout<Unkeyed, YearsRow> LAYOUT =
            TableLayout.of(
                    "stc/years.csv",
                    List.of("years"),
                    row -> new YearsRow(row.whole("years")),
                    Unkeyed::text);
}
