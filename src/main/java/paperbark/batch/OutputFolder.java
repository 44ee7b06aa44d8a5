package paperbark.batch;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Stream;
import paperbark.disk.Computer;
import paperbark.disk.Disk;

/**
 * What tells one output folder from another in a ledger that several share. The id, with what the
 * office is called behind it, lies in the folder, in the first line of a file whose other lines say
 * where the folder is: a copy of it is another folder with the same id.
 */
public final class OutputFolder {
    private static final String NAME = ".paperbark-place";
    private static final String COPIED = "copied from ";

    private OutputFolder() {}

    /** The folder's id, if it has one. */
    public static Optional<String> known(Path folder) throws IOException {
        return lines(folder).stream().findFirst();
    }

    /** The folder's id, made when it has none yet. */
    public static String id(Path folder) throws IOException {
        Optional<String> known = known(folder);
        return known.isPresent() ? known.get() : renew(folder);
    }

    /** Gives the folder an id of its own, and notes which it had before. */
    public static String renew(Path folder) throws IOException {
        String id = UUID.randomUUID() + office(folder);
        List<String> lines = new ArrayList<>(List.of(id, folder.toRealPath().toString()));
        Stream.concat(copiedFrom(folder).stream(), known(folder).stream())
                .forEach(before -> lines.add(COPIED + before));
        write(folder, lines);
        return id;
    }

    /** The ids of folders that it was a copy of: what lay there then lies here too. */
    public static List<String> copiedFrom(Path folder) throws IOException {
        return lines(folder).stream()
                .filter(line -> line.startsWith(COPIED))
                .map(line -> line.substring(COPIED.length()))
                .toList();
    }

    /** What tells people which office it is, where several share a ledger. */
    private static String office(Path folder) throws IOException {
        Path office = folder.toRealPath().getParent();
        return office == null || office.getFileName() == null
                ? ""
                : " "
                        + office.getFileName().toString().replaceAll("\\p{C}", "?")
                        + Computer.named(" on ");
    }

    /** Notes that the folder with this id is here too: it was moved, or has a second name. */
    public static void bind(Path folder) throws IOException {
        List<String> lines = new ArrayList<>(lines(folder));
        String here = folder.toRealPath().toString();
        if (!lines.isEmpty() && !lines.contains(here)) {
            lines.add(here);
            write(folder, lines);
        }
    }

    /**
     * Where else the folder with this id is said to be, when it is not known to be here. One of an
     * earlier version, which noted no place, is nowhere else.
     */
    public static Optional<String> elsewhere(Path folder) throws IOException {
        List<String> lines = lines(folder);
        List<String> places =
                lines.stream().skip(1).filter(line -> !line.startsWith(COPIED)).toList();
        for (String place : places) {
            Path there = Path.of(place);
            if (Files.isDirectory(there) && Files.isSameFile(there, folder)) {
                return Optional.empty();
            }
        }
        return places.stream().findFirst();
    }

    private static List<String> lines(Path folder) throws IOException {
        Path file = folder.resolve(NAME);
        return Files.isRegularFile(file)
                ? Files.readAllLines(file).stream()
                        .map(String::strip)
                        .filter(line -> !line.isEmpty())
                        .toList()
                : List.of();
    }

    private static void write(Path folder, List<String> lines) throws IOException {
        Disk.replace(
                folder.resolve(NAME),
                (String.join("\n", lines) + "\n").getBytes(StandardCharsets.UTF_8));
    }
}
