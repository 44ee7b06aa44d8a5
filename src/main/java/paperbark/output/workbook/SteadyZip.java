package paperbark.output.workbook;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.time.LocalDateTime;
import java.util.zip.Deflater;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;
import java.util.zip.ZipOutputStream;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;

/**
 * Packs a zip file anew so that equal contents give equal bytes: the parts keep their order and
 * lose the time at which they were packed. One part at a time passes through, however large it is.
 */
final class SteadyZip {
    // A zip file holds times without a zone from 1980 on; its very first moment is taken for an
    // older one and written with the computer's zone.
    private static final LocalDateTime TIME = LocalDateTime.of(1980, 1, 1, 12, 0);

    private SteadyZip() {}

    static byte[] of(XSSFWorkbook workbook) throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        workbook.write(out);
        return of(out.toByteArray());
    }

    static byte[] of(byte[] zip) {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream(zip.length);
        try (ZipInputStream in = new ZipInputStream(new ByteArrayInputStream(zip));
                ZipOutputStream out = new ZipOutputStream(bytes)) {
            for (ZipEntry part = in.getNextEntry(); part != null; part = in.getNextEntry()) {
                if (!part.isDirectory()) {
                    ZipEntry entry = new ZipEntry(part.getName());
                    entry.setTimeLocal(TIME);
                    out.setLevel(level(part.getName()));
                    out.putNextEntry(entry);
                    in.transferTo(out);
                    out.closeEntry();
                }
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return bytes.toByteArray();
    }

    /**
     * A thousand like comments pack so well that readers, ours among them, take the file for one
     * made to fill the memory; they stay as they are.
     */
    private static int level(String part) {
        return part.contains("comments") || part.endsWith(".vml")
                ? Deflater.NO_COMPRESSION
                : Deflater.DEFAULT_COMPRESSION;
    }
}
