package paperbark.output.paper;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.w3c.dom.Document;
import paperbark.output.BrokenTemplate;
import paperbark.output.CaseFile;
import paperbark.output.CaseFiles;
import paperbark.output.Paper;
import paperbark.output.RunLimit;
import paperbark.output.TemplateEngine;
import paperbark.output.pdf.PackWriter;

/** The papers of the sample jobs, taken from stage to stage one by one, as {@link Packs} does. */
final class StagedPapers {
    /** So many jobs there are. */
    static final int JOBS = 3;

    private static final String TITLE = "Papers of a sample job";

    // The first is learnt, the second compared, and the third is known by then.
    private static final List<String> EARLIER = List.of("Ann Dunlin", "Bea Plover");
    private static final String OWNER = "Cem Martin";

    private final TemplateEngine engine = new TemplateEngine(Optional.empty());
    private final Logo logo = Logo.of(Optional.empty(), RunLimit.USUAL);
    private final StyleSheet sheet = StyleSheet.of(engine.source(Packs.STYLE).orElseThrow());

    /** A paper whose templates are filled in: its own, and the one for head and foot. */
    record Filled(String template, String content, String running) {}

    /** A pack that is drawn. */
    record Drawn(CaseFile job, PDDocument document, LaidOut laidOut) implements AutoCloseable {
        /** Makes its pages small. */
        void slim() throws IOException {
            laidOut.slim();
        }

        /** The document, once its pages are small. */
        byte[] written() throws IOException {
            Imprint.of(job, TITLE, Conformance.BOTH).stamp(document);
            return PackWriter.bytes(document);
        }

        @Override
        public void close() throws IOException {
            document.close();
        }
    }

    /** The jobs that are measured. */
    static List<CaseFile> jobs() {
        return ofOwner(OWNER);
    }

    /** The same with other words, from which their papers become known. */
    static List<CaseFile> earlierJobs() {
        return EARLIER.stream().flatMap(owner -> ofOwner(owner).stream()).toList();
    }

    private static List<CaseFile> ofOwner(String owner) {
        return List.of(
                CaseFiles.withOwner(CaseFiles.installedSolar(), owner),
                CaseFiles.withOwner(CaseFiles.bookedHeatPump(), owner),
                CaseFiles.withOwner(CaseFiles.bare(), owner));
    }

    /** Draws the earlier jobs, so that the papers of the others are known. */
    void learn() throws IOException {
        for (CaseFile job : earlierJobs()) {
            try (Drawn pack = draw(job, markup(job, true), true)) {
                pack.slim();
            }
        }
    }

    /** The facts of a job for its templates. */
    PaperWriter facts(CaseFile job, boolean known) {
        return new PaperWriter(
                engine, engine, job, logo, known ? sheet.drawn() : Optional.empty());
    }

    /** Fills in the templates of a job. */
    List<Filled> fill(CaseFile job, PaperWriter facts) throws BrokenTemplate {
        List<Filled> all = new ArrayList<>();
        for (Paper paper : job.papers()) {
            String own = paper.kind().folder() + "/" + paper.variant() + ".ftlh";
            String content = facts.filled(engine, own, paper);
            all.add(new Filled(own, content, facts.filled(engine, PaperWriter.RUNNING, paper)));
        }
        return all;
    }

    /** Reads what a template gave. */
    Document read(String markup, String template) throws BrokenTemplate {
        return Markup.parse(markup, template, engine);
    }

    /** What is known of a paper. */
    Optional<PaperMarkup.Foreseen> foresee(String template, TagsAndWords wording) {
        return sheet.drawn().orElseThrow().foresee(template, wording);
    }

    /** All stages before the layout. */
    List<PaperMarkup> markup(CaseFile job, boolean known) {
        PaperWriter facts = facts(job, known);
        return job.papers().stream().map(facts::write).toList();
    }

    /** Lays out and draws the papers of a job; those that are known need it not. */
    Drawn draw(CaseFile job, List<PaperMarkup> papers, boolean known) throws IOException {
        StyleSheet used = known ? sheet : sheet.drawingAll();
        PDDocument document = new PDDocument();
        ResourceGate gate = new ResourceGate(Optional.empty(), Optional.empty());
        return new Drawn(job, document, Layout.draw(document, TITLE, used, papers, gate));
    }

    /** Closes packs. */
    static void close(List<Drawn> packs) throws IOException {
        for (Drawn pack : packs) {
            pack.close();
        }
    }
}
