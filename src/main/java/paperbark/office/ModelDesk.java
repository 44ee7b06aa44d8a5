package paperbark.office;

import java.io.IOException;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import paperbark.finding.Finding;
import paperbark.firm.ListedModels;
import paperbark.firm.ModelChanges;
import paperbark.firm.TableRows;
import paperbark.sheet.Reading;

/** Brings a published list of models into the firm's table of products. */
public final class ModelDesk {
    private static final String PRODUCTS = "products";

    private ModelDesk() {}

    /**
     * What a list would change.
     *
     * @param changes empty where list or tables cannot be read
     * @param findings on rows of the list that cannot be used, or why nothing can
     */
    public record Compared(Optional<ModelChanges> changes, List<Finding> findings) {
        /** Keeps the list from being changed. */
        public Compared {
            findings = List.copyOf(findings);
        }

        /** Whether nothing could be compared. */
        public boolean isRefused() {
            return changes.isEmpty();
        }

        /** What changes, for people: names by what became of them. */
        public Map<String, List<String>> lines() {
            Map<String, List<String>> lines = new LinkedHashMap<>();
            ModelChanges all = changes.orElseThrow();
            lines.put("New models", all.added());
            lines.put("Listed anew from a further day", all.periods());
            lines.put("Other figures", all.changed());
            lines.put("In the table, and not in the list", all.gone());
            lines.put("Left out, because kind, boost or litres are not told", all.incomplete());
            return lines;
        }
    }

    /**
     * Compares a list with the firm's table of products.
     *
     * @param version of the register that the list is of
     * @param day of the list, ISO form
     */
    public static Compared compare(
            Path list, Optional<String> sheet, Path tables, String version, String day) {
        Reading<ListedModels> read = ListedModels.read(list, sheet, tables);
        if (read.result().isEmpty()) {
            return new Compared(Optional.empty(), read.findings());
        }
        TableRows before = TableDesk.table(tables, PRODUCTS).orElse(TableRows.empty(PRODUCTS));
        ModelChanges.Source source =
                new ModelChanges.Source(list.getFileName().toString(), version, day);
        return new Compared(
                Optional.of(ModelChanges.of(before, read.result().get(), source)), read.findings());
    }

    /**
     * Writes the changes into the table.
     *
     * @throws IOException when a file cannot be read or written
     */
    public static TableDesk.Result write(Path tables, Compared compared) throws IOException {
        return TableDesk.change(tables, List.of(compared.changes().orElseThrow().products()));
    }
}
