package paperbark.sheet;

import static paperbark.finding.FindingCode.FILE_MAY_BE_CUT;
import static paperbark.finding.FindingCode.FILE_TOO_LARGE;
import static paperbark.finding.FindingCode.FILE_UNREADABLE;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.zip.CRC32;
import java.util.zip.ZipEntry;
import java.util.zip.ZipException;
import java.util.zip.ZipFile;
import paperbark.finding.Place;

/**
 * Looks into a zip container before the spreadsheet library does. The library falls back to reading
 * a cut file from its start and then misses cells; the plain zip reader refuses such a file.
 */
final class ZipGate {
    private static final String CONTENT_TYPES = "[Content_Types].xml";
    private static final String OPEN_SHEET = "application/vnd.oasis.opendocument.spreadsheet";
    private static final int TEXT_BYTES = 1024 * 1024;

    private ZipGate() {}

    /** What the container holds; a workbook has passed every check when this returns. */
    static FileKind kind(Path file, Place place) throws Refused, IOException {
        try (ZipFile zip = new ZipFile(file.toFile())) {
            List<ZipEntry> entries = zip.stream().<ZipEntry>map(e -> e).toList();
            checkNames(entries, place);
            FileKind kind = kind(zip, entries, place);
            if (kind == FileKind.WORKBOOK) {
                checkContent(zip, entries, place);
                SheetCount.check(zip, entries, place);
            } else if (kind == FileKind.OPEN_SHEET) {
                checkContent(zip, entries, place);
                OpenSheetCount.check(zip, entries, place);
            }
            return kind;
        } catch (ZipException e) {
            throw Refused.because(
                    FILE_MAY_BE_CUT,
                    place,
                    "The file is not whole: its end is missing or damaged.",
                    "Wait until it is copied, or copy it again; if that does not help, open it and save it again.");
        }
    }

    private static FileKind kind(ZipFile zip, List<ZipEntry> entries, Place place)
            throws Refused, IOException {
        Set<String> names = new HashSet<>();
        entries.forEach(e -> names.add(e.getName().toLowerCase(Locale.ROOT)));
        if (names.contains("xl/workbook.bin")) {
            return FileKind.BINARY_WORKBOOK;
        }
        if (names.contains("word/document.xml")) {
            return FileKind.WORD;
        }
        if (names.contains("ppt/presentation.xml")) {
            return FileKind.PRESENTATION;
        }
        if (names.contains("mimetype")
                && (names.contains("content.xml") || names.contains("encrypted-package"))) {
            return openDocument(zip, names, place);
        }
        boolean workbook = names.contains("xl/workbook.xml") && zip.getEntry(CONTENT_TYPES) != null;
        return workbook ? FileKind.WORKBOOK : FileKind.ZIP;
    }

    private static FileKind openDocument(ZipFile zip, Set<String> names, Place place)
            throws Refused, IOException {
        if (!text(zip, "mimetype").strip().equals(OPEN_SHEET)) {
            return FileKind.OPEN_DOCUMENT;
        }
        boolean locked =
                names.contains("encrypted-package")
                        || text(zip, "META-INF/manifest.xml").contains("encryption-data");
        if (locked) {
            throw OldWorkbookGate.encrypted(place);
        }
        return FileKind.OPEN_SHEET;
    }

    private static String text(ZipFile zip, String name) throws IOException {
        ZipEntry entry = zip.getEntry(name);
        if (entry == null) {
            return "";
        }
        try (InputStream in = zip.getInputStream(entry)) {
            return new String(in.readNBytes(TEXT_BYTES), StandardCharsets.UTF_8);
        }
    }

    private static void checkNames(List<ZipEntry> entries, Place place) throws Refused {
        if (entries.size() > Limits.PARTS) {
            throw Refused.because(
                    FILE_TOO_LARGE,
                    place,
                    "The file is made of " + entries.size() + " parts; the limit is 1000.",
                    "Copy the rows to a new workbook and save that.");
        }
        Set<String> seen = new HashSet<>();
        for (ZipEntry entry : entries) {
            String name = entry.getName().replace('\\', '/').toLowerCase(Locale.ROOT);
            if (!seen.add(name) || name.startsWith("/") || ("/" + name + "/").contains("/../")) {
                throw Refused.because(
                        FILE_UNREADABLE,
                        place,
                        "The file has parts that no spreadsheet program writes.",
                        "Open it in the spreadsheet program and save it as a new .xlsx file.");
            }
        }
    }

    private static void checkContent(ZipFile zip, List<ZipEntry> entries, Place place)
            throws Refused, IOException {
        byte[] buffer = new byte[64 * 1024];
        long total = 0;
        for (ZipEntry entry : entries) {
            CRC32 sum = new CRC32();
            long before = total;
            try (InputStream in = zip.getInputStream(entry)) {
                for (int n = in.read(buffer); n >= 0; n = in.read(buffer)) {
                    sum.update(buffer, 0, n);
                    total += n;
                    if (total > Limits.INFLATED_BYTES) {
                        throw Refused.because(
                                FILE_TOO_LARGE,
                                place,
                                "Unpacked, the workbook has more than 300 MB.",
                                "Copy the week's rows to a new workbook and save that.");
                    }
                }
            }
            if (sum.getValue() != entry.getCrc() || total - before != entry.getSize()) {
                throw new ZipException("checksum of " + entry.getName());
            }
        }
    }
}
