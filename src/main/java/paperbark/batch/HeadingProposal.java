package paperbark.batch;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import paperbark.finding.Finding;
import paperbark.finding.FindingCode;
import paperbark.firm.ColumnGuide.Holds;
import paperbark.firm.FirmTables;
import paperbark.firm.FirmTablesReader;
import paperbark.job.ClaimFact;
import paperbark.job.Field;
import paperbark.job.FieldForm;
import paperbark.job.HeadingMatch;
import paperbark.job.HeadingMatch.Sure;
import paperbark.job.WordMatch;
import paperbark.output.table.SafeCsv;
import paperbark.sheet.ColumnNames;
import paperbark.sheet.HeadingTable;
import paperbark.sheet.ReadList;
import paperbark.sheet.Reading;
import paperbark.sheet.Sheet;
import paperbark.sheet.SheetReader;
import paperbark.sheet.SheetRule;
import paperbark.value.SchemeName;

/**
 * A proposal which column of a list is which, and what its words mean.
 *
 * @param matches every column of the list, in order
 * @param words the words of the list that are not understood
 * @param shortYears whether its days have years of two digits
 * @param claimsTold whether the firm's table says already that certificates are claimed, or not
 * @param byMonth whether several of its sheets are alike and named after months, of which the
 *     newest was looked at
 */
public record HeadingProposal(
        List<HeadingMatch> matches,
        List<WordMatch> words,
        boolean shortYears,
        boolean claimsTold,
        boolean byMonth) {
    /** The headings of the table of columns that a proposal makes. */
    public static final List<String> COLUMNS =
            List.of("field", "alias", "always", "how sure", "because");

    private static final List<String> NEWEST_MONTH =
            List.of(
                    "sheet",
                    SheetRule.NEWEST_MONTH.patterns().get(0),
                    "",
                    Sure.SURE.word(),
                    "sheets that are alike are named after months");
    private static final String CLAIMS =
            "which certificates are claimed (stc-claim or veec-claim, such as \"stc-claim,,yes\" for every job)";
    private static final Set<Sure> IN_FILE = Set.of(Sure.SURE, Sure.LIKELY, Sure.LOOK);

    private static final String SHORT_YEARS = "two-digit-years";
    private static final int LONGEST_HEADING = 40;
    private static final Pattern SHORT_YEAR = Pattern.compile("\\d{1,2}[/.-]\\d{1,2}[/.-]\\d{2}");

    /** Keeps the lists from being changed. */
    public HeadingProposal {
        matches = List.copyOf(matches);
        words = List.copyOf(words);
    }

    /**
     * Looks at a list whose headings may be unknown.
     *
     * @param sheet the sheet wanted; empty takes the one that looks most like a list
     * @param tables the firm's, whose names and words are recognised
     * @return no result, and the reason, where list or tables cannot be read
     */
    public static Reading<HeadingProposal> of(Path register, Optional<String> sheet, Path tables) {
        Reading<FirmTables> firm = FirmTablesReader.read(tables);
        if (firm.result().isEmpty()) {
            return Reading.refused(firm.findings().stream().filter(Finding::stops).toList());
        }
        ColumnNames<Field> own =
                HeadingTable.of(Field.values(), "columns", tables, new ArrayList<>());
        Reading<ReadList> read = read(register, sheet, own.sheets());
        boolean unclear =
                sheet.isEmpty()
                        && own.sheets().isNone()
                        && read.findings().stream()
                                .anyMatch(f -> f.code() == FindingCode.SHEET_NOT_FOUND);
        Reading<ReadList> newest =
                unclear
                        ? read(register, sheet, SheetRule.NEWEST_MONTH)
                        : Reading.refused(List.of());
        boolean byMonth = newest.result().isPresent();
        Optional<ReadList> list = byMonth ? newest.result() : read.result();
        if (list.isEmpty()) {
            return Reading.refused(read.findings().stream().filter(Finding::stops).toList());
        }
        return Reading.of(
                of(list.get().sheets().get(0), firm.result().get(), own, byMonth), List.of());
    }

    private static Reading<ReadList> read(Path register, Optional<String> sheet, SheetRule rule) {
        return SheetReader.readAll(register, HeadingProposal::isHeading, sheet, rule);
    }

    private static HeadingProposal of(
            Sheet sheet, FirmTables firm, ColumnNames<Field> own, boolean byMonth) {
        ColumnNames<Field> shipped = HeadingTable.shipped(Field.values(), "columns");
        boolean knows = sheet.columns().stream().anyMatch(c -> own.knows(c.heading()));
        List<HeadingMatch> matches = HeadingMatch.of(sheet, knows ? own : shipped, firm);
        List<WordMatch> words = new ArrayList<>();
        boolean shortYears = false;
        for (HeadingMatch match : matches) {
            if (match.field().isPresent()) {
                Field field = match.field().get();
                WordMatch.of(sheet, match.column(), field, firm).stream()
                        .filter(w -> words.stream().noneMatch(o -> isSame(o, w)))
                        .forEach(words::add);
                shortYears |=
                        FieldForm.of(field, firm).holds() == Holds.DAY
                                && sheet.rows().stream()
                                        .map(row -> row.cell(match.column()).text())
                                        .anyMatch(t -> SHORT_YEAR.matcher(t).matches());
            }
        }
        return new HeadingProposal(matches, words, shortYears, saysOfClaims(own), byMonth);
    }

    private static boolean saysOfClaims(ColumnNames<Field> own) {
        return Arrays.stream(SchemeName.values())
                .anyMatch(s -> own.always(Field.of(s, ClaimFact.CLAIM)).isPresent());
    }

    private static boolean isSame(WordMatch one, WordMatch other) {
        return one.field().equals(other.field()) && one.word().equalsIgnoreCase(other.word());
    }

    /** A heading is short, has letters and is no value such as a date or a street. */
    private static boolean isHeading(String text) {
        return text.length() <= LONGEST_HEADING
                && text.matches("(?s).*\\p{L}.*")
                && !text.matches("[0-9].*|.*@.*|.*[0-9]{4}.*")
                && text.split("\\s+").length <= 5;
    }

    /** The columns that are at least likely, as rows of the table of columns. */
    public List<List<String>> columnRows() {
        return rows(Set.of(Sure.SURE, Sure.LIKELY));
    }

    private List<List<String>> rows(Set<Sure> wanted) {
        List<List<String>> rows = new ArrayList<>();
        for (HeadingMatch match : matches) {
            if (wanted.contains(match.sure())) {
                rows.add(
                        List.of(
                                match.field().orElseThrow().key(),
                                match.column().heading(),
                                "",
                                match.sure().word(),
                                match.because()));
            }
        }
        if (byMonth) {
            rows.add(0, NEWEST_MONTH);
        }
        if (shortYears) {
            rows.add(List.of(SHORT_YEARS, "", "yes", Sure.SURE.word(), "days such as 3/11/26"));
        }
        return rows;
    }

    /** The lines of {@link #columnRows}, each in a few words for people. */
    public List<String> written() {
        return columnRows().stream()
                .map(row -> row.get(1).isEmpty() ? row.get(0) : row.get(1) + " = " + row.get(0))
                .toList();
    }

    /** The columns of the list that {@link #columnRows} leaves out, with what they may be. */
    public List<String> leftOut() {
        return matches.stream()
                .filter(m -> m.sure() == Sure.LOOK || m.sure() == Sure.NONE)
                .map(
                        m ->
                                m.column().heading()
                                        + m.field()
                                                .map(f -> " (" + f.key() + "?)")
                                                .orElse(" (" + m.because() + ")"))
                .toList();
    }

    /** The columns that nothing is proposed for, with what stands below them. */
    public List<String> open() {
        return matches.stream()
                .filter(m -> m.sure() == Sure.NONE)
                .map(m -> m.column().heading() + ": " + m.because())
                .toList();
    }

    /** The words that are not understood, behind the question that each answers. */
    public List<String> unknownWords() {
        return words.stream()
                .map(
                        w ->
                                w.field()
                                        + ": "
                                        + w.word()
                                        + w.ours().map(o -> ", probably " + o).orElse(""))
                .toList();
    }

    /** The words that probably stand for one of ours, as rows of the table of words. */
    public List<List<String>> wordRows() {
        return words.stream()
                .filter(w -> w.ours().isPresent())
                .map(w -> List.of(w.field(), w.word(), w.ours().orElseThrow()))
                .toList();
    }

    /** Every column for people: letters, heading, field, how sure, because. */
    public List<List<String>> columnLines() {
        return matches.stream()
                .map(
                        m ->
                                List.of(
                                        m.column().letters(),
                                        m.column().heading(),
                                        m.field().map(Field::key).orElse("-"),
                                        m.sure().word(),
                                        m.because()))
                .toList();
    }

    /** Every word that is not understood for people: word, field, rows, what it may stand for. */
    public List<List<String>> wordLines() {
        return words.stream()
                .map(
                        w ->
                                List.of(
                                        w.word(),
                                        w.field(),
                                        String.valueOf(w.times()),
                                        w.ours().orElse("")))
                .toList();
    }

    /** Needed facts, in words, that no column is proposed for that is at least likely. */
    public List<String> missing() {
        return missing(Set.of(Sure.SURE, Sure.LIKELY));
    }

    /** The same of {@link #columnsFile}, which has what has yet to be looked at too. */
    public List<String> missingInFile() {
        return missing(IN_FILE);
    }

    /** Of claims a list needs a word too: a fact of which one scheme's is enough. */
    private boolean tellsOfClaims(List<Field> proposed) {
        return claimsTold
                || proposed.contains(Field.SCHEME)
                || Arrays.stream(SchemeName.values())
                        .anyMatch(s -> proposed.contains(Field.of(s, ClaimFact.CLAIM)));
    }

    private List<String> missing(Set<Sure> wanted) {
        List<Field> proposed =
                matches.stream()
                        .filter(m -> wanted.contains(m.sure()))
                        .flatMap(m -> m.field().stream())
                        .toList();
        List<String> missing = new ArrayList<>();
        Field.values().stream()
                .filter(Field::isNeeded)
                .filter(f -> !proposed.contains(f))
                .filter(f -> proposed.stream().noneMatch(p -> p.parts().contains(f)))
                .map(Field::label)
                .forEach(missing::add);
        if (!tellsOfClaims(proposed)) {
            missing.add(CLAIMS);
        }
        return missing;
    }

    /** The table of columns as a file to be looked over, with what has yet to be looked at. */
    public byte[] columnsFile() {
        List<List<String>> rows = rows(IN_FILE);
        return SafeCsv.of(COLUMNS, rows.stream().map(SafeCsv::cells).toList());
    }
}
