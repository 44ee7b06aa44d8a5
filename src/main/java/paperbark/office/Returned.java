package paperbark.office;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.text.Normalizer;
import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import paperbark.batch.HeadingProposal;
import paperbark.batch.MarkedCopy;
import paperbark.batch.SideProducts;
import paperbark.disk.Disk;
import paperbark.disk.FileNames;
import paperbark.fault.FaultPoint;
import paperbark.finding.Finding;
import paperbark.finding.FindingCode;
import paperbark.sheet.Reading;

/** Gives a register back that cannot be used, with its marked-up copy and a note that says why. */
final class Returned {
    /** Beside the register: which of its columns is probably which. */
    static final String PROPOSAL = "columns-proposed.csv";

    private static final Set<FindingCode> OF_HEADINGS =
            Set.of(
                    FindingCode.HEADINGS_NOT_FOUND,
                    FindingCode.COLUMN_MISSING,
                    FindingCode.SHEET_NOT_FOUND);

    private Returned() {}

    /** Gives back a register that was refused. */
    static void register(Office office, WorkItem item, List<Finding> findings, LocalDate today)
            throws IOException {
        Path source = item.source().orElseThrow();
        Disk.delete(item.returning());
        Disk.makeFolders(item.returning());
        Optional<byte[]> marked = MarkedCopy.ofRefused(source, office.tables(), findings);
        if (marked.isPresent()) {
            Disk.write(
                    item.returning().resolve(FileNames.stem(source) + "-checked.xlsx"),
                    marked.get());
        }
        Optional<HeadingProposal> proposed = propose(office, item, source, findings);
        giveBack(office, item, note(source, findings, proposed), today);
    }

    /** Where the headings are the trouble, leaves a proposal which column is which. */
    private static Optional<HeadingProposal> propose(
            Office office, WorkItem item, Path source, List<Finding> findings) throws IOException {
        if (findings.stream().noneMatch(f -> OF_HEADINGS.contains(f.code()))) {
            return Optional.empty();
        }
        Optional<HeadingProposal> proposal =
                new SideProducts(source.getFileName().toString())
                        .make(
                                PROPOSAL,
                                () -> HeadingProposal.of(source, Optional.empty(), office.tables()))
                        .flatMap(Reading::result)
                        .filter(p -> !p.columnRows().isEmpty());
        if (proposal.isPresent()) {
            Disk.write(item.returning().resolve(PROPOSAL), proposal.get().columnsFile());
        }
        return proposal;
    }

    /** Gives back a pile of scans that cannot be read. */
    static void pile(Office office, WorkItem item, Finding finding, LocalDate today)
            throws IOException {
        Disk.delete(item.returning());
        Disk.makeFolders(item.returning());
        String note =
                "%s could not be read, and nothing was taken from it.\n\n  %s\n  What to do: %s\n\nThen drop it into the scans folder again. This folder you may delete.\n"
                        .formatted(
                                item.source().orElseThrow().getFileName(),
                                finding.fact(),
                                finding.remedy());
        giveBack(office, item, note, today);
    }

    /** Gives back a register at which the program failed again and again. */
    static void unread(Office office, WorkItem item, LocalDate today) throws IOException {
        Disk.delete(item.returning());
        Disk.makeFolders(item.returning());
        String note =
                """
                %s could not be prepared: the program failed %d times at it.

                What to do: open the file in the spreadsheet program, copy the rows into a new
                workbook, save that and drop it again. If that does not help, tell us.
                """
                        .formatted(item.source().orElseThrow().getFileName(), Handling.MOST_FAULTS);
        giveBack(office, item, note, today);
    }

    private static void giveBack(Office office, WorkItem item, String note, LocalDate today)
            throws IOException {
        Path source = item.source().orElseThrow();
        Disk.write(
                item.returning().resolve(OfficeFolder.NOTE), note.getBytes(StandardCharsets.UTF_8));
        Disk.write(
                item.folder().resolve("name"),
                (today + "-" + slug(FileNames.stem(source))).getBytes(StandardCharsets.UTF_8));
        Disk.forceAll(item.folder());
        FaultPoint.RETURNING.reach();
        Disk.move(source, item.returning().resolve(source.getFileName()));
        finish(office, item);
    }

    /** Finishes what was begun: whether the item's register has gone back now. */
    static boolean finish(Office office, WorkItem item) throws IOException {
        Path name = item.folder().resolve("name");
        if (item.source().isPresent()
                || !Files.exists(name)
                || !Files.isDirectory(item.returning())) {
            return false;
        }
        Path folder = Office.free(office.returned(), Files.readString(name));
        Disk.move(item.returning(), folder);
        FaultPoint.RETURNED.reach();
        Disk.delete(item.folder());
        return true;
    }

    private static String note(
            Path source, List<Finding> findings, Optional<HeadingProposal> proposed) {
        StringBuilder note = new StringBuilder();
        note.append(source.getFileName())
                .append(" could not be used, and nothing was prepared from it.\n\n");
        for (Finding finding : findings) {
            if (finding.stops()) {
                note.append(finding.where()).append('\n');
                note.append("  ").append(finding.fact()).append('\n');
                note.append("  What to do: ").append(finding.remedy()).append("\n\n");
            }
        }
        proposed.map(Returned::proposal).ifPresent(note::append);
        note.append(
                "Then drop the file into the intake folder again. This folder you may delete.\n");
        return note.toString();
    }

    private static String proposal(HeadingProposal proposal) {
        StringBuilder note = new StringBuilder();
        note.append(
                PROPOSAL
                        + " says which column is probably which, and how sure that is.\n"
                        + "  What to do: look it over, take out each row with \"look\" that is wrong,"
                        + " and copy its first three columns to the table \"columns\".\n\n");
        List<String> open = proposal.open();
        if (!open.isEmpty()) {
            note.append("It names no field for these columns:\n");
            open.forEach(column -> note.append("  ").append(column).append('\n'));
            note.append(
                    "  What to do: add a row with field and heading for each that is wanted. The others are not used.\n\n");
        }
        if (!proposal.missingInFile().isEmpty()) {
            note.append("Every list needs these, and no column was found for them:\n  ")
                    .append(String.join(", ", proposal.missingInFile()))
                    .append("\n\n");
        }
        List<String> words = proposal.unknownWords();
        if (!words.isEmpty()) {
            note.append("Words of the list that are not understood:\n");
            words.forEach(word -> note.append("  ").append(word).append('\n'));
            note.append(
                    "  What to do: give the table \"words\" a row for each: field, word, and what it stands for.\n\n");
        }
        return note.toString();
    }

    private static String slug(String text) {
        String slug =
                Normalizer.normalize(text, Normalizer.Form.NFC)
                        .toLowerCase(Locale.ROOT)
                        .replaceAll("[^\\p{L}\\p{M}\\p{N}()\\[\\]]+", "-")
                        .replaceAll("^-|-$", "");
        int letters = slug.codePointCount(0, slug.length());
        return slug.isEmpty()
                ? "register"
                : slug.substring(0, slug.offsetByCodePoints(0, Math.min(40, letters)));
    }
}
