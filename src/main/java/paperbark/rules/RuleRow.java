package paperbark.rules;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import paperbark.finding.RuleRef;
import paperbark.value.DateRange;

/**
 * A row of a rule table before it is typed.
 *
 * @param ref where it stands and where it comes from
 * @param inForce first and last day
 * @param key what it speaks of
 * @param cells key and value cells by heading
 * @param values headings of the value cells
 * @param confirmedOn day on which somebody last compared it with its source
 * @param note remark; says why where the values are empty
 */
record RuleRow(
        RuleRef ref,
        DateRange inForce,
        KeyRange key,
        Map<String, String> cells,
        List<String> values,
        Optional<LocalDate> confirmedOn,
        String note) {

    /** A cell that cannot be read as what it should be. */
    static final class WrongCell extends RuntimeException {
        private static final long serialVersionUID = 1L;

        WrongCell(String what) {
            super(what);
        }
    }

    /** Whether the row says that the value is not known. */
    boolean isGap() {
        return values.stream().allMatch(v -> text(v).isEmpty());
    }

    String text(String heading) {
        return cells.get(heading);
    }

    /** A whole number, not negative; empty where the cell is blank. */
    Optional<Integer> wholeOrBlank(String heading) {
        return text(heading).isEmpty() ? Optional.empty() : Optional.of(whole(heading));
    }

    /** A whole number, not negative. */
    int whole(String heading) {
        if (!text(heading).matches("[0-9]{1,6}")) {
            throw new WrongCell(heading + " \"" + text(heading) + "\" is not a whole number");
        }
        return Integer.parseInt(text(heading));
    }

    /** A decimal number, not negative; empty where the cell is blank. */
    Optional<BigDecimal> decimalOrBlank(String heading) {
        return text(heading).isEmpty() ? Optional.empty() : Optional.of(decimal(heading));
    }

    /** A decimal number, not negative. */
    BigDecimal decimal(String heading) {
        if (!text(heading).matches("[0-9]{1,9}(\\.[0-9]{1,9})?")) {
            throw new WrongCell(heading + " \"" + text(heading) + "\" is not a decimal number");
        }
        return new BigDecimal(text(heading));
    }

    /** One of the words. */
    String word(String heading, List<String> words) {
        if (!words.contains(text(heading))) {
            throw new WrongCell(
                    heading + " \"" + text(heading) + "\" is none of " + String.join(", ", words));
        }
        return text(heading);
    }
}
