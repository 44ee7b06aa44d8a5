package paperbark.sheet;

import static paperbark.finding.FindingCode.FILE_MISLABELLED;
import static paperbark.finding.FindingCode.FILE_TOO_LARGE;
import static paperbark.finding.FindingCode.FILE_UNREADABLE;
import static paperbark.finding.FindingCode.REGISTER_EMPTY;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.AccessDeniedException;
import java.nio.file.DirectoryIteratorException;
import java.nio.file.DirectoryStream;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import paperbark.finding.Place;
import paperbark.value.Nearest;

/** Lets in only whole files of a kind that can be read, and tells the kind by their content. */
final class FileGate {
    private static final int HEAD_BYTES = 512;

    private FileGate() {}

    /** Opens the file only after it is known to be a regular one: a pipe would block for ever. */
    static FileKind pass(Path file, Place place) throws Refused, IOException {
        BasicFileAttributes attributes;
        try {
            attributes = Files.readAttributes(file, BasicFileAttributes.class);
        } catch (NoSuchFileException e) {
            throw Refused.because(
                    FILE_UNREADABLE, place, "There is no file of this name.", nearest(file));
        } catch (FileSystemException e) {
            throw Refused.because(
                    FILE_UNREADABLE,
                    place,
                    "The file cannot be reached.",
                    "Check the name and the folder, and whether you may look into it.");
        }
        checkAttributes(attributes, place);
        String ending = ending(place.file());
        FileKind kind = kind(file, place);
        checkEnding(kind, ending, place);
        return kind;
    }

    static void checkSize(long bytes, Place place) throws Refused {
        if (bytes == 0) {
            throw Refused.because(
                    REGISTER_EMPTY,
                    place,
                    "The file is empty: it has 0 bytes.",
                    "Save or copy the file again.");
        }
        if (bytes > Limits.FILE_BYTES) {
            throw Refused.because(
                    FILE_TOO_LARGE,
                    place,
                    String.format(
                            Locale.ROOT,
                            "The file has %,d bytes; the limit is %,d.",
                            bytes,
                            Limits.FILE_BYTES),
                    "Remove pictures and old rows, or save the week's rows as a file of their own.");
        }
    }

    private static void checkAttributes(BasicFileAttributes attributes, Place place)
            throws Refused {
        if (attributes.isDirectory()) {
            throw Refused.because(
                    FILE_UNREADABLE,
                    place,
                    "This is a folder, not a file.",
                    "Name the spreadsheet inside it.");
        }
        if (!attributes.isRegularFile()) {
            throw Refused.because(
                    FILE_UNREADABLE,
                    place,
                    "This is a pipe or device, not a file.",
                    "Save the spreadsheet as an ordinary file.");
        }
        checkSize(attributes.size(), place);
    }

    private static FileKind kind(Path file, Place place) throws Refused, IOException {
        byte[] head;
        try (InputStream in = Files.newInputStream(file)) {
            head = in.readNBytes(HEAD_BYTES);
        } catch (AccessDeniedException e) {
            throw Refused.because(
                    FILE_UNREADABLE,
                    place,
                    "The file may not be opened by this user.",
                    "Close it elsewhere, or ask for permission to read it.");
        }
        return switch (FileKind.ofFirstBytes(head)) {
            case ZIP -> ZipGate.kind(file, place);
            case OLE -> OldWorkbookGate.kind(file, place);
            default -> FileKind.ofFirstBytes(head);
        };
    }

    private static void checkEnding(FileKind kind, String ending, Place place) throws Refused {
        Optional<FileKind> promised = FileKind.promisedBy(ending);
        if (promised.isPresent() && promised.get() != kind) {
            throw Refused.because(
                    FILE_MISLABELLED,
                    place,
                    "The name ends in ."
                            + ending
                            + ", which means "
                            + promised.get().words()
                            + ", but the file holds "
                            + kind.words()
                            + ".",
                    kind.opensAsSheet()
                            ? "Open it in the spreadsheet program and save it as .xlsx."
                            : "Use the spreadsheet itself, saved as .xlsx.");
        }
        if (!kind.isReadable()) {
            throw Refused.because(
                    FILE_UNREADABLE,
                    place,
                    "The file is "
                            + kind.words()
                            + "; only .xlsx, .xlsm, .xls, .ods and .csv are read.",
                    kind.opensAsSheet()
                            ? "Open it in the spreadsheet program and save it as .xlsx."
                            : "Use the spreadsheet itself, saved as .xlsx.");
        }
    }

    private static String ending(String name) {
        int dot = name.lastIndexOf('.');
        return dot < 0 ? "" : name.substring(dot + 1).toLowerCase(Locale.ROOT);
    }

    /** What to do about a name that no file has: files of the folder may be nearly called so. */
    private static String nearest(Path file) {
        Path folder = file.resolveSibling("");
        List<String> names = new ArrayList<>();
        try (DirectoryStream<Path> all = Files.newDirectoryStream(folder, Files::isRegularFile)) {
            all.forEach(other -> names.add(other.getFileName().toString()));
        } catch (IOException | DirectoryIteratorException e) {
            return "There is no folder " + folder + "; check its name.";
        }
        return Nearest.to(file.getFileName().toString(), names)
                .map(near -> "Type \"" + near + "\" if that is meant, or check the folder.")
                .orElse("Check the name and the folder.");
    }
}
