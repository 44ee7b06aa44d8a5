package paperbark.office;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;
import paperbark.disk.Disk;
import paperbark.disk.FileNames;
import paperbark.disk.Hashes;
import paperbark.ledger.Keys;
import paperbark.ledger.LedgerPlace;
import paperbark.output.index.PapersPage;

/**
 * The paths of an office folder.
 *
 * @param root the folder, with links resolved
 */
public record Office(Path root) {

    /**
     * The office in a folder; what is missing of intake, scans, work, packs, returned and filed is
     * made.
     *
     * @throws IOException when the folder is not there or cannot be written
     */
    public static Office in(Path folder) throws IOException {
        Office office = new Office(folder.toRealPath());
        for (Path path :
                new Path[] {
                    office.intake(),
                    office.scans(),
                    office.work(),
                    office.packs(),
                    office.returned(),
                    office.filed()
                }) {
            Disk.makeFolders(path);
        }
        return office;
    }

    /** Whether a folder looks like an office: it has an intake, or a ledger is or was there. */
    public static boolean isOffice(Path folder) {
        return Stream.of("intake", "tables", "tables.xlsx", LedgerPlace.FILE, LedgerPlace.NOTE)
                .anyMatch(name -> Files.exists(folder.resolve(name)));
    }

    /** Where registers are dropped. */
    public Path intake() {
        return root.resolve("intake");
    }

    /** Where piles of scanned pages are dropped. */
    public Path scans() {
        return root.resolve("scans");
    }

    /** Where people put photographs, certificates and receipts of their jobs. */
    public Path photos() {
        return root.resolve("photos");
    }

    /** Papers that came back, a folder a job, with the pages that nobody could place yet. */
    public Path signed() {
        return root.resolve("signed");
    }

    /** The name of the folder of a job's signed papers: no two jobs have the same. */
    static String signedFolder(String job) {
        String slug = FileNames.slug(job);
        return slug.equals(job)
                ? slug
                : slug
                        + "-"
                        + Hashes.sha256(Keys.job(job).getBytes(StandardCharsets.UTF_8))
                                .substring(0, 6);
    }

    /**
     * The name of a signed paper in that folder: after job and paper, and after the version from
     * the second on.
     *
     * @param title the paper's name for people
     * @param version which version of the job it was printed for, from 1
     */
    static String signedName(String job, String title, int version) {
        return signedFolder(job)
                + "-"
                + title.toLowerCase(Locale.ROOT).replaceAll("[^a-z]+", "-")
                + (version > 1 ? "-version-" + version : "")
                + ".pdf";
    }

    /** Scanned pages that a person places. */
    public Path toPlace() {
        return signed().resolve("to-place");
    }

    /** Where a register is while it is worked on. */
    public Path work() {
        return root.resolve("work");
    }

    /** What the process that attends the folder has in files for a moment only. */
    Path temporary() {
        return work().resolve(".temporary");
    }

    /** Published batches. */
    public Path packs() {
        return root.resolve("packs");
    }

    /** Drafts of what leaves the house, a folder a batch, with a page that lists them. */
    public Path send() {
        return root.resolve("send");
    }

    /** Registers that could not be used. */
    public Path returned() {
        return root.resolve("returned");
    }

    /** Registers that were used, as they came. */
    public Path filed() {
        return root.resolve("filed");
    }

    /** Copies of the ledger, one a day. */
    public Path backups() {
        return root.resolve("backups");
    }

    /**
     * The ledger.
     *
     * @throws paperbark.ledger.LedgerException when it is not clear which one that is
     */
    public LedgerPlace ledger() {
        return LedgerPlace.in(root);
    }

    /** The file that the ledger lies in, unless it is on a server. */
    Path ledgerFile() {
        return root.resolve(LedgerPlace.FILE);
    }

    /** The page that shows how things stand. */
    public Path status() {
        return root.resolve("status.html");
    }

    /** The days that the office must not forget. */
    public Path calendar() {
        return root.resolve("calendar.ics");
    }

    /**
     * A file of the page of the week.
     *
     * @param ending {@code .html}, {@code .pdf} or {@code .eml}
     */
    public Path week(String ending) {
        return root.resolve("week" + ending);
    }

    /** The page that shows how the papers stand that people sign. */
    public Path papersPage() {
        return root.resolve(PapersPage.FILE);
    }

    /** The file whose lock says that a program attends the folder. */
    Path lock() {
        return root.resolve("office.lock");
    }

    /** Who holds the lock, for people. */
    Path lockInfo() {
        return root.resolve("office.lock.info");
    }

    /** The firm's tables: a folder, or a workbook where there is no folder. */
    public Path tables() {
        Path workbook = root.resolve("tables.xlsx");
        Path folder = root.resolve("tables");
        return !Files.isDirectory(folder) && Files.exists(workbook) ? workbook : folder;
    }

    /** The firm's newer rule tables, where it has some. */
    public Optional<Path> rules() {
        return folder(
                Files.isDirectory(tables()) ? tables().resolve("rules") : root.resolve("rules"));
    }

    /** The firm's templates, where it has some. */
    public Optional<Path> templates() {
        return folder(root.resolve("templates"));
    }

    private static Optional<Path> folder(Path path) {
        return Files.isDirectory(path) ? Optional.of(path) : Optional.empty();
    }

    /** What lies in a folder, by name; nothing where there is none. */
    static List<Path> list(Path folder) throws IOException {
        if (!Files.isDirectory(folder)) {
            return List.of();
        }
        try (Stream<Path> all = Files.list(folder)) {
            return all.sorted().toList();
        }
    }

    /** Whether a name is one of those that are not shown. */
    static boolean isHidden(Path path) {
        return path.getFileName().toString().startsWith(".");
    }

    /**
     * A name in a folder that nothing has yet: the name itself, or with a number behind its stem.
     */
    static Path free(Path folder, String name) {
        return FileNames.free(folder, name);
    }
}
