package paperbark.office;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import java.util.stream.Stream;
import paperbark.disk.Disk;
import paperbark.fault.FaultPoint;

/**
 * A register, or a pile of scans, that is being worked on: a folder of its own with the register in
 * {@code source} and a count of the times that the program failed at it.
 *
 * @param folder the folder
 */
record WorkItem(Path folder) {
    private static final String FAULTS = "faults";
    private static final String SCAN = "scan-";

    /** Takes a file out of the intake, by one rename. */
    static WorkItem take(Office office, Path file) throws IOException {
        return take(office, file, "");
    }

    /** Takes a pile out of the folder of scans, by one rename. */
    static WorkItem takeScan(Office office, Path file) throws IOException {
        return take(office, file, SCAN);
    }

    /** Whether it is a pile of scanned pages and no register. */
    boolean isScan() {
        return folder.getFileName().toString().startsWith(SCAN);
    }

    private static WorkItem take(Office office, Path file, String prefix) throws IOException {
        int number = 1;
        while (Files.exists(office.work().resolve(prefix + name(number)))) {
            number++;
        }
        WorkItem item = new WorkItem(office.work().resolve(prefix + name(number)));
        Disk.makeFolders(item.sourceFolder());
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

    /** Where a register is made that dropped answers complete. */
    Path answered() {
        return folder.resolve("answered");
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

    /**
     * How often the program failed at it; a kill or a cut of power is no fault of the register's.
     */
    int faults() throws IOException {
        Path count = folder.resolve(FAULTS);
        return Files.exists(count) ? Integer.parseInt(Files.readString(count).strip()) : 0;
    }

    /** Counts a failure. */
    void countFault() throws IOException {
        Disk.replace(
                folder.resolve(FAULTS),
                String.valueOf(faults() + 1).getBytes(StandardCharsets.UTF_8));
    }

    /**
     * Gives the file back to where it came from, under its own name or a numbered one. One that is
     * among what goes back with it already stays there, and the next start finishes that.
     */
    void putBack(Office office) throws IOException {
        Optional<Path> source = source();
        if (source.isPresent()) {
            Disk.move(
                    source.get(),
                    Office.free(
                            isScan() ? office.scans() : office.intake(),
                            source.get().getFileName().toString()));
        }
        if (source.isPresent() || !Files.isDirectory(returning())) {
            Disk.delete(folder);
        }
    }
}
