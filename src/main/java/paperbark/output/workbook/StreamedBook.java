package paperbark.output.workbook;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.util.zip.Deflater;
import org.apache.commons.compress.archivers.zip.Zip64Mode;
import org.apache.commons.compress.archivers.zip.ZipArchiveOutputStream;
import org.apache.poi.xssf.streaming.SXSSFWorkbook;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;

/** A workbook to which sheets of any length are added: their rows leave memory as written. */
final class StreamedBook {
    private static final int ROWS_IN_MEMORY = 100;

    private StreamedBook() {}

    /** Over a workbook whose own sheets stay in memory. */
    static SXSSFWorkbook over(XSSFWorkbook base) {
        SXSSFWorkbook workbook =
                new SXSSFWorkbook(base, ROWS_IN_MEMORY) {
                    @Override
                    protected ZipArchiveOutputStream createArchiveOutputStream(OutputStream out) {
                        ZipArchiveOutputStream zip = super.createArchiveOutputStream(out);
                        // It is packed anew below.
                        zip.setLevel(Deflater.BEST_SPEED);
                        return zip;
                    }
                };
        // Not every reader takes the form for files beyond four gigabytes.
        workbook.setZip64Mode(Zip64Mode.AsNeeded);
        return workbook;
    }

    /** The workbook's file, packed so that equal contents give equal bytes. */
    static byte[] bytes(SXSSFWorkbook workbook) throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        workbook.write(out);
        return SteadyZip.of(out.toByteArray());
    }
}
