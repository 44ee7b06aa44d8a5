package paperbark.firm;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import paperbark.sheet.ColumnNames;
import paperbark.sheet.Sheet;
import paperbark.sheet.SheetReader;

/** The table of words: a row a word of the firm's and the word of ours that it stands for. */
final class WordsTable {
    static final TableShape SHAPE =
            new TableShape("words", List.of("field", "word", "ours"), List.of());

    private WordsTable() {}

    /** The words that ship, each row as it stands. */
    static Words shipped() {
        Words words = new Words();
        Sheet sheet = SheetReader.readCsv(file(), bytes(), SHAPE::knows).result().orElseThrow();
        OpenTable.open(SHAPE, sheet, new ArrayList<>())
                .orElseThrow()
                .rows()
                .forEach(
                        row ->
                                words.teach(
                                        row.text("field").orElseThrow(),
                                        row.text("word").orElseThrow(),
                                        row.text("ours").orElseThrow()));
        return words;
    }

    /** The words that ship and the firm's, which count where both know a word. */
    static Words read(OpenTable table) {
        Words words = new Words(Words.SHIPPED);
        Map<String, TableRow> taken = new HashMap<>();
        table.rows().forEach(row -> read(row, words, taken));
        return words;
    }

    private static void read(TableRow row, Words words, Map<String, TableRow> taken) {
        Optional<String> field =
                row.neededText("field")
                        .map(f -> f.toLowerCase(Locale.ROOT))
                        .filter(f -> isField(f, row));
        Optional<String> word = row.neededText("word");
        Optional<String> ours = field.flatMap(f -> answer(f, row));
        if (!row.isSound()) {
            return;
        }
        TableRow earlier =
                taken.putIfAbsent(
                        field.orElseThrow() + "|" + ColumnNames.normal(word.orElseThrow()), row);
        if (earlier == null) {
            words.teach(field.get(), word.get(), ours.orElseThrow());
        } else {
            row.wrongRow(
                    "Row " + earlier.number() + " says already what the word means.",
                    "Keep one row a word and remove the other.",
                    List.of(earlier.place()));
        }
    }

    private static boolean isField(String field, TableRow row) {
        if (!Words.SHIPPED.fields().contains(field)) {
            row.wrong(
                    "field",
                    "No field with words has this name.",
                    "Name one of: " + String.join(", ", Words.SHIPPED.fields()) + ".");
        }
        return row.isSound();
    }

    private static Optional<String> answer(String field, TableRow row) {
        List<String> answers = Words.SHIPPED.answers(field).stream().sorted().toList();
        return row.needed("ours", CellText.oneOf(answers.toArray(String[]::new), a -> a));
    }

    private static String file() {
        return SHAPE.name() + ".csv";
    }

    private static byte[] bytes() {
        try (InputStream in = WordsTable.class.getResourceAsStream("/" + file())) {
            return in.readAllBytes();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
