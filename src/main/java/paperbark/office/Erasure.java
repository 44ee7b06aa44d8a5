package paperbark.office;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.apache.commons.codec.digest.DigestUtils;
import paperbark.batch.EntryFile;
import paperbark.batch.EntryPages;
import paperbark.batch.FillableSheets;
import paperbark.batch.ForgottenFiles;
import paperbark.batch.Recipients;
import paperbark.disk.Disk;
import paperbark.disk.FileNames;
import paperbark.disk.Hashes;
import paperbark.ledger.EntryRecord;
import paperbark.ledger.Keys;
import paperbark.ledger.LedgerId;
import paperbark.output.workbook.WorkbookErasure;
import paperbark.scan.FilledForm;
import paperbark.scan.UnreadablePile;
import paperbark.sheet.CsvErasure;
import paperbark.sheet.OpenSheetErasure;

/**
 * Takes what files tell of a job out of them. Rows of lists are emptied but for the job number;
 * papers of the job, and those that many jobs share, are deleted. Doing it twice changes nothing.
 */
public final class Erasure {
    /** Columns of the summary that tell of a person, or may. */
    private static final Set<String> PERSONAL =
            Set.of("Owner", "Place", "Suburb", "Value", "What is wrong");

    /** Marked-up lists, as their names end. */
    private static final String CHECKED = "-checked.xlsx";

    private final String key;

    /** An erasure of one job. */
    public Erasure(String job) {
        key = Keys.job(job);
    }

    /**
     * Takes the job out of the folder of a batch.
     *
     * @param batch the folder
     * @param pack path of the job's pack in it
     * @param ledger which ledger the batch was entered into
     * @param entry the batch's entry, in which the job is forgotten already
     * @param unread takes the files that could not be looked into
     * @return what was done, a line a file
     * @throws IOException when a file cannot be written; a second run completes it
     */
    public List<String> ofBatch(
            Path batch, String pack, LedgerId ledger, EntryRecord entry, List<Path> unread)
            throws IOException {
        Map<String, Optional<byte[]>> changes = new TreeMap<>();
        for (Path file : files(batch)) {
            String name = batch.relativize(file).toString().replace('\\', '/');
            if (name.equals(pack)
                    || isShared(name)
                    || EntryPages.isOf(name, pack)
                    || FillableSheets.isOf(name, pack)) {
                changes.put(name, Optional.empty());
            } else if (name.equals(Recipients.FILE)) {
                byte[] json = Recipients.in(batch).orElseThrow().without(this::names).toJson();
                if (!DigestUtils.sha256Hex(json).equals(Hashes.sha256(file))) {
                    changes.put(name, Optional.of(json));
                }
            } else if (name.equals(EntryFile.NAME)) {
                byte[] json = new EntryFile(ledger, entry.withDetail("")).toJson();
                if (!DigestUtils.sha256Hex(json).equals(Hashes.sha256(file))) {
                    changes.put(name, Optional.of(json));
                }
            } else {
                Set<String> headings = name.endsWith(CHECKED) ? Set.of() : PERSONAL;
                erased(file, headings, unread)
                        .ifPresent(left -> changes.put(name, Optional.of(left)));
            }
        }
        return apply(batch, changes);
    }

    /** Pages that show many jobs together and can be had from the packs. */
    private static boolean isShared(String name) {
        return name.equals("index.html") || name.matches("print-run.*\\.pdf|entries/[^/]*\\.csv");
    }

    private static List<String> apply(Path batch, Map<String, Optional<byte[]>> changes)
            throws IOException {
        if (changes.isEmpty()) {
            return List.of();
        }
        Map<String, String> hashes = new TreeMap<>();
        changes.forEach(
                (name, left) -> hashes.put(name, left.map(DigestUtils::sha256Hex).orElse("")));
        // The list first: a file that is neither as the manifest nor as the list says is not ours.
        ForgottenFiles.in(batch).with(hashes).into(batch);
        List<String> done = new ArrayList<>();
        for (Map.Entry<String, Optional<byte[]>> change : changes.entrySet()) {
            Path file = batch.resolve(change.getKey());
            if (change.getValue().isPresent()) {
                Disk.replace(file, change.getValue().get());
                done.add("emptied packs/" + batch.getFileName() + "/" + change.getKey());
            } else {
                Files.delete(file);
                Disk.force(file.getParent());
                done.add("deleted packs/" + batch.getFileName() + "/" + change.getKey());
            }
        }
        return done;
    }

    /**
     * Empties the job's rows in every list below a folder.
     *
     * @param unread takes the files that could not be looked into
     * @return what was done, a line a file
     * @throws IOException when a file cannot be written; a second run completes it
     */
    public List<String> ofLists(Path folder, List<Path> unread) throws IOException {
        List<String> done = new ArrayList<>();
        for (Path file : files(folder)) {
            String name = file.getFileName().toString();
            if (name.equals(OfficeFolder.NOTE)) {
                continue;
            }
            if (!name.matches("(?i).*\\.(xlsx?|ods|csv|txt)")) {
                if (isSheet(file)) {
                    Files.delete(file);
                    Disk.force(file.getParent());
                    done.add("deleted " + folder.getFileName() + "/" + folder.relativize(file));
                } else {
                    // An archive or a letter may hold a list too.
                    unread.add(file);
                }
                continue;
            }
            Optional<byte[]> left = erased(file, Set.of(), unread);
            if (left.isPresent()) {
                Disk.replace(file, left.get());
                done.add("emptied " + folder.getFileName() + "/" + folder.relativize(file));
            }
        }
        return done;
    }

    /** Whether it is a sheet of the job that somebody filled in. */
    private boolean isSheet(Path file) {
        try {
            return FilledForm.of(file).filter(form -> names(form.id().job())).isPresent();
        } catch (UnreadablePile damaged) {
            return false;
        }
    }

    /**
     * Deletes the signed papers of the job, and the pages about piles that name it.
     *
     * @param unread takes the pages that nobody placed, which may be of any job
     * @return what was done, a line a file
     * @throws IOException when a file cannot be deleted; a second run completes it
     */
    List<String> ofSigned(Office office, List<Path> unread) throws IOException {
        List<String> done = new ArrayList<>();
        for (Path entry : Office.list(office.signed())) {
            String name = entry.getFileName().toString();
            if (entry.equals(office.toPlace())) {
                unread.addAll(files(entry));
            } else if (Files.isDirectory(entry)
                    && name.equalsIgnoreCase(Office.signedFolder(key))) {
                Disk.delete(entry);
                done.add("deleted signed/" + name);
            } else if (name.endsWith(".html") && Keys.job(Files.readString(entry)).contains(key)) {
                Files.delete(entry);
                done.add("deleted signed/" + name);
            }
        }
        if (!done.isEmpty()) {
            Disk.force(office.signed());
        }
        return done;
    }

    /**
     * Deletes the drafts that tell of the job; those to makers tell of others too and are made
     * again without it.
     *
     * @return what was done, a line a file
     * @throws IOException when a file cannot be deleted; a second run completes it
     */
    List<String> ofDrafts(Office office) throws IOException {
        List<String> done = new ArrayList<>();
        SentNotes notes = SentNotes.of(office);
        for (Path file : files(office.send())) {
            String name = office.send().relativize(file).toString().replace('\\', '/');
            String stem = FileNames.stem(file);
            boolean own = DueLetters.stems(key).stream().anyMatch(stem::equalsIgnoreCase);
            if (own || stem.startsWith(SendDesk.MAKER) || name.equals(SendDesk.PAGE)) {
                Files.delete(file);
                notes.drop(name);
                done.add("deleted send/" + name);
            }
        }
        if (!done.isEmpty()) {
            notes.write();
            Disk.force(office.send());
        }
        return done;
    }

    private Optional<byte[]> erased(Path file, Set<String> headings, List<Path> unread) {
        try {
            return erased(file, headings);
        } catch (IOException | RuntimeException damaged) {
            unread.add(file);
            return Optional.empty();
        }
    }

    private Optional<byte[]> erased(Path file, Set<String> headings) throws IOException {
        String name = file.getFileName().toString().toLowerCase(Locale.ROOT);
        if (name.matches(".*\\.xlsx?")) {
            return new WorkbookErasure(this::names, headings).of(Files.readAllBytes(file));
        }
        if (name.endsWith(".ods") && headings.isEmpty()) {
            return new OpenSheetErasure(this::names).of(Files.readAllBytes(file));
        }
        if (name.endsWith(".csv") || name.endsWith(".txt") && headings.isEmpty()) {
            return new CsvErasure(this::names, headings).of(name, Files.readAllBytes(file));
        }
        return Optional.empty();
    }

    private boolean names(String cell) {
        return Keys.job(cell.replaceFirst("^'", "")).equals(key);
    }

    private static List<Path> files(Path folder) throws IOException {
        if (!Files.isDirectory(folder)) {
            return List.of();
        }
        try (Stream<Path> all = Files.walk(folder)) {
            return all.filter(Files::isRegularFile).sorted().toList();
        }
    }
}
