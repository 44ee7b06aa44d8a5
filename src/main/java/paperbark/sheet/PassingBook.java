package paperbark.sheet;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Enumeration;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.zip.ZipEntry;
import java.util.zip.ZipFile;
import java.util.zip.ZipOutputStream;
import javax.xml.stream.XMLStreamException;
import org.apache.poi.xssf.usermodel.XSSFRichTextString;
import org.apache.poi.xssf.usermodel.XSSFSheet;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;

/**
 * An .xlsx workbook too large to be held as a tree. The library opens a frame of it, which has all
 * but the rows and the table of texts; texts are kept as plain words, and rows pass by.
 */
final class PassingBook implements AutoCloseable {
    private final ZipFile zip;
    private final XSSFWorkbook frame;
    private final List<String> texts;
    private final Map<Integer, Boolean> dates = new HashMap<>();

    private PassingBook(ZipFile zip, XSSFWorkbook frame, List<String> texts) {
        this.zip = zip;
        this.frame = frame;
        this.texts = texts;
    }

    /** Whether a workbook that has passed the gates is that large. */
    static boolean isNeeded(Path file) throws IOException {
        try (ZipFile zip = new ZipFile(file.toFile())) {
            return zip.stream().anyMatch(e -> e.getName().equalsIgnoreCase("xl/workbook.xml"))
                    && zip.stream()
                            .anyMatch(
                                    e ->
                                            e.getName().endsWith(".xml")
                                                    && e.getSize() > Limits.STREAMED_BYTES);
        }
    }

    static PassingBook open(Path file) throws IOException {
        ZipFile zip = new ZipFile(file.toFile());
        try {
            List<String> texts = new ArrayList<>();
            byte[] frame = frame(zip, texts);
            return new PassingBook(zip, new XSSFWorkbook(new ByteArrayInputStream(frame)), texts);
        } catch (IOException | RuntimeException e) {
            zip.close();
            throw e;
        } catch (XMLStreamException e) {
            zip.close();
            throw new IOException(e);
        }
    }

    private static byte[] frame(ZipFile zip, List<String> texts)
            throws IOException, XMLStreamException {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (ZipOutputStream out = new ZipOutputStream(bytes)) {
            Enumeration<? extends ZipEntry> entries = zip.entries();
            while (entries.hasMoreElements()) {
                ZipEntry entry = entries.nextElement();
                out.putNextEntry(new ZipEntry(entry.getName()));
                String root = entry.getName().endsWith(".xml") ? root(zip, entry) : "";
                try (InputStream in = zip.getInputStream(entry)) {
                    switch (root) {
                        case "worksheet" -> PassingXml.copy(in, out, "sheetData");
                        case "sst" -> {
                            PassingXml.texts(in, texts);
                            out.write(PassingXml.NO_TEXTS);
                        }
                        default -> in.transferTo(out);
                    }
                }
                out.closeEntry();
            }
        }
        return bytes.toByteArray();
    }

    private static String root(ZipFile zip, ZipEntry entry) throws IOException, XMLStreamException {
        try (InputStream in = zip.getInputStream(entry)) {
            return PassingXml.root(in);
        }
    }

    /** The workbook without rows and texts. */
    XSSFWorkbook frame() {
        return frame;
    }

    /** The XML of a sheet of the frame, whole. */
    InputStream xml(XSSFSheet sheet) throws IOException {
        String name = sheet.getPackagePart().getPartName().getName().substring(1);
        ZipEntry entry =
                zip.stream()
                        .filter(
                                e ->
                                        e.getName()
                                                .replace('\\', '/')
                                                .toLowerCase(Locale.ROOT)
                                                .equals(name.toLowerCase(Locale.ROOT)))
                        .findFirst()
                        .orElseThrow(() -> new IOException("no such part"));
        return zip.getInputStream(entry);
    }

    /** A text of the workbook's table; empty where it has none of that number. */
    Optional<String> text(int index) {
        return index < 0 || index >= texts.size()
                ? Optional.empty()
                : Optional.of(texts.get(index));
    }

    /** Stored text as it reads: letters that XML cannot hold are written as numbers. */
    static String decoded(String stored) {
        return stored.contains("_x") ? new XSSFRichTextString(stored).getString() : stored;
    }

    /** Whether numbers of the style of that number are days. */
    boolean isDate(int style) {
        return dates.computeIfAbsent(
                style,
                s -> s < frame.getNumCellStyles() && CellReader.isDate(frame.getCellStyleAt(s)));
    }

    @Override
    public void close() {
        try {
            frame.close();
            zip.close();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
