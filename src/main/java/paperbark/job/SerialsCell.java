package paperbark.job;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import paperbark.firm.Product;
import paperbark.value.Parsed;

/**
 * Serials in one cell. Words before them say what they belong to ({@code tank}, {@code collector},
 * {@code heat pump}); without words the first is the tank's, and the others are those of the
 * product's collectors or of its heat pump.
 */
final class SerialsCell {
    private static final String APART = "\\s*[,;+&|]\\s*|\\s+/\\s+|\\s+and\\s+";
    private static final Pattern NAMED =
            Pattern.compile(
                    "(?i)(?:(t|tank|cyl|cylinder)|(c|coll?|collectors?|panels?|tubes?)"
                            + "|(hp|heat pump|pump|unit|outdoor unit))"
                            + "(?:[\\s.]*(?:s/n|sn|serial|no))?(?:\\s*[:.=#]\\s*|\\s+)(.*[0-9].*)");

    private final Map<Field, List<String>> found = new LinkedHashMap<>();

    private SerialsCell() {}

    /**
     * Takes the serials apart.
     *
     * @param product the model of the row, where the products table knows it
     */
    static Parsed<CellParts> parse(String text, Optional<Product> product) {
        List<String> serials = new ArrayList<>(List.of(text.split(APART)));
        boolean slash = serials.size() == 1 && eachASerial(text.split("/"));
        if (slash) {
            serials = List.of(text.split("/"));
        } else if (serials.size() == 1 && eachASerial(text.split(" "))) {
            serials = List.of(text.split(" "));
        }
        if (serials.stream().anyMatch(s -> !s.matches(".*[0-9].*"))) {
            return Parsed.bad(
                    "Between the separators stands something that is no serial.",
                    "Write the serials with a comma between them, the tank's first.");
        }
        CellParts parts = new SerialsCell().given(serials, product);
        return Parsed.ok(slash ? parts.doubted("the stroke may belong to one serial") : parts);
    }

    private static boolean eachASerial(String[] words) {
        return words.length > 1
                && Arrays.stream(words).allMatch(w -> w.length() >= 5 && w.matches(".*[0-9].*"));
    }

    private CellParts given(List<String> serials, Optional<Product> product) {
        boolean guessed = false;
        for (String serial : serials) {
            Matcher named = NAMED.matcher(serial);
            if (named.matches()) {
                put(
                        named.group(1) != null
                                ? Field.TANK_SERIAL
                                : named.group(2) != null
                                        ? Field.COLLECTOR_SERIALS
                                        : Field.HEAT_PUMP_SERIAL,
                        named.group(4));
            } else if (found.isEmpty()) {
                put(Field.TANK_SERIAL, serial);
            } else {
                guessed |= product.isEmpty();
                put(
                        product.map(Product::isSolar).orElse(true)
                                ? Field.COLLECTOR_SERIALS
                                : Field.HEAT_PUMP_SERIAL,
                        serial);
            }
        }
        Map<Field, String> texts = new LinkedHashMap<>();
        found.forEach((field, all) -> texts.put(field, String.join(", ", all)));
        CellParts parts = CellParts.sure(CellParts.texts(texts));
        boolean two =
                found.entrySet().stream()
                        .anyMatch(
                                e ->
                                        e.getKey() != Field.COLLECTOR_SERIALS
                                                && e.getValue().size() > 1);
        if (two) {
            parts = parts.doubted("two serials are for one part");
        }
        return guessed ? parts.doubted("the model does not say what the second is of") : parts;
    }

    private void put(Field field, String serial) {
        found.computeIfAbsent(field, f -> new ArrayList<>()).add(serial.strip());
    }
}
