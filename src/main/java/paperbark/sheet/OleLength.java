package paperbark.sheet;

import static paperbark.finding.FindingCode.FILE_MAY_BE_CUT;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.channels.FileChannel;
import java.nio.file.Path;
import paperbark.finding.Place;

/**
 * Whether an OLE2 file is long enough for the highest sector that its own allocation table uses.
 * The library opens most cut .xls files without a word. About one good old file in seventy ends
 * early too, so the remedy offers to save it again.
 */
final class OleLength {
    private static final int HEADER_BYTES = 512;
    private static final int SECTOR_SHIFT_AT = 30;
    private static final int TABLE_SECTORS_AT = 44;
    private static final int TABLE_LIST_AT = 76;

    /** Table sectors listed in the header itself: they cover 7 MB, and longer files in part. */
    private static final int LISTED_AT_MOST = 109;

    private static final int FREE = -1;

    private OleLength() {}

    static void check(Path file, Place place) throws Refused, IOException {
        try (FileChannel channel = FileChannel.open(file)) {
            ByteBuffer header = read(channel, 0, HEADER_BYTES);
            int shift = header.limit() < HEADER_BYTES ? 0 : header.getShort(SECTOR_SHIFT_AT);
            if ((shift != 9 && shift != 12)
                    || channel.size() < (highestUsed(channel, header, shift) + 2L) << shift) {
                throw Refused.because(
                        FILE_MAY_BE_CUT,
                        place,
                        "The file is shorter than its own table of contents says.",
                        "Wait until it is copied, or copy it again; if it is whole, open it and save it as .xlsx.");
            }
        }
    }

    private static int highestUsed(FileChannel channel, ByteBuffer header, int shift)
            throws IOException {
        int tables = Math.min(header.getInt(TABLE_SECTORS_AT), LISTED_AT_MOST);
        int perTable = (1 << shift) / Integer.BYTES;
        int highest = 0;
        for (int table = 0; table < tables; table++) {
            int sector = header.getInt(TABLE_LIST_AT + table * Integer.BYTES);
            if (sector < 0) {
                continue;
            }
            highest = Math.max(highest, sector);
            ByteBuffer entries = read(channel, (sector + 1L) << shift, 1 << shift);
            for (int i = 0; i < entries.limit() / Integer.BYTES; i++) {
                if (entries.getInt(i * Integer.BYTES) != FREE) {
                    highest = Math.max(highest, table * perTable + i);
                }
            }
        }
        return highest;
    }

    private static ByteBuffer read(FileChannel channel, long position, int bytes)
            throws IOException {
        ByteBuffer buffer = ByteBuffer.allocate(bytes).order(ByteOrder.LITTLE_ENDIAN);
        long at = position;
        for (int n = channel.read(buffer, at); n > 0; n = channel.read(buffer, at)) {
            at += n;
        }
        return buffer.flip();
    }
}
