package paperbark.sheet;

import static paperbark.finding.FindingCode.FILE_ENCRYPTED;
import static paperbark.finding.FindingCode.FILE_MAY_BE_CUT;
import static paperbark.finding.FindingCode.FILE_UNREADABLE;

import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.file.Path;
import java.util.Set;
import org.apache.poi.poifs.filesystem.DirectoryNode;
import org.apache.poi.poifs.filesystem.POIFSFileSystem;
import paperbark.finding.Place;

/**
 * Looks into an OLE2 container, the form of .xls files and of workbooks with a password. Walks the
 * records of an .xls itself, because the library would try a default password of its own.
 */
final class OldWorkbookGate {
    private static final int RECORD_END_OF_PART = 0x0A;
    private static final int RECORD_PASSWORD = 0x2F;
    private static final int RECORD_SHEET = 0x85;
    private static final int RECORD_ROW = 0x208;
    private static final int RECORD_MANY_NUMBERS = 0xBD;
    private static final int RECORD_MANY_BLANKS = 0xBE;

    /** Formula, label from the table, error or boolean, number, label, packed number. */
    private static final Set<Integer> VALUES = Set.of(0x06, 0xFD, 0x205, 0x203, 0x204, 0x27E);

    private OldWorkbookGate() {}

    /** What the container holds; an .xls has passed every check when this returns. */
    static FileKind kind(Path file, Place place) throws Refused, IOException {
        try {
            return inContainer(file, place);
        } catch (IOException | RuntimeException e) {
            // The library finds out about a missing end wherever it happens to look for it.
            throw cut(place);
        }
    }

    private static FileKind inContainer(Path file, Place place) throws Refused, IOException {
        try (POIFSFileSystem container = new POIFSFileSystem(file.toFile(), true)) {
            DirectoryNode root = container.getRoot();
            Set<String> names = root.getEntryNames();
            if (names.contains("EncryptedPackage")) {
                throw encrypted(place);
            }
            if (names.contains("Workbook")) {
                try (InputStream in = root.createDocumentInputStream("Workbook")) {
                    checkRecords(in.readAllBytes(), place);
                }
                return FileKind.OLD_WORKBOOK;
            }
            if (names.contains("Book")) {
                throw Refused.because(
                        FILE_UNREADABLE,
                        place,
                        "The workbook was saved by Excel 95 or older.",
                        "Open it, save it as .xlsx and use that file.");
            }
            return FileKind.OLE;
        }
    }

    private static Refused cut(Place place) {
        return Refused.because(
                FILE_MAY_BE_CUT,
                place,
                "The file ends before its own table of contents says.",
                "Wait until it is copied, or copy it again; if it is whole, open it and save it as .xlsx.");
    }

    static Refused encrypted(Place place) {
        return Refused.because(
                FILE_ENCRYPTED,
                place,
                "The workbook is locked with a password.",
                "Open it, remove the password, save it and use that file.");
    }

    private static void checkRecords(byte[] stream, Place place) throws Refused {
        ByteBuffer records = ByteBuffer.wrap(stream).order(ByteOrder.LITTLE_ENDIAN);
        SheetSize size = new SheetSize(Limits.LAST_ROW_XLS, Limits.CELLS);
        int parts = 0;
        int sheets = 0;
        while (records.remaining() >= 4) {
            int type = records.getShort() & 0xFFFF;
            int length = records.getShort() & 0xFFFF;
            if (length > records.remaining()) {
                break;
            }
            sheets += type == RECORD_SHEET ? 1 : 0;
            if (type == RECORD_PASSWORD) {
                throw encrypted(place);
            }
            if (type == RECORD_END_OF_PART) {
                size.refuse(place);
                size = new SheetSize(Limits.LAST_ROW_XLS, Limits.CELLS);
                parts++;
            }
            count(type, records.slice().limit(length).order(ByteOrder.LITTLE_ENDIAN), size);
            records.position(records.position() + length);
        }
        // The list of sheets is a part too, and so are charts within a sheet.
        if (parts <= sheets) {
            throw cut(place);
        }
    }

    private static void count(int type, ByteBuffer record, SheetSize size) {
        if (type == RECORD_ROW) {
            size.addRow();
        } else if (record.limit() >= 6
                && (VALUES.contains(type)
                        || type == RECORD_MANY_NUMBERS
                        || type == RECORD_MANY_BLANKS)) {
            int row = record.getShort(0) & 0xFFFF;
            int first = record.getShort(2) & 0xFFFF;
            boolean many = !VALUES.contains(type);
            int last = many ? record.getShort(record.limit() - 2) & 0xFFFF : first;
            for (int column = first; column <= last; column++) {
                size.addCell();
            }
            if (type != RECORD_MANY_BLANKS) {
                size.addValue(row + 1, last + 1);
            }
        }
    }
}
