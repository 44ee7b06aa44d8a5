package paperbark.sheet;

import static paperbark.finding.FindingCode.CELL_TOO_LONG;

import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** Makes cells of stored text, in workbooks and CSV files alike. */
final class TextCell {
    /** Of a text that is too long, enough to know it by. */
    private static final int SHOWN = 60;

    private TextCell() {}

    static Cell of(int column, String address, String raw) {
        if (raw.length() > Limits.CELL_CHARACTERS) {
            return tooLong(column, address, raw);
        }
        CleanText clean = CleanText.of(raw);
        return new Cell(
                column,
                address,
                clean.text().isEmpty() ? Cell.Kind.BLANK : Cell.Kind.TEXT,
                clean.text(),
                Optional.empty(),
                Optional.empty(),
                clean.text().isEmpty() ? List.of() : clean.troubles());
    }

    private static Cell tooLong(int column, String address, String raw) {
        CellTrouble trouble =
                new CellTrouble(
                        CELL_TOO_LONG,
                        String.format(
                                Locale.ROOT,
                                "The cell holds %,d characters; the limit is 32,767.",
                                raw.length()),
                        "Shorten the text.");
        return new Cell(
                column,
                address,
                Cell.Kind.UNUSABLE,
                CleanText.of(raw.substring(0, SHOWN)).text(),
                Optional.empty(),
                Optional.empty(),
                List.of(trouble));
    }
}
