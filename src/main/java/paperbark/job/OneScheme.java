package paperbark.job;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import paperbark.finding.FindingCode;
import paperbark.firm.Words;
import paperbark.sheet.Column;
import paperbark.sheet.Row;
import paperbark.value.SchemeName;

/**
 * Columns for the certificates of one scheme, which a column of its own names row by row: buyer,
 * number and benefit then belong to that scheme.
 */
final class OneScheme {
    /** The columns that speak of the scheme of their row. */
    static final List<Field> COLUMNS =
            List.of(
                    Field.SCHEME,
                    Field.CERTIFICATE_BUYER,
                    Field.CERTIFICATE_COUNT,
                    Field.CERTIFICATE_BENEFIT);

    private static final Map<Field, ClaimFact> FACTS =
            Map.of(
                    Field.CERTIFICATE_BUYER, ClaimFact.BUYER,
                    Field.CERTIFICATE_COUNT, ClaimFact.COUNT,
                    Field.CERTIFICATE_BENEFIT, ClaimFact.BENEFIT);

    private final Words words;

    OneScheme(Words words) {
        this.words = words;
    }

    /** The columns by field, as this row means them. */
    Map<Field, Column> columns(Row row, Map<Field, Column> columns) {
        Optional<SchemeName> scheme =
                Optional.ofNullable(columns.get(Field.SCHEME))
                        .map(column -> row.cell(column).text())
                        .flatMap(
                                text ->
                                        words.read(
                                                        Field.SCHEME.key(),
                                                        text,
                                                        SchemeName.values(),
                                                        SchemeName::word)
                                                .toOptional());
        if (scheme.isEmpty()) {
            return columns;
        }
        Map<Field, Column> meant = new HashMap<>(columns);
        FACTS.forEach(
                (field, fact) -> {
                    if (columns.containsKey(field)) {
                        meant.put(Field.of(scheme.get(), fact), columns.get(field));
                    }
                });
        return Map.copyOf(meant);
    }

    /**
     * Refuses the empty cell of a row that tells how many certificates or for how much, and not of
     * which scheme: they are not to be dropped unseen.
     */
    static void refuseUntold(RowFacts facts) {
        boolean told = facts.says(Field.CERTIFICATE_COUNT) || facts.says(Field.CERTIFICATE_BENEFIT);
        if (facts.origin().columns().containsKey(Field.SCHEME)
                && told
                && !facts.says(Field.SCHEME)) {
            facts.refuse(
                    Field.SCHEME,
                    FindingCode.CHOICE_UNKNOWN,
                    "The row tells of certificates and does not say of which scheme.",
                    "Type the scheme, or clear number and benefit if nothing is claimed.");
        }
    }
}
