package paperbark.office;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.FileVisitResult;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.SimpleFileVisitor;
import java.nio.file.attribute.BasicFileAttributes;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.SortedSet;
import java.util.TreeSet;
import org.apache.commons.codec.digest.DigestUtils;
import paperbark.finding.Finding;
import paperbark.rules.RuleTable;
import paperbark.rules.Rulebook;
import paperbark.rules.StateBoxRow;
import paperbark.value.State;

/**
 * Looks at {@code photos/} again and again, as cheaply as it can: the folder is listed once a
 * minute, a register is read when it is new, and a picture when it is new.
 */
final class PhotoDesk {
    private static final Duration OFTENEST = Duration.ofMinutes(1);
    private static final int LISTED = 20;

    private final Office office;
    private Instant listedAt = Instant.MIN;
    private String print = "";
    private Object firmsFiles = "";
    private FiledJobs filed;
    private Optional<PhotoCheck> check = Optional.empty();

    PhotoDesk(Office office) {
        this.office = office;
        this.filed = new FiledJobs(office);
    }

    /** What the registers say. */
    FiledJobs filed() {
        return filed;
    }

    /** Registers are read with the firm's tables. */
    void readAnewAfter(Object firmsFilesNow) {
        if (!firmsFilesNow.equals(firmsFiles)) {
            firmsFiles = firmsFilesNow;
            filed = new FiledJobs(office);
        }
    }

    /** Letters that change with what lies there; empty where nothing does. */
    String print(Instant now) {
        boolean due = now.isBefore(listedAt) || !now.isBefore(listedAt.plus(OFTENEST));
        if (listedAt.equals(Instant.MIN) || due) {
            listedAt = now;
            print = print(office);
        }
        return print;
    }

    private static String print(Office office) {
        SortedSet<String> files = new TreeSet<>();
        try {
            if (Files.isDirectory(office.photos())) {
                Files.walkFileTree(office.photos().toRealPath(), new Names(files));
            }
        } catch (IOException | UncheckedIOException unreadable) {
            // Whoever looks at the files says so.
            files.add("unreadable");
        }
        return files.isEmpty() ? "" : DigestUtils.sha256Hex(String.join("\n", files));
    }

    /** What would change the print. */
    private static final class Names extends SimpleFileVisitor<Path> {
        private final SortedSet<String> files;

        Names(SortedSet<String> files) {
            this.files = files;
        }

        @Override
        public FileVisitResult visitFile(Path file, BasicFileAttributes about) {
            if (!Intake.isSomebodyElses(file) && !JobFiles.isWord(file)) {
                files.add(file + " " + about.size() + " " + about.lastModifiedTime());
            }
            return FileVisitResult.CONTINUE;
        }

        @Override
        public FileVisitResult visitFileFailed(Path file, IOException failure) {
            files.add(file + " unreadable");
            return FileVisitResult.CONTINUE;
        }
    }

    /**
     * What there is to say; nothing where nothing lies there, since such an office does not use the
     * folder.
     *
     * @throws IOException when the folder cannot be listed
     */
    Optional<Photos.Result> look(LedgerFacts facts, Instant now) throws IOException {
        if (print(now).isEmpty()) {
            return Optional.empty();
        }
        RuleTable<State, StateBoxRow> boxes = Rulebook.load(office.rules()).stateBoxes();
        PhotoCheck fresh = check.map(before -> before.again(boxes)).orElse(PhotoCheck.with(boxes));
        check = Optional.of(fresh);
        return Optional.of(Photos.look(facts, new Photos.Tools(office, filed, fresh)));
    }

    /** The findings as lines, the first of them only. */
    static List<String> lines(Photos.Result result) {
        List<String> all = result.findings().stream().map(PhotoDesk::line).toList();
        if (all.size() <= LISTED) {
            return all;
        }
        List<String> first = new ArrayList<>(all.subList(0, LISTED));
        first.add("And " + (all.size() - LISTED) + " more of photos/: see the command photos.");
        return first;
    }

    private static String line(Finding finding) {
        return finding.job().map(job -> "Job " + job + ": ").orElse("photos/: ")
                + finding.fact()
                + " "
                + finding.remedy();
    }
}
