package paperbark.office;

import java.io.IOException;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.List;
import paperbark.disk.Rights;

/** Looks at the folders and the disk that an office stands on. */
final class FolderCheck {
    /** A week of packs needs about a tenth of it. */
    static final long ENOUGH_BYTES = 200_000_000;

    private static final long MEGABYTE = 1_000_000;

    private final Office office;

    FolderCheck(Office office) {
        this.office = office;
    }

    /** Each folder is there, and a file can be made in it. */
    List<CheckResult> folders() {
        List<CheckResult> checks = new ArrayList<>();
        for (Path folder : stations()) {
            String name = folder.getFileName() + "/";
            if (!Files.isDirectory(folder)) {
                checks.add(CheckResult.setup(name, "is missing. setup makes it."));
                continue;
            }
            try {
                Files.delete(Files.createTempFile(folder, ".", ".part"));
                checks.add(CheckResult.well(name, "can be written"));
            } catch (IOException e) {
                checks.add(
                        CheckResult.disk(
                                name,
                                "cannot be written. Make room, or give yourself the right to write there."));
            }
        }
        return checks;
    }

    /**
     * Where people put files of jobs; it may be a link of the firm's own, and need not be there.
     */
    List<CheckResult> photos() {
        Path folder = office.photos();
        String name = folder.getFileName() + "/";
        if (Files.isDirectory(folder)) {
            return List.of(
                    Files.isReadable(folder)
                            ? CheckResult.well(name, "can be read")
                            : CheckResult.disk(
                                    name, "cannot be read. Give yourself the right to read it."));
        }
        return Files.exists(folder, LinkOption.NOFOLLOW_LINKS)
                ? List.of(
                        CheckResult.setup(
                                name,
                                "is no folder, or a link that leads nowhere. Put a folder there, or"
                                        + " mend the link."))
                : List.of();
    }

    private List<Path> stations() {
        List<Path> all =
                new ArrayList<>(
                        List.of(
                                office.root(),
                                office.intake(),
                                office.packs(),
                                office.returned(),
                                office.filed()));
        // The first start makes it.
        if (Files.exists(office.work())) {
            all.add(2, office.work());
        }
        return all;
    }

    /** Who may read what lies here; people's bank details do. */
    List<CheckResult> readers() throws IOException {
        List<CheckResult> checks = new ArrayList<>();
        List<Path> folders = new ArrayList<>(stations());
        folders.addAll(List.of(office.photos(), office.signed(), office.send()));
        for (Path folder : folders) {
            if (Files.isDirectory(folder)) {
                String readers = Rights.readers(folder);
                String who = readers.isEmpty() ? "by you alone" : "by " + readers + " too";
                boolean root = folder.equals(office.root());
                if (root || !readers.equals(Rights.readers(office.root()))) {
                    checks.add(
                            CheckResult.well(
                                    "readers",
                                    (root ? "what is made here" : folder.getFileName() + "/")
                                            + " can be read "
                                            + who));
                }
            }
        }
        return checks;
    }

    /** There is room for more. */
    CheckResult space() throws IOException {
        long free = Files.getFileStore(office.root()).getUsableSpace();
        String said = free / MEGABYTE + " MB free";
        return free < ENOUGH_BYTES
                ? CheckResult.disk("space", said + ". Make room: a batch may not fit.")
                : CheckResult.well("space", said);
    }

    /** A file can go from folder to folder by a rename alone. */
    CheckResult oneFileSystem() throws IOException {
        List<Path> stations = stations();
        Path file = Files.createTempFile(stations.get(0), ".", ".part");
        try {
            for (Path station : stations) {
                file =
                        Files.move(
                                file,
                                station.resolve(file.getFileName()),
                                StandardCopyOption.ATOMIC_MOVE);
            }
            return CheckResult.well("one disk", "files go from folder to folder by a rename");
        } catch (AtomicMoveNotSupportedException e) {
            return CheckResult.setup(
                    "one disk",
                    "intake, work, packs, returned and filed are not on one disk. Put plain folders in the place of links.");
        } finally {
            Files.deleteIfExists(file);
        }
    }
}
