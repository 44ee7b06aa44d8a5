package paperbark.office;

import java.nio.file.Files;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import paperbark.firm.FirmTables;
import paperbark.ledger.Lodging;
import paperbark.output.LetterView;
import paperbark.output.index.SendView;
import paperbark.value.Days;
import paperbark.value.Email;

/** Puts the letters that are due into the words of their page. */
final class SendReport {
    // A page for people; the folder has all of them.
    private static final int NAMES_SHOWN = 12;

    private SendReport() {}

    static SendView of(
            Office office,
            FirmTables tables,
            DueLetters.Due found,
            LocalDate today,
            String version) {
        List<Outgoing> due = found.letters();
        Map<String, List<SendView.Line>> byBatch = new LinkedHashMap<>();
        due.stream()
                .sorted(Comparator.comparing(l -> -l.kind().ordinal()))
                .forEach(
                        letter ->
                                byBatch.computeIfAbsent(letter.batch(), b -> new ArrayList<>())
                                        .add(line(office, letter)));
        List<String> order = due.stream().map(Outgoing::batch).distinct().toList();
        return new SendView(
                tables.firm().name(),
                Days.show(today),
                version,
                notes(found),
                order.stream().map(b -> new SendView.OfBatch(b, byBatch.get(b))).toList());
    }

    private static SendView.Line line(Office office, Outgoing letter) {
        boolean there = Files.isRegularFile(office.send().resolve(letter.path(".eml")));
        boolean covered = Files.isRegularFile(office.send().resolve(letter.path(".html")));
        return new SendView.Line(
                letter.kind().word(),
                letter.name(),
                letter.to().map(Email::full).orElse(""),
                letter.claim()
                        .map(
                                c ->
                                        c.name()
                                                + ": "
                                                + c.certificates()
                                                + " "
                                                + c.scheme()
                                                + (c.certificates() == 1 ? "" : "s"))
                        .orElse(
                                letter.jobs().stream()
                                        .map(LetterView.OfJob::job)
                                        .collect(Collectors.joining(", "))),
                letter.enclosures().size(),
                waiting(letter),
                looks(letter),
                letter.apart().stream()
                        .map(LetterView.Apart::what)
                        .collect(Collectors.joining("; ")),
                there ? letter.path(".eml") : "",
                covered ? letter.path(".html") : "");
    }

    private static String waiting(Outgoing letter) {
        List<LetterView.Enclosed> unsigned =
                letter.enclosures().stream()
                        .map(Enclosure::as)
                        .filter(LetterView.Enclosed::isUnsigned)
                        .toList();
        if (unsigned.isEmpty()) {
            return "";
        }
        return (unsigned.size() > 1
                        ? unsigned.size() + " signed papers, of "
                        : "signed " + unsigned.get(0).what() + " of ")
                + list(unsigned.stream().map(LetterView.Enclosed::job).toList());
    }

    private static String looks(Outgoing letter) {
        return letter.enclosures().stream()
                .map(e -> e.as().look())
                .filter(look -> !look.isEmpty())
                .collect(Collectors.joining("; "));
    }

    private static String list(Collection<String> names) {
        return names.stream().limit(NAMES_SHOWN).collect(Collectors.joining(", "))
                + (names.size() > NAMES_SHOWN
                        ? " and " + (names.size() - NAMES_SHOWN) + " more"
                        : "");
    }

    /** The claims of a buyer whose offer was not taken; the letters say the same of the price. */
    private static Map<String, Set<String>> withoutPrice(List<Outgoing> due) {
        Map<String, Set<String>> all = new TreeMap<>();
        for (Outgoing letter : due) {
            letter.claim()
                    .filter(c -> c.due().isEmpty())
                    .ifPresent(
                            c ->
                                    all.computeIfAbsent(letter.name(), n -> new TreeSet<>())
                                            .add(c.name()));
        }
        return all;
    }

    /** Addresses that are not known, told once and not at each letter. */
    private static List<String> notes(DueLetters.Due found) {
        List<Outgoing> due = found.letters();
        List<String> notes = new ArrayList<>();
        note(
                notes,
                found.tooLate(),
                "has no bundle, because the last day is over and nobody said that it was lodged",
                Lodging.WHEN_TOO_LATE);
        note(
                notes,
                found.withoutBuyer(),
                "has no buyer in the ledger",
                "Nobody gets the papers until the register names one, or an offer is in force.");
        withoutPrice(due)
                .forEach(
                        (buyer, claims) ->
                                note(
                                        notes,
                                        claims,
                                        "has no price, because no offer of " + buyer + " was taken",
                                        "Enter the current price in the offers table, or agree on it"
                                                + " with the buyer."));
        note(
                notes,
                names(due, Outgoing.Kind.BUYER),
                "has no e-mail in the buyers table",
                "Type it there; the draft has nobody to go to until then.");
        note(
                notes,
                names(due, Outgoing.Kind.MAKER),
                "has no e-mail in the makers table",
                "Type it there; the draft has nobody to go to until then.");
        Set<String> owners = new TreeSet<>();
        due.stream()
                .filter(l -> l.kind() == Outgoing.Kind.OWNER && l.to().isEmpty())
                .forEach(l -> owners.add(l.jobs().get(0).job()));
        note(
                notes,
                owners,
                "has no e-mail of the owner in the register",
                "Those papers go by post, or type the address into the draft.");
        return notes;
    }

    private static Set<String> names(List<Outgoing> due, Outgoing.Kind kind) {
        return due.stream()
                .filter(l -> l.kind() == kind && l.to().isEmpty())
                .map(Outgoing::name)
                .collect(Collectors.toCollection(TreeSet::new));
    }

    private static void note(List<String> notes, Set<String> names, String lacks, String what) {
        if (!names.isEmpty()) {
            String said = names.size() == 1 ? lacks : lacks.replaceFirst("^has", "have");
            notes.add(list(names) + " " + said + ". " + what);
        }
    }
}
