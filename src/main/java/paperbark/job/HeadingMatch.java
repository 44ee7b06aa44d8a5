package paperbark.job;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import paperbark.firm.FirmTables;
import paperbark.sheet.Column;
import paperbark.sheet.ColumnNames;
import paperbark.sheet.Sheet;

/**
 * What a column of a list that nobody has explained is probably about, by its heading and by what
 * stands below it. A proposal for a person to look at, never taken without one.
 *
 * @param column the column
 * @param field what it is probably about; empty where nothing speaks for anything
 * @param sure how sure that is
 * @param because what speaks for it, in words; where nothing does, what stands below and what that
 *     may be
 */
public record HeadingMatch(Column column, Optional<Field> field, Sure sure, String because) {
    // Scores are our own weighing of the evidence: a heading that is known outright is 90 points,
    // values that can hardly be anything else 40 to 50; common practice, no source.
    private static final int SURE_FROM = 85;
    private static final int LIKELY_FROM = 55;
    private static final int LOOK_FROM = 38;

    /** How sure a proposal is. */
    public enum Sure {
        /** The heading is a usual one, or heading and values agree. */
        SURE("sure"),
        /** Something speaks for it and nothing against it. */
        LIKELY("likely"),
        /** It may be; somebody has to look. */
        LOOK("look"),
        /** Nothing speaks for anything. */
        NONE("-");

        private final String word;

        Sure(String word) {
            this.word = word;
        }

        /** The word shown to people. */
        public String word() {
            return word;
        }

        private static Sure of(int points) {
            if (points >= SURE_FROM) {
                return SURE;
            }
            return points >= LIKELY_FROM ? LIKELY : LOOK;
        }
    }

    /** What speaks for a column being about a field. */
    private record Guess(Column column, Field field, int points, String because, boolean every) {

        /** Whether every cell holds several facts, and none of them has a column of its own. */
        boolean isWhole(List<Guess> all) {
            return !field.parts().isEmpty()
                    && every
                    && all.stream()
                            .filter(g -> !g.column.equals(column) && g.points >= LIKELY_FROM)
                            .noneMatch(g -> field.parts().contains(g.field));
        }

        Guess likely() {
            return new Guess(column, field, Math.max(points, LIKELY_FROM), because, every);
        }
    }

    /**
     * The proposal for every column of a sheet, in their order. No field is proposed twice, nor a
     * field beside one of which it is a part.
     *
     * @param usual the headings that are usual for each field
     * @param tables the firm's, whose names are recognised
     */
    public static List<HeadingMatch> of(Sheet sheet, ColumnNames<Field> usual, FirmTables tables) {
        List<Guess> guesses = new ArrayList<>();
        for (Column column : sheet.columns()) {
            HeadingWords heading = new HeadingWords(column.heading(), usual);
            ColumnValues values = ColumnValues.of(sheet, column, tables);
            for (Field field : Field.values()) {
                guess(column, field, heading, values).ifPresent(guesses::add);
            }
        }
        preferWholes(guesses);
        guesses.sort(
                Comparator.comparingInt((Guess g) -> -g.points)
                        .thenComparing(g -> g.column.index())
                        .thenComparing(Guess::field));
        List<Guess> taken = new ArrayList<>();
        Set<Field> gone = new HashSet<>();
        for (Guess guess : guesses) {
            boolean free = taken.stream().noneMatch(t -> t.column.equals(guess.column));
            if (free && !gone.contains(guess.field)) {
                taken.add(guess);
                gone.add(guess.field);
                gone.addAll(guess.field.parts());
                Field.values().stream()
                        .filter(whole -> whole.parts().contains(guess.field))
                        .forEach(gone::add);
            }
        }
        List<Field> open =
                Field.values().stream()
                        .filter(f -> f.parts().isEmpty() && !gone.contains(f))
                        .toList();
        return sheet.columns().stream()
                .map(c -> match(c, taken, ColumnValues.of(sheet, c, tables), open))
                .toList();
    }

    /** Cells that all hold several facts are not proposed as one of these alone. */
    private static void preferWholes(List<Guess> guesses) {
        List<Guess> all = List.copyOf(guesses);
        for (Guess whole : all) {
            if (whole.isWhole(all)) {
                guesses.removeIf(
                        g ->
                                g.column.equals(whole.column)
                                        && whole.field.parts().contains(g.field));
                guesses.replaceAll(g -> g.equals(whole) ? g.likely() : g);
            }
        }
    }

    private static HeadingMatch match(
            Column column, List<Guess> taken, ColumnValues values, List<Field> open) {
        return taken.stream()
                .filter(g -> g.column.equals(column))
                .findFirst()
                .map(
                        g ->
                                new HeadingMatch(
                                        column, Optional.of(g.field), Sure.of(g.points), g.because))
                .orElseGet(
                        () ->
                                new HeadingMatch(
                                        column, Optional.empty(), Sure.NONE, values.hint(open)));
    }

    private static Optional<Guess> guess(
            Column column, Field field, HeadingWords heading, ColumnValues values) {
        HeadingWords.Evidence name = heading.speaksFor(field);
        ColumnValues.Evidence below = values.speaksFor(field);
        boolean ofOthers =
                !field.parts().isEmpty()
                        && (heading.isOfOthers(field) || heading.isNameOfAnother(field));
        boolean tooVague = name.points() == 0 && (!below.alone() || ofOthers);
        int points = name.points() + below.points();
        if (tooVague || points < LOOK_FROM) {
            return Optional.empty();
        }
        List<String> reasons = new ArrayList<>();
        if (!name.because().isEmpty()) {
            reasons.add(name.because());
        }
        if (!below.because().isEmpty()) {
            reasons.add(below.because());
        }
        return Optional.of(
                new Guess(column, field, points, String.join("; ", reasons), below.every()));
    }
}
