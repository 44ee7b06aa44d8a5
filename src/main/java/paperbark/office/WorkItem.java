package paperbark.office;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import java.util.stream.Stream;
import paperbark.batch.Disk;
import paperbark.fault.FaultPoint;

/**
 * A register that is being worked on: a folder of its own with the register in {@code source} and a
 * count of the starts that went at it.
 *
 * @param folder the folder
 */
record WorkItem(Path folder) {
    private static final String STARTS = "starts";

    /** Takes a file out of the intake, by one rename. */
    static WorkItem take(Office office, Path file) throws IOException {
        int number = 1;
        while (Files.exists(office.work().resolve(name(number)))) {
            number++;
        }
        WorkItem item = new WorkItem(office.work().resolve(name(number)));
        Files.createDirectories(item.sourceFolder());
        Disk.write(item.folder.resolve(STARTS), "0".getBytes(StandardCharsets.UTF_8));
        Disk.forceAll(item.folder);
        Disk.force(office.work());
        FaultPoint.NAMED.reach();
        Disk.move(file, item.sourceFolder().resolve(file.getFileName()));
        FaultPoint.TAKEN.reach();
        return item;
    }

    private static String name(int number) {
        return "%04d".formatted(number);
    }

    private Path sourceFolder() {
        return folder.resolve("source");
    }

    /** What goes back with the register, until all of it is there. */
    Path returning() {
        return folder.resolve("returning");
    }

    /** The register; empty when it was not taken yet or is gone already. */
    Optional<Path> source() throws IOException {
        return only(sourceFolder());
    }

    static Optional<Path> only(Path folder) throws IOException {
        if (!Files.isDirectory(folder)) {
            return Optional.empty();
        }
        try (Stream<Path> files = Files.list(folder)) {
            return files.findFirst();
        }
    }

    /** Counts a start, and tells how many there were. */
    int begin() throws IOException {
        Path count = folder.resolve(STARTS);
        int starts =
                Files.exists(count) ? Integer.parseInt(Files.readString(count).strip()) + 1 : 1;
        Disk.replace(count, String.valueOf(starts).getBytes(StandardCharsets.UTF_8));
        return starts;
    }

    /** Gives the register back to the intake, under its own name or a numbered one. */
    void putBack(Office office) throws IOException {
        Optional<Path> source = source();
        if (source.isPresent()) {
            Disk.move(
                    source.get(),
                    Office.free(office.intake(), source.get().getFileName().toString()));
        }
        Disk.delete(folder);
    }
}
