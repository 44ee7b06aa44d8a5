package paperbark.sheet;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.zip.CRC32;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;
import java.util.zip.ZipOutputStream;
import javax.xml.transform.TransformerException;
import javax.xml.transform.dom.DOMSource;
import javax.xml.transform.stream.StreamResult;
import org.apache.poi.util.XMLHelper;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.Node;
import org.w3c.dom.NodeList;
import org.xml.sax.SAXException;

/** Empties rows of an OpenDocument spreadsheet, so that nothing of them stays readable in it. */
public final class OpenSheetErasure {
    private static final String TABLE = "urn:oasis:names:tc:opendocument:xmlns:table:1.0";
    private static final String OFFICE = "urn:oasis:names:tc:opendocument:xmlns:office:1.0";
    private static final String TEXT = "urn:oasis:names:tc:opendocument:xmlns:text:1.0";
    private static final String CONTENT = "content.xml";

    /** What a cell keeps: how it looks and where it stands. */
    private static final List<String> KEPT =
            List.of(
                    "style-name",
                    "number-columns-repeated",
                    "number-columns-spanned",
                    "number-rows-spanned");

    /** Where a spreadsheet says once more what cells say or said. */
    private static final List<String> COPIES = List.of("tracked-changes", "filter");

    private static final String NOTE = "Forgotten";
    private static final String SAID =
            "Jobs were forgotten: what their rows told of persons was taken out, and cannot be brought back.";

    private final Predicate<String> names;

    /**
     * An erasure.
     *
     * @param names whether a cell makes its row one that is emptied; that cell stays
     */
    public OpenSheetErasure(Predicate<String> names) {
        this.names = names;
    }

    /**
     * The spreadsheet with these rows emptied, without its picture of the first page, what it kept
     * of earlier changes and what its filters look for.
     *
     * @return empty when there is no such row
     * @throws IOException when it cannot be read, or holds charts or other documents, which have
     *     copies of their own of what cells say
     */
    public Optional<byte[]> of(byte[] content) throws IOException {
        Map<String, byte[]> parts = parts(content);
        if (parts.keySet().stream().anyMatch(name -> name.endsWith("/" + CONTENT))) {
            throw new IOException("documents within the spreadsheet");
        }
        try {
            Document sheets = parsed(parts, CONTENT);
            if (!erase(sheets)) {
                return Optional.empty();
            }
            COPIES.forEach(name -> all(sheets, TABLE, name).forEach(OpenSheetErasure::remove));
            note(sheets);
            parts.put(CONTENT, bytes(sheets));
            if (parts.keySet().removeIf(name -> name.startsWith("Thumbnails/"))) {
                Document manifest = parsed(parts, "META-INF/manifest.xml");
                all(manifest, "*", "file-entry").stream()
                        .filter(OpenSheetErasure::isPicture)
                        .forEach(OpenSheetErasure::remove);
                parts.put("META-INF/manifest.xml", bytes(manifest));
            }
        } catch (SAXException | TransformerException e) {
            throw new IOException(e);
        }
        return Optional.of(zip(parts));
    }

    private static boolean isPicture(Element entry) {
        String path =
                entry.getAttributeNS(
                        "urn:oasis:names:tc:opendocument:xmlns:manifest:1.0", "full-path");
        return path.startsWith("Thumbnails/");
    }

    private boolean erase(Document sheets) {
        boolean any = false;
        for (Element row : all(sheets, TABLE, "table-row")) {
            List<Element> others = new ArrayList<>(all(row, TABLE, "table-cell"));
            others.addAll(all(row, TABLE, "covered-table-cell"));
            if (others.removeIf(cell -> names.test(shown(cell)))) {
                others.removeIf(cell -> cell.getFirstChild() == null);
                others.forEach(OpenSheetErasure::empty);
                any |= !others.isEmpty();
            }
        }
        return any;
    }

    private static String shown(Element cell) {
        List<Element> lines = all(cell, TEXT, "p");
        return lines.size() == 1 ? lines.get(0).getTextContent().strip() : "";
    }

    private static void empty(Element cell) {
        while (cell.getFirstChild() != null) {
            cell.removeChild(cell.getFirstChild());
        }
        for (int i = cell.getAttributes().getLength() - 1; i >= 0; i--) {
            Node attribute = cell.getAttributes().item(i);
            if (!KEPT.contains(attribute.getLocalName())) {
                cell.removeAttributeNS(attribute.getNamespaceURI(), attribute.getLocalName());
            }
        }
    }

    private static void note(Document sheets) {
        List<Element> tables = all(sheets, TABLE, "table");
        if (tables.stream().anyMatch(t -> t.getAttributeNS(TABLE, "name").equals(NOTE))) {
            return;
        }
        Element table = sheets.createElementNS(TABLE, "table:table");
        table.setAttributeNS(TABLE, "table:name", NOTE);
        Element cell = sheets.createElementNS(TABLE, "table:table-cell");
        cell.setAttributeNS(OFFICE, "office:value-type", "string");
        Element line = sheets.createElementNS(TEXT, "text:p");
        line.setTextContent(SAID);
        cell.appendChild(line);
        Element row = sheets.createElementNS(TABLE, "table:table-row");
        row.appendChild(cell);
        table.appendChild(sheets.createElementNS(TABLE, "table:table-column"));
        table.appendChild(row);
        Element last = tables.get(tables.size() - 1);
        last.getParentNode().insertBefore(table, last.getNextSibling());
    }

    private static void remove(Element element) {
        element.getParentNode().removeChild(element);
    }

    private static List<Element> all(Node within, String namespace, String name) {
        NodeList found =
                within instanceof Document document
                        ? document.getElementsByTagNameNS(namespace, name)
                        : ((Element) within).getElementsByTagNameNS(namespace, name);
        List<Element> elements = new ArrayList<>();
        for (int i = 0; i < found.getLength(); i++) {
            elements.add((Element) found.item(i));
        }
        return elements;
    }

    private static Map<String, byte[]> parts(byte[] content) throws IOException {
        Map<String, byte[]> parts = new LinkedHashMap<>();
        long total = 0;
        try (ZipInputStream in = new ZipInputStream(new ByteArrayInputStream(content))) {
            for (ZipEntry part = in.getNextEntry(); part != null; part = in.getNextEntry()) {
                byte[] bytes = in.readNBytes((int) Limits.INFLATED_BYTES);
                total += bytes.length;
                if (total >= Limits.INFLATED_BYTES) {
                    throw new IOException("too large");
                }
                parts.put(part.getName(), bytes);
            }
        }
        return parts;
    }

    private static Document parsed(Map<String, byte[]> parts, String name)
            throws IOException, SAXException {
        byte[] part = parts.get(name);
        if (part == null) {
            throw new IOException("no " + name);
        }
        return XMLHelper.newDocumentBuilder().parse(new ByteArrayInputStream(part));
    }

    private static byte[] bytes(Document document) throws TransformerException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        XMLHelper.newTransformer().transform(new DOMSource(document), new StreamResult(out));
        return out.toByteArray();
    }

    /** The kind of document stands first and unpacked, as OpenDocument 1.3 part 2, 3.3 wants it. */
    private static byte[] zip(Map<String, byte[]> parts) throws IOException {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (ZipOutputStream out = new ZipOutputStream(bytes)) {
            for (Map.Entry<String, byte[]> part : parts.entrySet()) {
                ZipEntry entry = new ZipEntry(part.getKey());
                entry.setTime(0);
                if (part.getKey().equals("mimetype")) {
                    CRC32 sum = new CRC32();
                    sum.update(part.getValue());
                    entry.setMethod(ZipEntry.STORED);
                    entry.setSize(part.getValue().length);
                    entry.setCrc(sum.getValue());
                }
                out.putNextEntry(entry);
                out.write(part.getValue());
                out.closeEntry();
            }
        }
        return bytes.toByteArray();
    }
}
