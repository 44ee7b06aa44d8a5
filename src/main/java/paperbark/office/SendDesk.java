package paperbark.office;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.stream.Collectors;
import paperbark.disk.Disk;
import paperbark.firm.Firm;
import paperbark.firm.FirmTables;
import paperbark.output.BrokenTemplate;
import paperbark.output.LetterView;
import paperbark.output.TemplateEngine;
import paperbark.output.index.SendPage;
import paperbark.output.mail.Draft;
import paperbark.output.mail.DraftFile;
import paperbark.output.mail.LetterText;
import paperbark.output.paper.PaperCopy;
import paperbark.value.Email;

/**
 * Keeps the drafts of what leaves the house as they should be: makes those that are due, makes
 * those anew of which something changed, and takes away those that are due no longer. Nothing is
 * ever sent. A draft that a person took away stays away until something in it changes.
 */
final class SendDesk {
    /** How the name of a letter to a maker begins. */
    static final String MAKER = "maker-";

    /** The page that lists them. */
    static final String PAGE = "index.html";

    /** Why an owner's copy does not go by mail. */
    static final String ACCOUNT_STAYS =
            "It shows an account number, which does not go by e-mail to anybody but the buyer; keep"
                    + " the paper that you were given.";

    private final Office office;
    private final FirmTables tables;
    private final Instant at;
    private final TemplateEngine engine;
    private final SentNotes notes;
    private final Map<Outgoing.Kind, String> written = new EnumMap<>(Outgoing.Kind.class);

    private SendDesk(Office office, FirmTables tables, Instant at) throws IOException {
        this.office = office;
        this.tables = tables;
        this.at = at;
        this.engine = new TemplateEngine(office.templates());
        this.notes = SentNotes.of(office);
    }

    /**
     * When and by what they are made.
     *
     * @param at moment, for the drafts' own dates
     * @param version version of the program
     * @param all whether drafts that a person took away are made again too
     * @param doubtful pictures that contradict day or site, in words by their names
     */
    record Making(Instant at, String version, boolean all, Map<String, String> doubtful) {}

    /**
     * Brings the folder up to date.
     *
     * @throws IOException when the folder or a batch cannot be read or written; one draft that
     *     cannot be made costs no other
     */
    static OfficePapers.Drafts renew(
            Office office, LedgerFacts facts, FirmTables tables, Making making) throws IOException {
        DueLetters.Due found = DueLetters.of(office, facts, tables, making.doubtful());
        List<Outgoing> due = found.letters();
        SendDesk desk = new SendDesk(office, tables, making.at());
        if (due.isEmpty() && !Files.isDirectory(office.send())) {
            return new OfficePapers.Drafts(List.of(), List.of());
        }
        desk.clear(due);
        List<String> trouble = desk.keepAll(due, making.all());
        desk.notes.write();
        desk.replace(
                PAGE,
                SendPage.of(SendReport.of(office, tables, found, facts.today(), making.version()))
                        .getBytes(StandardCharsets.UTF_8));
        List<Path> files =
                due.stream()
                        .map(l -> office.send().resolve(l.path(".eml")))
                        .filter(Files::isRegularFile)
                        .toList();
        return new OfficePapers.Drafts(files, trouble);
    }

    /** Takes away what is due no longer, of the files that were made here. */
    private void clear(List<Outgoing> due) throws IOException {
        Set<String> wanted = due.stream().map(l -> l.path(".eml")).collect(Collectors.toSet());
        for (String draft : notes.paths()) {
            if (!wanted.contains(draft)) {
                String stem = draft.substring(0, draft.length() - ".eml".length());
                for (String ending : Outgoing.Kind.BUYER.endings()) {
                    Files.deleteIfExists(office.send().resolve(stem + ending));
                }
            }
        }
        notes.keep(wanted);
        for (Path folder : Office.list(office.send())) {
            if (Files.isDirectory(folder) && Office.list(folder).isEmpty()) {
                Disk.delete(folder);
            }
        }
    }

    /** On all cores, since to cut papers out and to wait for the disk takes its time. */
    private List<String> keepAll(List<Outgoing> due, boolean all) throws IOException {
        List<String> trouble = new ArrayList<>();
        ExecutorService pool =
                Executors.newFixedThreadPool(Runtime.getRuntime().availableProcessors());
        try {
            List<Future<Optional<String>>> running =
                    due.stream().map(letter -> pool.submit(() -> keep(letter, all))).toList();
            for (Future<Optional<String>> draft : running) {
                draft.get().ifPresent(trouble::add);
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IOException("The run was interrupted.", e);
        } catch (ExecutionException e) {
            throw new IllegalStateException("A draft could not be made.", e.getCause());
        } finally {
            pool.shutdownNow();
        }
        return trouble;
    }

    /** What is to be said where it cannot be made. */
    private Optional<String> keep(Outgoing letter, boolean all) {
        String path = letter.path(".eml");
        try {
            String written = writtenWith(letter);
            String stamp = letter.stamp(written);
            boolean kept = !all || Files.isRegularFile(office.send().resolve(path));
            if (kept && notes.hasStamp(path, stamp)) {
                return Optional.empty();
            }
            // A folder that was moved or copied has other stamps, and the same in it.
            String key = letter.key(written);
            if (!kept || !notes.hasKey(path, key)) {
                make(letter);
            }
            notes.put(path, stamp, key);
            return Optional.empty();
        } catch (IOException | RuntimeException | BrokenTemplate e) {
            notes.drop(path);
            return Optional.of(
                    "send/"
                            + path
                            + " could not be made ("
                            + Failed.because(e)
                            + "). Papers and claims are whole.");
        }
    }

    /** The same for all letters of a kind; to read a template takes longer than all else here. */
    private synchronized String writtenWith(Outgoing letter) throws BrokenTemplate {
        String known = written.get(letter.kind());
        if (known == null) {
            Firm firm = tables.firm();
            known =
                    String.join(
                            "\n",
                            engine.text("mail/" + letter.kind().word() + ".ftlh").orElse(""),
                            firm.name(),
                            firm.phone().map(p -> p.full()).orElse(""),
                            firm.email().map(Email::full).orElse(""));
            written.put(letter.kind(), known);
        }
        return known;
    }

    /** The draft comes last: it tells that what lies beside it is as new. */
    private void make(Outgoing letter) throws IOException, BrokenTemplate {
        List<LetterView.Enclosed> enclosed = new ArrayList<>();
        List<LetterView.Apart> apart = new ArrayList<>(letter.apart());
        List<Draft.Attachment> attached = new ArrayList<>();
        for (Enclosure enclosure : letter.enclosures()) {
            byte[] content = enclosure.content();
            LetterView.Enclosed as = enclosure.as();
            if (enclosure.withoutAccounts() && PaperCopy.shows(content, accounts())) {
                apart.add(new LetterView.Apart(as.what(), ACCOUNT_STAYS));
            } else {
                enclosed.add(as);
                attached.add(new Draft.Attachment(as.file(), enclosure.type(), content));
            }
        }
        LetterView told = letter(letter, enclosed, apart);
        if (letter.kind() == Outgoing.Kind.BUYER) {
            CoveringList list = new CoveringList(told);
            byte[] csv = list.csv();
            byte[] page = list.page().getBytes(StandardCharsets.UTF_8);
            attached.add(new Draft.Attachment(letter.stem() + ".csv", "text/csv", csv));
            attached.add(new Draft.Attachment(letter.stem() + ".html", "text/html", page));
            replace(letter.path(".csv"), csv);
            replace(letter.path(".html"), page);
        }
        LetterText text = LetterText.of(engine, letter.kind().word(), told);
        replace(
                letter.path(".eml"),
                DraftFile.of(
                        new Draft(
                                tables.firm().email(),
                                letter.to(),
                                text.subject(),
                                text.html(),
                                attached,
                                at)));
    }

    private LetterView letter(
            Outgoing letter, List<LetterView.Enclosed> enclosed, List<LetterView.Apart> apart) {
        Firm firm = tables.firm();
        return new LetterView(
                firm.name(),
                firm.phone(),
                firm.email(),
                letter.name(),
                letter.batch(),
                letter.jobs(),
                letter.claim(),
                enclosed,
                apart);
    }

    /** The firm's own account; where an owner's is known, no copy is cut at all. */
    private Set<String> accounts() {
        return tables.firm().account().map(a -> Set.of(a.full())).orElse(Set.of());
    }

    private void replace(String path, byte[] content) throws IOException {
        Path file = office.send().resolve(path);
        if (!Files.exists(file) || !Arrays.equals(Files.readAllBytes(file), content)) {
            Disk.replace(file, content);
        }
    }
}
