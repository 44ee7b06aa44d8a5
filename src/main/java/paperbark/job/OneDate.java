package paperbark.job;

import java.time.LocalDate;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import paperbark.firm.Words;
import paperbark.sheet.Column;
import paperbark.sheet.Row;
import paperbark.value.Days;

/**
 * One column of days for what is planned and what is done: the stage of each row says which it is.
 * A column of its own for the visit or the installation comes first where it is filled in.
 */
final class OneDate {
    private final Map<Field, Column> columns;
    private final Words words;
    private final LocalDate today;
    private final Map<Field, Map<Field, Column>> byMeaning = new HashMap<>();

    OneDate(Map<Field, Column> columns, Words words, LocalDate today) {
        this.columns = columns;
        this.words = words;
        this.today = today;
    }

    /** The columns by field, as this row means them. */
    Map<Field, Column> columns(Row row) {
        Column date = columns.get(Field.DATE);
        if (date == null) {
            return columns;
        }
        Field meaning = isDone(row, date) ? Field.INSTALLED_DATE : Field.VISIT_DATE;
        Column own = columns.get(meaning);
        return own != null && !row.cell(own).isBlank()
                ? columns
                : byMeaning.computeIfAbsent(meaning, field -> with(field, date));
    }

    private Map<Field, Column> with(Field field, Column date) {
        Map<Field, Column> meant = new HashMap<>(columns);
        meant.put(field, date);
        return Map.copyOf(meant);
    }

    private boolean isDone(Row row, Column date) {
        Optional<Stage> stage =
                Optional.ofNullable(columns.get(Field.STAGE))
                        .map(column -> row.cell(column).text())
                        .flatMap(
                                text ->
                                        words.read(
                                                        Field.STAGE.key(),
                                                        text,
                                                        Stage.values(),
                                                        Stage::word)
                                                .toOptional());
        // Work without a claim has no stage of its own for either.
        return stage.equals(Optional.of(Stage.INSTALLED))
                || (stage.equals(Optional.of(Stage.NO_CLAIM))
                        && Days.parse(row.cell(date).text())
                                .toOptional()
                                .filter(day -> day.isAfter(today))
                                .isEmpty());
    }
}
