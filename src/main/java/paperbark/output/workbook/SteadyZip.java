package paperbark.output.workbook;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.time.LocalDateTime;
import java.util.Comparator;
import java.util.Map;
import java.util.TreeMap;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;
import java.util.zip.ZipOutputStream;

/** Packs a zip file anew so that equal contents give equal bytes: fixed times, fixed order. */
final class SteadyZip {
    // The earliest time that a zip file can hold.
    private static final LocalDateTime TIME = LocalDateTime.of(1980, 1, 1, 0, 0);
    private static final String FIRST = "[Content_Types].xml";

    private SteadyZip() {}

    static byte[] of(byte[] zip) {
        Map<String, byte[]> parts =
                new TreeMap<>(
                        Comparator.comparing((String name) -> !name.equals(FIRST))
                                .thenComparing(Comparator.naturalOrder()));
        try (ZipInputStream in = new ZipInputStream(new ByteArrayInputStream(zip))) {
            for (ZipEntry entry = in.getNextEntry(); entry != null; entry = in.getNextEntry()) {
                if (!entry.isDirectory()) {
                    parts.put(entry.getName(), in.readAllBytes());
                }
            }
            return packed(parts);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static byte[] packed(Map<String, byte[]> parts) throws IOException {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (ZipOutputStream out = new ZipOutputStream(bytes)) {
            for (Map.Entry<String, byte[]> part : parts.entrySet()) {
                ZipEntry entry = new ZipEntry(part.getKey());
                entry.setTimeLocal(TIME);
                out.putNextEntry(entry);
                out.write(part.getValue());
                out.closeEntry();
            }
        }
        return bytes.toByteArray();
    }
}
