package paperbark.output.paper;

import java.io.IOException;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import javax.xml.transform.OutputKeys;
import javax.xml.transform.Transformer;
import javax.xml.transform.TransformerException;
import javax.xml.transform.TransformerFactory;
import javax.xml.transform.dom.DOMSource;
import javax.xml.transform.stream.StreamResult;
import org.w3c.dom.Document;
import paperbark.output.CaseFile;
import paperbark.output.Paper;
import paperbark.output.RunLimit;
import paperbark.output.TemplateEngine;

/** The mark-up that becomes a pack, as a file that other programs can print. */
public final class MarkupDump {
    private MarkupDump() {}

    /**
     * Writes the mark-up of all papers of a job, with the style sheet in it.
     *
     * @throws IOException when the file cannot be written
     */
    public static Path write(CaseFile job, Path file) throws IOException {
        TemplateEngine shipped = new TemplateEngine(Optional.empty());
        Logo logo = Logo.of(Optional.empty(), RunLimit.USUAL);
        PaperWriter writer = new PaperWriter(shipped, shipped, job, logo, Optional.empty());
        List<PaperMarkup> papers =
                job.papers().stream().filter(Paper::isPrinted).map(writer::write).toList();
        StyleSheet sheet =
                new StyleSheet(
                        shipped.source(Packs.STYLE).orElseThrow(),
                        Optional.empty(),
                        Optional.empty());
        Document document = PackDocument.of(papers, job.job().reference(), sheet, papers.size());
        try {
            Transformer transformer = TransformerFactory.newInstance().newTransformer();
            transformer.setOutputProperty(OutputKeys.METHOD, "html");
            transformer.setOutputProperty(OutputKeys.ENCODING, "UTF-8");
            StringWriter text = new StringWriter();
            transformer.transform(new DOMSource(document), new StreamResult(text));
            return Files.writeString(file, "<!DOCTYPE html>\n" + text);
        } catch (TransformerException e) {
            throw new IOException(e);
        }
    }
}
