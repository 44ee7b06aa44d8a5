package paperbark.office;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.LinkOption;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.attribute.BasicFileAttributes;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Stream;

/**
 * Looks into the intake folder, by plain listing since shares send no notices. A file is ready when
 * its size and time stayed the same between two looks far enough apart, and nobody has it open.
 */
final class Intake {
    /** The reason that is over by itself in nearly all cases. */
    static final String JUST_COME = "It is being written, or has just come.";

    private static final String UNNAMEABLE =
            "Its name has letters that the program cannot read as it was started. Start it with LC_ALL=C.UTF-8 set, or give the file a plain name.";

    private static final Duration LONGEST_HELD = Duration.ofDays(1);

    private final Path folder;
    private final Duration quiet;
    private final Map<Path, Seen> seen = new HashMap<>();

    /**
     * An intake.
     *
     * @param quiet how long a file must stay the same
     */
    Intake(Path folder, Duration quiet) {
        this.folder = folder;
        this.quiet = quiet;
    }

    private record Seen(long size, Instant modified, Instant since) {}

    /**
     * What a look found.
     *
     * @param ready files to take, oldest first
     * @param waiting other files with the reason why they wait
     */
    record Look(List<Path> ready, Map<Path, String> waiting) {}

    /** Looks once. */
    Look look(Instant now) throws IOException {
        Map<Path, String> waiting = new HashMap<>();
        List<Path> ready = new ArrayList<>();
        List<Path> all;
        try (Stream<Path> files = Files.list(folder)) {
            all = files.filter(f -> !isSomebodyElses(f)).sorted().toList();
        }
        seen.keySet().retainAll(all);
        for (Path file : all) {
            try {
                String reason = canBeNamed(file) ? reasonToWait(file, now) : UNNAMEABLE;
                if (reason.isEmpty()) {
                    ready.add(file);
                } else {
                    waiting.put(file, reason);
                }
            } catch (NoSuchFileException vanished) {
                // Entries come and go on a share; the next look tells.
                seen.remove(file);
            } catch (IOException e) {
                // Whatever is the matter with one file, the others go on.
                waiting.put(file, "It cannot be looked at. Look whether it may be opened.");
            }
        }
        ready.sort(Comparator.comparing((Path f) -> seen.get(f).modified()).thenComparing(f -> f));
        return new Look(List.copyOf(ready), Map.copyOf(waiting));
    }

    /** Without a language set, the names of some files can be listed but not be said again. */
    private static boolean canBeNamed(Path file) {
        try {
            return file.resolveSibling(file.getFileName().toString()).equals(file);
        } catch (InvalidPathException e) {
            return false;
        }
    }

    /** The lock file of an office program; what a crashed one left behind is older than a day. */
    private static boolean isHeld(Path lock, Instant now) throws IOException {
        try {
            Instant taken = Files.getLastModifiedTime(lock).toInstant();
            return taken.plus(LONGEST_HELD).isAfter(now);
        } catch (NoSuchFileException none) {
            return false;
        }
    }

    private String reasonToWait(Path file, Instant now) throws IOException {
        BasicFileAttributes about =
                Files.readAttributes(file, BasicFileAttributes.class, LinkOption.NOFOLLOW_LINKS);
        if (!about.isRegularFile()) {
            return "It is no file but a folder, link or device. Drop the register itself.";
        }
        Instant modified = about.lastModifiedTime().toInstant();
        Seen before = seen.get(file);
        // A clock that was put back would else let the file wait until it has caught up.
        boolean same =
                before != null
                        && !before.since().isAfter(now)
                        && before.size() == about.size()
                        && before.modified().equals(modified);
        Seen current = new Seen(about.size(), modified, same ? before.since() : now);
        seen.put(file, current);
        if (isHeld(file.resolveSibling("~$" + file.getFileName()), now)
                || isHeld(file.resolveSibling(".~lock." + file.getFileName() + "#"), now)) {
            return "It is open in another program. Close it there.";
        }
        if (about.size() == 0) {
            return "It is still empty.";
        }
        boolean steady =
                same
                        && !now.isBefore(current.since().plus(quiet))
                        && (modified.isAfter(now) || !now.isBefore(modified.plus(quiet)));
        return steady ? "" : JUST_COME;
    }

    /** Lock and part files of editors, browsers and file systems are never touched. */
    static boolean isSomebodyElses(Path file) {
        String name = file.getFileName().toString().toLowerCase(Locale.ROOT);
        return name.startsWith(".")
                || name.startsWith("~$")
                || name.endsWith("~")
                || name.matches(".*\\.(tmp|temp|part|partial|crdownload|download|lnk)")
                || name.equals("thumbs.db")
                || name.equals("desktop.ini")
                || name.matches("[0-9a-f]{8}");
    }
}
