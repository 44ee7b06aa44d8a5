package paperbark.office;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import paperbark.batch.AdviceFiles;
import paperbark.ledger.LedgerPlace;

/**
 * What an office's folders tell of its ledger.
 *
 * @param office the office
 * @param batches published batches
 * @param advices files of settled advices and other entries without a folder
 * @param filed folders of registers that were taken in, named after their batches
 */
record Witnesses(Office office, BatchFolders batches, List<Path> advices, List<Path> filed) {
    /** How the folder of a register ends whose jobs were all known. */
    static final String NOTHING_NEW = "-nothing-new";

    /** All of them, with every batch folder read. */
    static Witnesses of(Office office) throws IOException {
        return of(office, ProvedFiles.none());
    }

    /** All of them, without reading the batch folders that are as they were. */
    static Witnesses of(Office office, ProvedFiles proved) throws IOException {
        return new Witnesses(
                office,
                new BatchFolders(office, proved),
                Office.list(office.root().resolve(AdviceFiles.FOLDER)).stream()
                        .filter(f -> !Office.isHidden(f))
                        .filter(f -> f.getFileName().toString().endsWith(".json"))
                        .toList(),
                filedIn(office));
    }

    private static List<Path> filedIn(Office office) throws IOException {
        List<Path> folders = new ArrayList<>();
        for (Path year : Office.list(office.filed())) {
            if (year.getFileName().toString().matches("\\d{4}")) {
                for (Path folder : Office.list(year)) {
                    String name = folder.getFileName().toString();
                    if (name.matches("\\d{4}-\\d{2}-\\d{2}-.*") && !name.endsWith(NOTHING_NEW)) {
                        folders.add(folder);
                    }
                }
            }
        }
        return folders;
    }

    /** One of them that tells that there was a ledger; its key does too. */
    Optional<Path> any() throws IOException {
        return anyEntry()
                .or(
                        () ->
                                Optional.of(new LedgerPlace.InFile(office.ledgerFile()).key())
                                        .filter(Files::exists));
    }

    /** One of them that tells of something that went into a ledger. */
    Optional<Path> anyEntry() throws IOException {
        return Stream.of(
                        batches.all().stream().map(BatchFolders.Found::folder),
                        advices.stream(),
                        filed.stream(),
                        Backups.newestFirst(office).stream())
                .flatMap(all -> all)
                .findFirst();
    }

    /** The register of a batch, as it was filed. */
    Optional<Path> registerOf(String batch) throws IOException {
        for (Path folder : filed) {
            if (folder.getFileName().toString().equals(batch)) {
                return Office.list(folder).stream()
                        .filter(f -> !Office.isHidden(f) && Files.isRegularFile(f))
                        .findFirst();
            }
        }
        return Optional.empty();
    }
}
