package paperbark.firm;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;

/**
 * What a published list of models changes in the firm's table of products.
 *
 * @param products the table with the changes in it
 * @param added models that the table lacked
 * @param periods models that are listed with other figures from a further day on
 * @param changed figures that differ, a sentence each
 * @param gone models with a register's version in the table that the list has no more
 * @param incomplete models left out because neither list nor table say kind, boost and litres
 */
public record ModelChanges(
        TableRows products,
        List<String> added,
        List<String> periods,
        List<String> changed,
        List<String> gone,
        List<String> incomplete) {
    private static final List<String> OF_MODEL =
            List.of("kind", "boost", "litres", "tubes_or_panels", "serial_pattern");
    private static final List<String> NEEDED = List.of("kind", "boost", "litres");

    /** Where the figures come from. */
    public record Source(String file, String version, String day) {
        private String note() {
            return "listed: " + file + ", version " + version + ", " + day;
        }
    }

    /**
     * Compares a list with the table.
     *
     * @param before the firm's table of products
     * @param source of the list, which each row that it touches names
     */
    public static ModelChanges of(TableRows before, ListedModels list, Source source) {
        return new Work(withColumns(before), source).done(list);
    }

    /** Older tables have no columns for these. */
    private static TableRows withColumns(TableRows before) {
        List<String> headings = new ArrayList<>(before.headings());
        List<String> lacking =
                Stream.of("stcs_basis", "note").filter(h -> before.column(h) < 0).toList();
        headings.addAll(lacking);
        return new TableRows(
                before.name(),
                headings,
                before.rows().stream()
                        .map(
                                row ->
                                        Stream.concat(row.stream(), lacking.stream().map(h -> ""))
                                                .toList())
                        .toList());
    }

    /** The comparison, row by row. */
    private static final class Work {
        private final TableRows table;
        private final Source source;
        private final List<List<String>> rows;
        private final List<String> added = new ArrayList<>();
        private final List<String> periods = new ArrayList<>();
        private final List<String> changed = new ArrayList<>();
        private final List<String> incomplete = new ArrayList<>();
        private final Set<String> listed = new HashSet<>();

        Work(TableRows table, Source source) {
            this.table = table;
            this.source = source;
            this.rows = new ArrayList<>(table.rows());
        }

        ModelChanges done(ListedModels list) {
            for (Map<ListedField, String> model : list.models()) {
                listed.add(key(model.get(ListedField.MAKER), model.get(ListedField.MODEL)));
                take(model);
            }
            List<String> gone =
                    table.rows().stream()
                            .filter(row -> !table.said(row, "register_version").isEmpty())
                            .filter(row -> !listed.contains(key(row)))
                            .map(this::name)
                            .distinct()
                            .toList();
            return new ModelChanges(table.with(rows), added, periods, changed, gone, incomplete);
        }

        private void take(Map<ListedField, String> model) {
            String key = key(model.get(ListedField.MAKER), model.get(ListedField.MODEL));
            String from = model.get(ListedField.ELIGIBLE_FROM);
            Optional<List<String>> same =
                    rows.stream()
                            .filter(r -> key(r).equals(key))
                            .filter(r -> table.said(r, "eligible_from").equals(from))
                            .findFirst();
            if (same.isPresent()) {
                update(same.get(), model);
            } else {
                add(key, model);
            }
        }

        private void update(List<String> row, Map<ListedField, String> model) {
            List<String> now = new ArrayList<>(row);
            List<String> differences = new ArrayList<>();
            for (ListedField figure : ListedField.figures()) {
                int column = table.column(figure.column());
                String listedText = model.getOrDefault(figure, "");
                boolean tells = model.containsKey(figure) || figure == ListedField.ELIGIBLE_TO;
                if (tells && column >= 0 && !row.get(column).equals(listedText)) {
                    differences.add(
                            figure.label()
                                    + " "
                                    + shown(row.get(column))
                                    + " -> "
                                    + shown(listedText));
                    now.set(column, listedText);
                }
            }
            set(now, "register_version", source.version());
            set(now, "note", source.note());
            rows.set(rows.indexOf(row), now);
            if (!differences.isEmpty()) {
                changed.add(name(row) + ": " + String.join(", ", differences));
            }
        }

        private void add(String key, Map<ListedField, String> model) {
            Optional<List<String>> sibling =
                    rows.stream().filter(r -> key(r).equals(key)).findFirst();
            Map<String, String> texts = new HashMap<>();
            sibling.ifPresent(
                    row -> {
                        for (String heading : table.headings()) {
                            if (OF_MODEL.contains(heading)
                                    || heading.startsWith("warranty_")
                                    || heading.startsWith("veec_")) {
                                texts.put(heading, table.said(row, heading));
                            }
                        }
                    });
            model.forEach((field, text) -> texts.put(field.column(), text));
            // The register of products means figures over ten years unless the list says otherwise.
            texts.putIfAbsent("stcs_basis", Listing.Basis.TEN_YEARS.word());
            texts.put("register_version", source.version());
            texts.put("note", source.note());
            String name = model.get(ListedField.MAKER) + " " + model.get(ListedField.MODEL);
            if (NEEDED.stream().anyMatch(h -> texts.getOrDefault(h, "").isEmpty())) {
                incomplete.add(name);
                return;
            }
            TableRows longer = table.with(List.of()).plus(texts);
            rows.add(longer.rows().get(0));
            (sibling.isPresent() ? periods : added)
                    .add(name + " from " + model.get(ListedField.ELIGIBLE_FROM));
        }

        private void set(List<String> row, String heading, String text) {
            if (table.column(heading) >= 0) {
                row.set(table.column(heading), text);
            }
        }

        private String name(List<String> row) {
            return table.said(row, "maker") + " " + table.said(row, "model");
        }

        private String key(List<String> row) {
            return key(table.said(row, "maker"), table.said(row, "model"));
        }

        private static String key(String maker, String model) {
            return TakenNames.key(TakenNames.model(maker, model));
        }

        private static String shown(String text) {
            return text.isEmpty() ? "(empty)" : text;
        }
    }
}
