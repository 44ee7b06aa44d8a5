package paperbark.sheet;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import java.util.zip.ZipEntry;
import java.util.zip.ZipFile;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamReader;

/**
 * The rows of an OpenDocument spreadsheet that are not seen: hidden by hand ({@code collapse}) or
 * by a filter ({@code filter}), of which the library knows the first only.
 */
final class OpenSheetHidden {
    private static final String TABLE = "urn:oasis:names:tc:opendocument:xmlns:table:1.0";

    private final List<BitSet> sheets = new ArrayList<>();
    private int depth;
    private int row;

    private OpenSheetHidden() {}

    /** The unseen rows of each sheet, from 0, in the order of the sheets. */
    static List<BitSet> rows(Path file) throws IOException {
        try (ZipFile zip = new ZipFile(file.toFile())) {
            ZipEntry content = zip.getEntry("content.xml");
            try (InputStream in = zip.getInputStream(content)) {
                OpenSheetHidden hidden = new OpenSheetHidden();
                XMLStreamReader xml = PassingXml.reader(in);
                while (xml.hasNext()) {
                    xml.next();
                    hidden.take(xml);
                }
                return hidden.sheets;
            }
        } catch (XMLStreamException e) {
            throw new IOException(e);
        }
    }

    private void take(XMLStreamReader xml) {
        if (xml.isEndElement() && TABLE.equals(xml.getNamespaceURI())) {
            depth -= xml.getLocalName().equals("table") ? 1 : 0;
        }
        if (!xml.isStartElement() || !TABLE.equals(xml.getNamespaceURI())) {
            return;
        }
        if (xml.getLocalName().equals("table")) {
            if (depth++ == 0) {
                sheets.add(new BitSet());
                row = 0;
            }
        } else if (xml.getLocalName().equals("table-row") && depth == 1) {
            long last = row + (long) OpenSheetCount.times(attribute(xml, "number-rows-repeated"));
            int next = (int) Math.min(last, Limits.FORMATTED_ROWS);
            String seen = attribute(xml, "visibility");
            if (seen != null && !seen.equals("visible")) {
                sheets.get(sheets.size() - 1).set(row, next);
            }
            row = next;
        }
    }

    private static String attribute(XMLStreamReader xml, String name) {
        return xml.getAttributeValue(TABLE, name);
    }
}
