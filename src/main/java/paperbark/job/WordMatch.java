package paperbark.job;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import paperbark.firm.ColumnGuide.Holds;
import paperbark.firm.FirmTables;
import paperbark.sheet.Cell;
import paperbark.sheet.Column;
import paperbark.sheet.Sheet;
import paperbark.value.Nearest;
import paperbark.value.State;

/**
 * A word of a list that nobody has taught, and the word of ours that it probably stands for.
 *
 * @param field the question it answers, as the words table names it
 * @param word as the list has it
 * @param ours our word for it; empty where nobody can tell
 * @param times in how many rows it stands
 */
public record WordMatch(String field, String word, Optional<String> ours, int times) {
    /** Beginnings of words by the answer that they mean; common practice, no source. */
    private static final Map<String, List<String>> STAGES = stages();

    private static Map<String, List<String>> stages() {
        Map<String, List<String>> all = new LinkedHashMap<>();
        all.put(Stage.CANCELLED.word(), List.of("cancel", "off", "lost", "fell", "dead", "void"));
        all.put(Stage.NO_CLAIM.word(), List.of("warrant", "no claim", "rework", "callback"));
        all.put(
                Stage.INSTALLED.word(),
                List.of("instal", "done", "compl", "finish", "fitted", "in", "closed", "paid"));
        all.put(
                Stage.BOOKED.word(),
                List.of("book", "plan", "sched", "to do", "todo", "pend", "wait", "open", "new"));
        return all;
    }

    /** The words of a column that are not understood, each once, in the order of their rows. */
    public static List<WordMatch> of(Sheet sheet, Column column, Field field, FirmTables tables) {
        FieldForm form = FieldForm.of(field, tables);
        boolean state = field.equals(Field.SITE_STATE) || field.equals(Field.POSTAL_STATE);
        if (form.holds() != Holds.CHOICE || state) {
            return List.of();
        }
        Map<String, Integer> times = new LinkedHashMap<>();
        sheet.rows().stream()
                .map(row -> row.cell(column))
                .filter(cell -> !cell.isBlank() && cell.kind() != Cell.Kind.UNUSABLE)
                .map(Cell::text)
                .filter(text -> !isKnown(field, text, tables))
                .forEach(text -> times.merge(text, 1, Integer::sum));
        List<WordMatch> words = new ArrayList<>();
        times.forEach(
                (word, rows) ->
                        words.add(
                                new WordMatch(
                                        key(form, field), word, ours(field, word, form), rows)));
        return words;
    }

    private static String key(FieldForm form, Field field) {
        boolean own = field.equals(Field.NEW_SYSTEM) || field.equals(Field.COMPLETE_SYSTEM);
        return form.choices().equals(List.of("yes", "no")) && !own ? "yes-no" : field.key();
    }

    /** Whether the words of the firm, or those that ship, have an answer for the text. */
    static boolean isKnown(Field field, String text, FirmTables tables) {
        if (field.equals(Field.SITE_STATE) || field.equals(Field.POSTAL_STATE)) {
            return State.parse(text).toOptional().isPresent();
        }
        FieldForm form = FieldForm.of(field, tables);
        return form.choices().equals(List.of("yes", "no"))
                ? tables.words().yesNo(field.key(), text).toOptional().isPresent()
                : tables.words()
                        .read(field.key(), text, form.choices().toArray(String[]::new), c -> c)
                        .toOptional()
                        .isPresent();
    }

    private static Optional<String> ours(Field field, String word, FieldForm form) {
        String plain = word.toLowerCase(Locale.ROOT).strip();
        if (field.equals(Field.STAGE)) {
            return STAGES.entrySet().stream()
                    .filter(e -> e.getValue().stream().anyMatch(plain::startsWith))
                    .map(Map.Entry::getKey)
                    .findFirst();
        }
        return Nearest.to(plain, form.choices());
    }
}
