package paperbark.output.paper;

import java.time.LocalDate;
import org.apache.commons.text.StringEscapeUtils;

/**
 * What a document says of itself, as the XMP packet in which archives look for it. Written as text
 * and not through a library, so that no run or parser can change a byte of it.
 */
final class Xmp {
    // The packet ends are fixed by the XMP specification, part 1, 7.3.2.
    private static final String PACKET =
            """
            <?xpacket begin="\uFEFF" id="W5M0MpCehiHzreSzNTczkc9d"?>
            <x:xmpmeta xmlns:x="adobe:ns:meta/">
            <rdf:RDF xmlns:rdf="http://www.w3.org/1999/02/22-rdf-syntax-ns#">
            <rdf:Description rdf:about="" xmlns:dc="http://purl.org/dc/elements/1.1/" xmlns:pdf="http://ns.adobe.com/pdf/1.3/" xmlns:xmp="http://ns.adobe.com/xap/1.0/">
            <dc:format>application/pdf</dc:format>
            <dc:title><rdf:Alt><rdf:li xml:lang="x-default">%s</rdf:li></rdf:Alt></dc:title>
            <dc:creator><rdf:Seq><rdf:li>%s</rdf:li></rdf:Seq></dc:creator>
            <dc:description><rdf:Alt><rdf:li xml:lang="x-default">%s</rdf:li></rdf:Alt></dc:description>
            <dc:language><rdf:Bag><rdf:li>en-AU</rdf:li></rdf:Bag></dc:language>
            <pdf:Producer>%4$s</pdf:Producer>
            <xmp:CreatorTool>%4$s</xmp:CreatorTool>
            <xmp:CreateDate>%5$sT00:00:00Z</xmp:CreateDate>
            <xmp:ModifyDate>%5$sT00:00:00Z</xmp:ModifyDate>
            </rdf:Description>
            %6$s</rdf:RDF>
            </x:xmpmeta>
            <?xpacket end="r"?>
            """;
    private static final String ARCHIVABLE =
            """
            <rdf:Description rdf:about="" xmlns:pdfaid="http://www.aiim.org/pdfa/ns/id/">
            <pdfaid:part>2</pdfaid:part>
            <pdfaid:conformance>A</pdfaid:conformance>
            </rdf:Description>
            """;
    private static final String ACCESSIBLE =
            """
            <rdf:Description rdf:about="" xmlns:pdfuaid="http://www.aiim.org/pdfua/ns/id/">
            <pdfuaid:part>1</pdfuaid:part>
            </rdf:Description>
            """;
    // PDF/A wants every schema described that it does not know itself.
    private static final String DESCRIBED =
            """
            <rdf:Description rdf:about="" xmlns:pdfaExtension="http://www.aiim.org/pdfa/ns/extension/" xmlns:pdfaSchema="http://www.aiim.org/pdfa/ns/schema#" xmlns:pdfaProperty="http://www.aiim.org/pdfa/ns/property#">
            <pdfaExtension:schemas><rdf:Bag><rdf:li rdf:parseType="Resource">
            <pdfaSchema:schema>PDF/UA identification</pdfaSchema:schema>
            <pdfaSchema:namespaceURI>http://www.aiim.org/pdfua/ns/id/</pdfaSchema:namespaceURI>
            <pdfaSchema:prefix>pdfuaid</pdfaSchema:prefix>
            <pdfaSchema:property><rdf:Seq><rdf:li rdf:parseType="Resource">
            <pdfaProperty:name>part</pdfaProperty:name>
            <pdfaProperty:valueType>Integer</pdfaProperty:valueType>
            <pdfaProperty:category>internal</pdfaProperty:category>
            <pdfaProperty:description>Part of ISO 14289 that the document keeps</pdfaProperty:description>
            </rdf:li></rdf:Seq></pdfaSchema:property>
            </rdf:li></rdf:Bag></pdfaExtension:schemas>
            </rdf:Description>
            """;

    private Xmp() {}

    /** The packet. */
    static String of(
            String title,
            String author,
            String subject,
            String program,
            LocalDate day,
            Conformance claims) {
        return String.format(
                PACKET,
                escaped(title),
                escaped(author),
                escaped(subject),
                escaped(program),
                day,
                (claims.archivable() ? ARCHIVABLE : "")
                        + (claims.accessible() ? ACCESSIBLE + DESCRIBED : ""));
    }

    private static String escaped(String text) {
        return StringEscapeUtils.escapeXml10(text);
    }
}
