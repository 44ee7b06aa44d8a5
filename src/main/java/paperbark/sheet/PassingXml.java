package paperbark.sheet;

import com.fasterxml.aalto.stax.InputFactoryImpl;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import javax.xml.stream.XMLInputFactory;
import javax.xml.stream.XMLOutputFactory;
import javax.xml.stream.XMLStreamConstants;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamReader;
import javax.xml.stream.XMLStreamWriter;

/** Reads the parts of a workbook as streams. */
final class PassingXml {
    /** A table of texts with nothing in it. */
    static final byte[] NO_TEXTS =
            "<sst xmlns=\"http://schemas.openxmlformats.org/spreadsheetml/2006/main\"/>"
                    .getBytes(StandardCharsets.UTF_8);

    private static final XMLInputFactory IN = new InputFactoryImpl();
    private static final XMLOutputFactory OUT = XMLOutputFactory.newDefaultFactory();

    static {
        IN.setProperty(XMLInputFactory.SUPPORT_DTD, false);
        IN.setProperty(XMLInputFactory.IS_SUPPORTING_EXTERNAL_ENTITIES, false);
    }

    private PassingXml() {}

    static XMLStreamReader reader(InputStream in) throws XMLStreamException {
        return IN.createXMLStreamReader(in);
    }

    /** The name of the outermost element. */
    static String root(InputStream in) throws XMLStreamException {
        XMLStreamReader xml = reader(in);
        while (xml.next() != XMLStreamConstants.START_ELEMENT) {
            // Comments may stand before it.
        }
        return xml.getLocalName();
    }

    /** Whether the reader now stands at the beginning of such an element. */
    static boolean begins(XMLStreamReader xml, String name) {
        return xml.isStartElement() && xml.getLocalName().equals(name);
    }

    /** Whether the reader now stands at the end of such an element. */
    static boolean ends(XMLStreamReader xml, String name) {
        return xml.isEndElement() && xml.getLocalName().equals(name);
    }

    /**
     * Refuses an element within one of its kind: its end would be taken for that of the outer one,
     * and what follows would be lost.
     */
    static void refuseWithin(XMLStreamReader xml, String element) throws XMLStreamException {
        if (begins(xml, element)) {
            throw new XMLStreamException("an element within one of its kind");
        }
    }

    /** The texts of a table, one for each entry, without what says how they are pronounced. */
    static void texts(InputStream in, List<String> texts) throws XMLStreamException {
        XMLStreamReader xml = reader(in);
        while (xml.hasNext()) {
            xml.next();
            if (begins(xml, "si")) {
                texts.add(text(xml, "si"));
            }
        }
    }

    /** The text of the element that the reader stands at, which is of the kind of table entries. */
    static String text(XMLStreamReader xml, String element) throws XMLStreamException {
        StringBuilder text = new StringBuilder();
        boolean spoken = false;
        while (!ends(xml, element)) {
            xml.next();
            if (begins(xml, "rPh") || ends(xml, "rPh")) {
                spoken = xml.isStartElement();
            } else if (!spoken && begins(xml, "t")) {
                text.append(xml.getElementText());
            }
        }
        return PassingBook.decoded(text.toString());
    }

    /** Copies a part; the named element stays, and what is in it does not. */
    static void copy(InputStream in, OutputStream out, String emptied) throws XMLStreamException {
        XMLStreamReader xml = reader(in);
        XMLStreamWriter writer = OUT.createXMLStreamWriter(out, StandardCharsets.UTF_8.name());
        writer.writeStartDocument(StandardCharsets.UTF_8.name(), "1.0");
        boolean within = false;
        while (xml.hasNext()) {
            int event = xml.next();
            within &= !ends(xml, emptied);
            if (!within) {
                write(xml, event, writer);
            }
            within |= begins(xml, emptied);
        }
        writer.flush();
    }

    private static void write(XMLStreamReader xml, int event, XMLStreamWriter writer)
            throws XMLStreamException {
        switch (event) {
            case XMLStreamConstants.START_ELEMENT -> {
                writer.writeStartElement(
                        empty(xml.getPrefix()), xml.getLocalName(), empty(xml.getNamespaceURI()));
                for (int i = 0; i < xml.getNamespaceCount(); i++) {
                    writer.writeNamespace(
                            empty(xml.getNamespacePrefix(i)), empty(xml.getNamespaceURI(i)));
                }
                for (int i = 0; i < xml.getAttributeCount(); i++) {
                    if (empty(xml.getAttributeNamespace(i)).isEmpty()) {
                        writer.writeAttribute(
                                xml.getAttributeLocalName(i), xml.getAttributeValue(i));
                    } else {
                        writer.writeAttribute(
                                xml.getAttributePrefix(i),
                                xml.getAttributeNamespace(i),
                                xml.getAttributeLocalName(i),
                                xml.getAttributeValue(i));
                    }
                }
            }
            case XMLStreamConstants.END_ELEMENT -> writer.writeEndElement();
            case XMLStreamConstants.CHARACTERS, XMLStreamConstants.CDATA ->
                    writer.writeCharacters(xml.getText());
            default -> {}
        }
    }

    private static String empty(String text) {
        return text == null ? "" : text;
    }
}
