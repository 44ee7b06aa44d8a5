package paperbark.batch;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.FileSystemException;
import java.nio.file.NoSuchFileException;
import java.nio.file.NotDirectoryException;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Stream;
import paperbark.disk.FolderLock;
import paperbark.ledger.LedgerBusyException;
import paperbark.ledger.LedgerException;
import paperbark.ledger.ServerAwayException;
import paperbark.rules.RulebookException;

/**
 * What the world around the program did wrong, in words for people.
 *
 * @param kind of trouble
 * @param said what is wrong and what to do
 */
public record Trouble(Kind kind, String said) {

    /** Kinds that people do something different about. */
    public enum Kind {
        /** No room on the disk. */
        FULL(Ending.DISK),
        /** Somebody's rights are missing. */
        RIGHTS(Ending.DISK),
        /** A file or folder is not there. */
        ABSENT(Ending.DISK),
        /** Anything else that the disk or the share does. */
        DISK(Ending.DISK),
        /** The ledger's server. */
        SERVER(Ending.DISK),
        /** Another program is at work in the same place. */
        BUSY(Ending.BUSY),
        /** The rule tables. */
        RULES(Ending.SETUP),
        /** The ledger is not what it should be; it does not become so by waiting. */
        LEDGER(Ending.UNTRUSTED);

        private final Ending ending;

        Kind(Ending ending) {
            this.ending = ending;
        }

        /** How a run ends because of it. */
        public Ending ending() {
            return ending;
        }
    }

    /** The trouble behind a failure; empty when the fault is our own. */
    public static Optional<Trouble> of(Throwable failure) {
        Throwable fault = cause(failure);
        if (fault instanceof RulebookException) {
            return Optional.of(new Trouble(Kind.RULES, fault.getMessage()));
        }
        if (fault instanceof LedgerException) {
            return Optional.of(new Trouble(Kind.LEDGER, fault.getMessage()));
        }
        if (fault instanceof LedgerBusyException || fault instanceof FolderLock.BusyException) {
            return Optional.of(new Trouble(Kind.BUSY, fault.getMessage()));
        }
        if (fault instanceof ServerAwayException) {
            return Optional.of(new Trouble(Kind.SERVER, fault.getMessage()));
        }
        return fault instanceof IOException io ? Optional.of(ofDisk(io)) : Optional.empty();
    }

    /**
     * Whether a failure is about one file or what lies below it, so that others may fare better.
     */
    public static boolean isAbout(Throwable failure, Path file) {
        return cause(failure) instanceof FileSystemException e
                && Stream.of(e.getFile(), e.getOtherFile())
                        .filter(Objects::nonNull)
                        // Not as paths: the settings of a computer may not know every letter.
                        .flatMap(f -> Stream.of(f.split("[/\\\\]")))
                        .anyMatch(file.getFileName().toString()::equals);
    }

    /** Whether a failure came from a disk or share itself, and not from what a file holds. */
    static boolean isOfFileSystem(Throwable failure) {
        return cause(failure) instanceof FileSystemException;
    }

    private static Throwable cause(Throwable failure) {
        return failure instanceof UncheckedIOException ? failure.getCause() : failure;
    }

    private static Trouble ofDisk(IOException fault) {
        String message = plain(String.valueOf(fault.getMessage()));
        String file = fault instanceof FileSystemException f ? plain(f.getFile()) : "";
        if (isFull(message)) {
            return new Trouble(Kind.FULL, sentence(message) + " Make room on the disk.");
        }
        if (fault instanceof NoSuchFileException) {
            return new Trouble(
                    Kind.ABSENT,
                    "Not found: " + file + ". Put it back, or name the one that is meant.");
        }
        if (fault instanceof AccessDeniedException) {
            return new Trouble(
                    Kind.RIGHTS,
                    "No permission: "
                            + file
                            + (isOnWindows(file)
                                    ? ". Close it, and what lies in it, wherever it is open. If it is not, give"
                                    : ". Give")
                            + " whoever runs the program the right to read and write there.");
        }
        if (message.contains("used by another process")) {
            return new Trouble(
                    Kind.DISK, "It is open in another program: " + file + ". Close it there.");
        }
        if (fault instanceof FileAlreadyExistsException
                || fault instanceof NotDirectoryException
                || message.endsWith("Not a directory")) {
            return new Trouble(
                    Kind.DISK,
                    "There is a file where a folder should be: " + file + ". Name a folder.");
        }
        if (message.endsWith("Is a directory")) {
            return new Trouble(Kind.DISK, "That is a folder, not a file. Name the file in it.");
        }
        String fact =
                fault instanceof FileSystemException f && f.getReason() != null
                        ? f.getReason() + ": " + file
                        : message;
        return new Trouble(
                Kind.DISK,
                sentence(fact)
                        + " Look whether the disk is there and may be written, and try again.");
    }

    /** There a file that is open can be neither renamed nor replaced. */
    private static boolean isOnWindows(String file) {
        return file.matches("(?s)([A-Za-z]:|\\\\).*");
    }

    /** Names what a file is to become, and not under which hidden name it is being written. */
    private static String plain(String named) {
        return String.valueOf(named)
                .replaceAll("(?<=^|[/\\\\ ])\\.([^/\\\\ ]+?)-\\d+(\\.part)?(?=$|[/\\\\ :])", "$1");
    }

    private static boolean isFull(String message) {
        String words = message.toLowerCase(Locale.ROOT);
        return Stream.of(
                        "no space left",
                        "not enough space",
                        "disk is full",
                        "database is full",
                        "quota exceeded")
                .anyMatch(words::contains);
    }

    private static String sentence(String words) {
        return words.endsWith(".") ? words : words + ".";
    }
}
