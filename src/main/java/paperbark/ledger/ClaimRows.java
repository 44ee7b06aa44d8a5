package paperbark.ledger;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.LocalDate;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import paperbark.value.Money;
import paperbark.value.SchemeName;

/**
 * Turns the rows of {@link ClaimReader}'s question into claims. Columns go by their places, and the
 * days and batches that come again in row after row are made once: there may be 100,000.
 */
final class ClaimRows {
    private final Map<Long, Batch> batches;
    private final Map<String, LocalDate> days = new HashMap<>();

    /** The batch that a claim was made in. */
    record Batch(String name, LocalDate day) {}

    /**
     * Rows of claims.
     *
     * @param batches every batch that a row may name, by its entry
     */
    ClaimRows(Map<Long, Batch> batches) {
        this.batches = batches;
    }

    /** The claim of a row, whose columns are in the order of the question. */
    ClaimState state(ResultSet row) throws SQLException {
        Optional<Failed> failed =
                row.getLong(17) > row.getLong(18)
                        ? Optional.of(
                                new Failed(LocalDate.parse(row.getString(19)), row.getString(20)))
                        : Optional.empty();
        Batch batch = batches.get(row.getLong(13));
        return new ClaimState(
                row.getLong(1),
                row.getString(2),
                SchemeName.valueOf(row.getString(3)),
                row.getString(4),
                row.getInt(5),
                day(row.getString(6)).orElseThrow(),
                day(row.getString(7)),
                Money.ofCents(row.getLong(8)),
                Money.ofCents(row.getLong(9)),
                Money.ofCents(row.getLong(10)),
                day(row.getString(11)),
                row.getInt(12) == 1,
                batch.name(),
                batch.day(),
                row.getLong(14) > 0,
                failed,
                Money.ofCents(row.getLong(15)),
                day(row.getString(16)));
    }

    private Optional<LocalDate> day(String text) {
        return text == null || text.isEmpty()
                ? Optional.empty()
                : Optional.of(days.computeIfAbsent(text, LocalDate::parse));
    }
}
