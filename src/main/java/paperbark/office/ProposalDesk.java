package paperbark.office;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import paperbark.batch.HeadingProposal;
import paperbark.firm.TableRows;
import paperbark.sheet.ColumnNames;

/** Puts a proposal for headings and words into the firm's tables. */
public final class ProposalDesk {
    private static final String COLUMNS = "columns";
    private static final String WORDS = "words";

    private ProposalDesk() {}

    /** Whether the firm has a table of columns that a proposal would take the place of. */
    public static boolean hasColumns(Path tables) {
        return TableDesk.table(tables, COLUMNS).filter(t -> !t.rows().isEmpty()).isPresent();
    }

    /**
     * Writes the proposal: its columns in the place of the firm's, its words behind the firm's.
     * Lines that say which sheets are meant or what holds for every row stay.
     *
     * @throws IOException when a file cannot be read or written
     */
    public static TableDesk.Result write(Path tables, HeadingProposal proposal) throws IOException {
        List<TableRows> changed = new ArrayList<>();
        changed.add(columns(TableDesk.table(tables, COLUMNS), proposal));
        if (!proposal.wordRows().isEmpty()) {
            changed.add(words(TableDesk.table(tables, WORDS), proposal));
        }
        return TableDesk.change(tables, changed);
    }

    private static TableRows columns(Optional<TableRows> before, HeadingProposal proposal) {
        TableRows columns = TableRows.empty(COLUMNS);
        Set<String> proposed =
                proposal.columnRows().stream().map(r -> r.get(0)).collect(Collectors.toSet());
        for (List<String> row : before.map(TableRows::rows).orElse(List.of())) {
            String field = before.get().said(row, "field");
            String always = before.get().said(row, "always");
            boolean ofList = field.equalsIgnoreCase("sheet") || !always.isEmpty();
            if (ofList && !proposed.contains(field)) {
                columns = columns.plus(row(field, before.get().said(row, "alias"), always));
            }
        }
        for (List<String> row : proposal.columnRows()) {
            columns = columns.plus(row(row.get(0), row.get(1), row.get(2)));
        }
        return columns;
    }

    private static Map<String, String> row(String field, String alias, String always) {
        return Map.of("field", field, "alias", alias, "always", always);
    }

    private static TableRows words(Optional<TableRows> before, HeadingProposal proposal) {
        TableRows words = before.orElse(TableRows.empty(WORDS));
        for (List<String> row : proposal.wordRows()) {
            TableRows now = words;
            boolean there =
                    now.rows().stream()
                            .anyMatch(
                                    r ->
                                            now.said(r, "field").equals(row.get(0))
                                                    && ColumnNames.normal(now.said(r, "word"))
                                                            .equals(
                                                                    ColumnNames.normal(
                                                                            row.get(1))));
            if (!there) {
                words =
                        words.plus(
                                Map.of(
                                        "field",
                                        row.get(0),
                                        "word",
                                        row.get(1),
                                        "ours",
                                        row.get(2)));
            }
        }
        return words;
    }
}
