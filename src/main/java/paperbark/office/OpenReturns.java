package paperbark.office;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import paperbark.disk.FileNames;
import paperbark.ledger.Batches.BatchState;
import paperbark.ledger.Ledger;
import paperbark.value.Days;

/**
 * Which of the registers that went back still wait for a person. One whose name has a batch since
 * is done with, be its file an .xls before and an .xlsx now; its folder stays until somebody
 * deletes it.
 */
final class OpenReturns {
    private static final int DAY = "2026-11-30".length();

    private final Office office;

    OpenReturns(Office office) {
        this.office = office;
    }

    /**
     * Names of their folders, newest first.
     *
     * @param asksLedger whether the ledger can be asked; without it all of them wait
     */
    List<String> names(boolean asksLedger) throws IOException {
        List<Path> folders =
                Office.list(office.returned()).stream()
                        .filter(f -> Files.isDirectory(f) && !Office.isHidden(f))
                        .sorted(Comparator.comparing(Path::getFileName).reversed())
                        .toList();
        List<Path> open = new ArrayList<>(folders);
        if (asksLedger && !folders.isEmpty()) {
            try (Ledger ledger = Ledger.open(office.ledger())) {
                for (Path folder : folders) {
                    if (isDone(folder, ledger)) {
                        open.remove(folder);
                    }
                }
            }
        }
        return open.stream().map(f -> f.getFileName().toString()).toList();
    }

    private boolean isDone(Path folder, Ledger ledger) throws IOException {
        Path note = folder.resolve(OfficeFolder.NOTE);
        Optional<LocalDate> day = day(folder.getFileName().toString());
        if (!Files.isRegularFile(note) || day.isEmpty()) {
            return false;
        }
        FileTime returned = Files.getLastModifiedTime(note);
        List<String> names = Office.list(folder).stream().map(FileNames::stem).toList();
        for (BatchState batch : ledger.batches().after(day.get().minusDays(1))) {
            Path manifest = office.packs().resolve(batch.name()).resolve("manifest.json");
            if (names.contains(FileNames.stem(Path.of(batch.register())))
                    && Files.isRegularFile(manifest)
                    && Files.getLastModifiedTime(manifest).compareTo(returned) > 0) {
                return true;
            }
        }
        return false;
    }

    /** The day that begins the folder's name. */
    private static Optional<LocalDate> day(String name) {
        return Days.parse(name.substring(0, Math.min(DAY, name.length()))).toOptional();
    }
}
