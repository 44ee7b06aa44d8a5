package paperbark.entitlement;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Reads a written sum as people do: brackets first, then x and /, then + and -. */
public final class PrintedSum {
    private final List<String> tokens = new ArrayList<>();
    private final MathContext precision;
    private int next;

    private PrintedSum(String text, MathContext precision) {
        this.precision = precision;
        Matcher token = Pattern.compile("[0-9.]+|[()x/+-]").matcher(text);
        while (token.find()) {
            tokens.add(token.group());
        }
    }

    /**
     * The value of a written sum.
     *
     * @param precision of each division
     */
    public static BigDecimal value(String text, MathContext precision) {
        return new PrintedSum(text, precision).value();
    }

    private BigDecimal value() {
        BigDecimal value = product();
        while (next < tokens.size() && !tokens.get(next).equals(")")) {
            boolean plus = tokens.get(next++).equals("+");
            value = plus ? value.add(product()) : value.subtract(product());
        }
        return value;
    }

    private BigDecimal product() {
        BigDecimal value = factor();
        while (next < tokens.size() && "x/".contains(tokens.get(next))) {
            boolean times = tokens.get(next++).equals("x");
            BigDecimal by = factor();
            value = times ? value.multiply(by) : value.divide(by, precision);
        }
        return value;
    }

    private BigDecimal factor() {
        String token = tokens.get(next++);
        if (!token.equals("(")) {
            return new BigDecimal(token);
        }
        BigDecimal value = value();
        next++;
        return value;
    }
}
