package paperbark.sheet;

import static paperbark.finding.FindingCode.SHEET_HIDDEN;
import static paperbark.finding.FindingCode.SHEET_NOT_FOUND;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import org.apache.poi.ss.usermodel.Sheet;
import org.apache.poi.ss.usermodel.SheetVisibility;
import org.apache.poi.ss.usermodel.Workbook;
import paperbark.finding.Finding;
import paperbark.finding.Place;
import paperbark.sheet.HeadingFinder.Headings;
import paperbark.value.Nearest;

/** Decides which sheet of a workbook is meant. */
final class SheetChoice {
    private final Workbook book;
    private final SheetLines.Way way;
    private final Place place;
    private final List<Finding> notes = new ArrayList<>();

    /** A sheet with its headings and the way to its lines. */
    record Chosen(Sheet sheet, Headings headings, SheetLines lines) {
        /** Whether anything stands below the headings. */
        boolean hasRows() {
            int row = headings.line().row().number();
            return lines.first(Limits.HEADING_ROWS + 1).stream()
                    .anyMatch(line -> line.row().number() > row);
        }
    }

    SheetChoice(Workbook book, SheetLines.Way way, Place place) {
        this.book = book;
        this.way = way;
        this.place = place;
    }

    /** What was noticed while choosing. */
    List<Finding> notes() {
        return notes;
    }

    /** The sheet of that name, also when it is hidden: whoever names it means it. */
    Chosen named(String name, Predicate<String> isKnown) throws Refused {
        Sheet sheet = book.getSheet(name.strip());
        if (sheet == null) {
            List<String> names = new ArrayList<>();
            book.forEach(s -> names.add(s.getSheetName()));
            throw Refused.because(
                    SHEET_NOT_FOUND,
                    place,
                    "There is no sheet \""
                            + name
                            + (names.size() == 1 ? "\"; the only one is " : "\"; the sheets are ")
                            + listed(names)
                            + ".",
                    Nearest.to(name, names)
                            .map(
                                    nearest ->
                                            "Type \""
                                                    + nearest
                                                    + "\" after --sheet if that is meant.")
                            .orElse("Type the name of the sheet after --sheet."));
        }
        SheetLines lines = way.of(sheet);
        List<Line> top = lines.first(Limits.HEADING_ROWS);
        Optional<Headings> headings = HeadingFinder.find(top, isKnown);
        if (headings.isEmpty()) {
            throw HeadingFinder.notFound(top, new Place.InRow(place.file(), name.strip(), 0));
        }
        return new Chosen(sheet, headings.get(), lines);
    }

    /** The visible sheets that the firm's rule means, in their order. */
    List<Chosen> ruled(SheetRule rule, Predicate<String> isKnown) throws Refused {
        List<String> visible = new ArrayList<>();
        List<String> hidden = new ArrayList<>();
        for (int i = 0; i < book.getNumberOfSheets(); i++) {
            boolean seen = book.getSheetVisibility(i) == SheetVisibility.VISIBLE;
            if (book.getSheetName(i).equals(SheetReader.ANSWERS)) {
                continue;
            }
            (seen ? visible : hidden).add(book.getSheetName(i));
        }
        noteHidden(hidden);
        List<String> names = rule.chosen(visible);
        if (names.isEmpty()) {
            throw Refused.because(
                    SHEET_NOT_FOUND,
                    place,
                    "No sheet is named as the columns table says, which is "
                            + listed(rule.patterns())
                            + "; the sheets are "
                            + listed(visible)
                            + ".",
                    "Rename the sheet that is meant, or correct the line \"sheet\" of the columns table.");
        }
        List<Chosen> chosen = new ArrayList<>();
        for (String name : names) {
            chosen.add(named(name, isKnown));
        }
        return chosen;
    }

    /** The visible sheet whose headings match best; of equals the one that has rows. */
    Chosen best(Predicate<String> isKnown) throws Refused {
        List<Chosen> best = new ArrayList<>();
        List<String> hidden = new ArrayList<>();
        List<Line> tops = new ArrayList<>();
        for (int i = 0; i < book.getNumberOfSheets(); i++) {
            Sheet sheet = book.getSheetAt(i);
            if (sheet.getSheetName().equals(SheetReader.ANSWERS)) {
                continue;
            }
            if (book.getSheetVisibility(i) != SheetVisibility.VISIBLE) {
                hidden.add(sheet.getSheetName());
                continue;
            }
            SheetLines lines = way.of(sheet);
            List<Line> top = lines.first(Limits.HEADING_ROWS);
            tops.addAll(tops.isEmpty() ? top : List.of());
            HeadingFinder.find(top, isKnown)
                    .ifPresent(headings -> keepBest(best, new Chosen(sheet, headings, lines)));
        }
        noteHidden(hidden);
        if (best.isEmpty()) {
            throw HeadingFinder.notFound(tops, place);
        }
        List<Chosen> withRows = best.stream().filter(Chosen::hasRows).toList();
        if (withRows.size() > 1) {
            throw unclear(withRows);
        }
        return withRows.isEmpty() ? best.get(0) : withRows.get(0);
    }

    private static void keepBest(List<Chosen> best, Chosen next) {
        long score = best.isEmpty() ? 0 : best.get(0).headings().score();
        if (next.headings().score() > score) {
            best.clear();
        }
        if (next.headings().score() >= score) {
            best.add(next);
        }
    }

    private void noteHidden(List<String> hidden) {
        hidden.remove(SheetReader.LISTS);
        if (!hidden.isEmpty()) {
            String fact =
                    (hidden.size() == 1 ? "The hidden sheet " : "The hidden sheets ")
                            + listed(hidden)
                            + (hidden.size() == 1 ? " was left out." : " were left out.");
            notes.add(Finding.of(SHEET_HIDDEN, place, fact, ""));
        }
    }

    private Refused unclear(List<Chosen> equals) {
        List<String> names = equals.stream().map(c -> c.sheet().getSheetName()).toList();
        return Refused.because(
                SHEET_NOT_FOUND,
                place,
                "The headings of the sheets " + listed(names) + " match equally well.",
                "Hide the others, or name the right one: after --sheet, or for registers in a line \"sheet\" of the columns table.");
    }

    private static String listed(List<String> names) {
        return names.stream().map(n -> '"' + n + '"').collect(Collectors.joining(", "));
    }
}
