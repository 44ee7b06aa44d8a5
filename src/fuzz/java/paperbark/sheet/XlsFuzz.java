package paperbark.sheet;

import com.code_intelligence.jazzer.junit.FuzzTest;
import java.io.IOException;

/** An old workbook is read or refused with a reason, whatever is written over a piece of it. */
class XlsFuzz {
    private static final byte[] BOOK =
            Books.xls(sheet -> Books.row(sheet, 2, "SB-1", "Ann", "2026-11-20", 5));

    /** The first two bytes say where the others go; any of them may also be a file of its own. */
    @FuzzTest(maxDuration = "10m")
    void anOldWorkbookIsReadOrRefused(byte[] content) throws IOException {
        FuzzedFile.with(".xls", content, FuzzedFile::readOrRefused);
        if (content.length > 2) {
            byte[] harmed = BOOK.clone();
            int at = ((content[0] & 0xFF) << 8 | content[1] & 0xFF) % harmed.length;
            int length = Math.min(content.length - 2, harmed.length - at);
            System.arraycopy(content, 2, harmed, at, length);
            FuzzedFile.with(".xls", harmed, FuzzedFile::readOrRefused);
        }
    }
}
