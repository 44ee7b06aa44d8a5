package paperbark.office;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import paperbark.batch.EntryFile;

/** The published batches of an office, known by what is in their folders and not by their names. */
final class BatchFolders {
    private final Map<String, List<Found>> found = new TreeMap<>();
    private final List<String> unsound = new ArrayList<>();

    /**
     * A folder with the entry that its manifest vouches for.
     *
     * @param folder the folder
     * @param batch name of the batch
     * @param known what an unchanged folder was found to tell before
     * @param read the entry, where it was read
     */
    record Found(
            Path folder, String batch, Optional<ProvedFiles.Told> known, Optional<EntryFile> read) {
        /** The entry of its batch; empty when somebody took it away meanwhile. */
        Optional<EntryFile> entry() throws IOException {
            return read.isPresent() ? read : EntryFile.ofBatch(folder);
        }
    }

    /**
     * Looks into the folders.
     *
     * @param proved what unchanged folders were found to tell before
     */
    BatchFolders(Office office, ProvedFiles proved) throws IOException {
        for (Path folder : Office.list(office.packs())) {
            if (!Office.isHidden(folder) && Files.isDirectory(folder)) {
                Optional<Found> batch = look(folder, proved.known(folder));
                if (batch.isPresent()) {
                    found.computeIfAbsent(batch.get().batch(), n -> new ArrayList<>())
                            .add(batch.get());
                } else if (Files.exists(folder.resolve(EntryFile.NAME))) {
                    unsound.add(folder.getFileName().toString());
                }
            }
        }
    }

    private static Optional<Found> look(Path folder, Optional<ProvedFiles.Told> known)
            throws IOException {
        return known.isPresent()
                ? Optional.of(new Found(folder, known.get().name(), known, Optional.empty()))
                : EntryFile.ofBatch(folder)
                        .map(e -> new Found(folder, e.entry().name(), known, Optional.of(e)));
    }

    /** The names of the batches that lie here. */
    Set<String> names() {
        return found.keySet();
    }

    /** Every folder that holds an entry. */
    List<Found> all() {
        return found.values().stream().flatMap(List::stream).toList();
    }

    /**
     * The folders of a batch, its own first; one that is not as its manifest says is its own too.
     */
    List<Path> of(Office office, String batch) {
        List<Path> folders = new ArrayList<>();
        Path own = office.packs().resolve(batch);
        if (Files.isDirectory(own)) {
            folders.add(own);
        }
        found.getOrDefault(batch, List.of()).stream()
                .map(Found::folder)
                .filter(f -> !f.equals(own))
                .forEach(folders::add);
        return folders;
    }

    /** What somebody should look at, a line a folder. */
    List<String> noticed() {
        List<String> lines = new ArrayList<>();
        found.forEach(
                (batch, folders) -> {
                    for (Found one : folders) {
                        String name = one.folder().getFileName().toString();
                        if (!name.equals(batch)) {
                            lines.add(
                                    "packs/"
                                            + name
                                            + (folders.size() > 1
                                                    ? " is a copy of batch "
                                                            + batch
                                                            + ". Delete it."
                                                    : " is batch "
                                                            + batch
                                                            + ". Give it its name back."));
                        }
                    }
                });
        unsound.forEach(
                name ->
                        lines.add(
                                "packs/"
                                        + name
                                        + "/"
                                        + EntryFile.NAME
                                        + " is not as the batch's manifest says. Bring it back from a"
                                        + " backup."));
        return lines;
    }
}
