package paperbark.output.pdf;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;

/** Colours of pages, as short as they can be said. */
final class Colours {
    /** What was shortened before: a program has a dozen colours. */
    static final Map<String, String> SHORT = new ConcurrentHashMap<>();

    // Finer than the 256 steps of a screen.
    private static final int DECIMALS = 3;

    private Colours() {}

    /**
     * The operator that sets the colour, with three decimals; red, green and blue alike are grey.
     */
    static String shortened(String words, String operator) {
        String[] parts = words.split("\\s+");
        StringBuilder said = new StringBuilder();
        boolean grey = operator.equals("rg");
        for (int i = 0; i < parts.length - 1; i++) {
            BigDecimal part = new BigDecimal(parts[i]).setScale(DECIMALS, RoundingMode.HALF_UP);
            String digits = part.signum() == 0 ? "0" : part.stripTrailingZeros().toPlainString();
            said.append(digits.startsWith("0.") ? digits.substring(1) : digits).append(' ');
            grey &= parts[i].equals(parts[0]);
        }
        return grey ? said.substring(0, said.indexOf(" ")) + " g\n" : said + operator + "\n";
    }
}
