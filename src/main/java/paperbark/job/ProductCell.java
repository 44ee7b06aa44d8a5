package paperbark.job;

import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import paperbark.firm.FirmTables;
import paperbark.firm.Maker;
import paperbark.firm.Product;
import paperbark.value.Parsed;

/** Maker and model in one cell, taken apart by the firm's makers and products. */
final class ProductCell {
    private ProductCell() {}

    static Parsed<CellParts> parse(String text, FirmTables tables) {
        Optional<Parsed<CellParts>> byMaker =
                tables.makers().stream()
                        .map(Maker::name)
                        .filter(name -> begins(text, name) || ends(text, name))
                        .max(Comparator.comparing(String::length))
                        .map(name -> parts(name, without(text, name)))
                        .or(() -> bracketed(text, tables));
        return byMaker.or(() -> byModel(text, tables))
                .orElseGet(
                        () ->
                                Parsed.bad(
                                        "No maker of the makers table and no model of the products table stands in the cell.",
                                        "Write the maker as the makers table has it, a space and the model, or add what is missing to the tables."));
    }

    /** Whether a cell is the name of a maker with something behind it. */
    static boolean isMakerThenModel(String text, FirmTables tables) {
        return tables.makers().stream()
                .map(Maker::name)
                .anyMatch(name -> begins(text, name) && !without(text, name).isEmpty());
    }

    private static Optional<Parsed<CellParts>> bracketed(String text, FirmTables tables) {
        return tables.makers().stream()
                .map(Maker::name)
                .filter(name -> ends(text, "(" + name + ")"))
                .findFirst()
                .map(name -> parts(name, without(text, "(" + name + ")")));
    }

    /** Known by the model alone: what stands before it is the maker, be it known or not. */
    private static Optional<Parsed<CellParts>> byModel(String text, FirmTables tables) {
        List<Product> fitting =
                tables.products().stream().filter(p -> ends(text, p.model())).toList();
        Optional<String> model =
                fitting.stream().map(Product::model).max(Comparator.comparing(String::length));
        if (model.isEmpty()) {
            return Optional.empty();
        }
        String before = without(text, model.get());
        if (!before.isEmpty()) {
            return Optional.of(parts(before, model.get()));
        }
        List<String> makers =
                fitting.stream()
                        .filter(p -> p.model().equals(model.get()))
                        .map(Product::maker)
                        .distinct()
                        .toList();
        return makers.size() != 1
                ? Optional.empty()
                : Optional.of(
                        parts(makers.get(0), model.get())
                                .map(p -> p.doubted("the cell names no maker")));
    }

    private static boolean begins(String text, String name) {
        return text.regionMatches(true, 0, name, 0, name.length())
                && (text.length() == name.length()
                        || !Character.isLetterOrDigit(text.charAt(name.length())));
    }

    private static boolean ends(String text, String name) {
        int start = text.length() - name.length();
        return start >= 0
                && text.toLowerCase(Locale.ROOT).endsWith(name.toLowerCase(Locale.ROOT))
                && (start == 0 || " ,;:/|(".indexOf(text.charAt(start - 1)) >= 0);
    }

    private static String without(String text, String name) {
        String rest =
                begins(text, name)
                        ? text.substring(name.length())
                        : text.substring(0, text.length() - name.length());
        return rest.replaceAll("^[\\s,;:/|-]+", "").replaceAll("[\\s,;:/|(-]+$", "");
    }

    private static Parsed<CellParts> parts(String maker, String model) {
        Map<Field, String> found = new LinkedHashMap<>();
        found.put(Field.MAKER, maker);
        found.put(Field.MODEL, model);
        return Parsed.ok(CellParts.sure(CellParts.texts(found)));
    }
}
