package paperbark.job;

import java.util.List;
import java.util.Optional;
import paperbark.firm.FirmTables;
import paperbark.firm.Maker;
import paperbark.firm.Product;
import paperbark.value.Nearest;
import paperbark.value.Parsed;

/**
 * Finds the product that a supposition means.
 *
 * @param real the heater of the register
 * @param whatIf names a maker, a model or both
 * @param tables makers and products
 */
record SupposedProduct(Heater real, WhatIf whatIf, FirmTables tables) {

    /** The product; a model alone is the job's maker's or else the only maker's that has it. */
    Parsed<Product> find() {
        Optional<String> named = whatIf.maker();
        if (named.isPresent() && tables.maker(named.get()).isEmpty()) {
            List<String> makers = tables.makers().stream().map(Maker::name).toList();
            String fact = "The makers table has no \"%s\".".formatted(named.get());
            return Parsed.bad(fact, instead(named.get(), makers));
        }
        String model = whatIf.model().or(real::model).orElse("");
        Optional<String> maker = named.or(() -> real.maker().map(Maker::name));
        Optional<Product> own = maker.flatMap(m -> tables.product(m, model));
        List<Product> found = own.map(List::of).orElseGet(() -> ofAnyMaker(model));
        return found.size() == 1
                ? Parsed.ok(found.get(0))
                : Parsed.bad(fact(model, found), remedy(model, found));
    }

    private List<Product> ofAnyMaker(String model) {
        return whatIf.maker().isPresent()
                ? List.of()
                : tables.makers().stream()
                        .flatMap(maker -> tables.product(maker.name(), model).stream())
                        .toList();
    }

    private String fact(String model, List<Product> found) {
        return found.isEmpty()
                ? "The products table has no model \"%s\"%s."
                        .formatted(model, whatIf.maker().map(m -> " of " + m).orElse(""))
                : "Several makers have a model \"%s\".".formatted(model);
    }

    private String remedy(String model, List<Product> found) {
        if (!found.isEmpty()) {
            return "Suppose the maker too: "
                    + String.join(" or ", found.stream().map(Product::maker).toList())
                    + ".";
        }
        List<String> models =
                tables.products().stream()
                        .filter(p -> whatIf.maker().map(p.maker()::equalsIgnoreCase).orElse(true))
                        .map(Product::model)
                        .distinct()
                        .toList();
        return instead(model, models);
    }

    private static String instead(String wanted, List<String> names) {
        return Nearest.to(wanted, names)
                        .map(n -> "Did you mean \"" + n + "\"? There are ")
                        .orElse("There are ")
                + String.join(", ", names)
                + ".";
    }
}
