package paperbark.output.paper;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.w3c.dom.Document;
import paperbark.finding.Finding;
import paperbark.finding.FindingCode;
import paperbark.finding.Place;
import paperbark.finding.Severity;
import paperbark.output.BrokenTemplate;
import paperbark.output.CaseFile;
import paperbark.output.FinishedPaper;
import paperbark.output.PageMark;
import paperbark.output.Paper;
import paperbark.output.PaperKind;
import paperbark.output.RunLimit;
import paperbark.output.TemplateEngine;
import paperbark.output.pdf.PackWriter;
import paperbark.output.pdf.SlimPages;

/**
 * Makes packs from templates. Safe for use by several threads; the same job gives the same bytes
 * each time.
 *
 * <pre>{@code
 * Packs packs = new Packs(Optional.of(Path.of("templates")));
 * Pack pack = packs.make(caseFile);
 * }</pre>
 */
public final class Packs {
    static final String STYLE = "paperbark.css";

    private final TemplateEngine shipped = new TemplateEngine(Optional.empty());
    private final TemplateEngine engine;
    private final RunLimit limit;
    private final Optional<Path> folder;
    private final StyleSheet shippedStyle;
    private final Logo logo;
    private volatile StyleSheet style;
    private volatile Optional<Finding> styleFinding = Optional.empty();

    /**
     * Packs from the shipped templates and, before them, those in the firm's folder.
     *
     * @param firmFolder an existing folder; empty takes the shipped templates
     */
    public Packs(Optional<Path> firmFolder) {
        this(firmFolder, RunLimit.USUAL);
    }

    /**
     * Lets go of what the process remembers of papers that were made before, words of owners among
     * it. Packs that are being made keep what they have until they are done.
     */
    public static void forgetPapers() {
        StyleSheet.forget();
    }

    /** The same with another limit for the time that filling in or laying out may take. */
    public Packs(Optional<Path> firmFolder, RunLimit limit) {
        this.limit = limit;
        try {
            folder = firmFolder.isEmpty() ? firmFolder : Optional.of(firmFolder.get().toRealPath());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        engine = new TemplateEngine(folder, limit);
        shippedStyle = StyleSheet.shared(shipped.source(STYLE).orElseThrow());
        style = shippedStyle;
        try {
            style = engine.text(STYLE).map(StyleSheet::shared).orElse(shippedStyle);
        } catch (BrokenTemplate e) {
            refuseStyle(e.getMessage());
        }
        logo = Logo.of(folder, limit);
    }

    /** What fills in its templates, for others that use the same folder. */
    public TemplateEngine engine() {
        return engine;
    }

    /**
     * The pack of a job. A paper that is held is a line on the cover; one that cannot be made has a
     * page of reasons in its place.
     *
     * @param caseFile the job
     * @param finished pages that stand in place of a template, at most one of a kind; one that the
     *     case does not have, or holds, is left out
     */
    public Pack make(CaseFile caseFile, List<FinishedPaper> finished) {
        Pack pack = attempt(caseFile, finished, List.of());
        // What fell away while it was made must stand on none of its other papers.
        CaseFile after = pack.packedCase();
        return after.standings().equals(caseFile.standings())
                ? pack
                : attempt(after, finished, pack.findings());
    }

    private Pack attempt(
            CaseFile caseFile, List<FinishedPaper> finished, List<Finding> toldBefore) {
        PaperWriter writer = new PaperWriter(engine, shipped, caseFile, logo, style.drawn());
        writer.findings().addAll(toldBefore);
        Inserts inserts = new Inserts(finished);
        List<PaperMarkup> papers = new ArrayList<>();
        printed(caseFile.papers()).stream()
                .filter(Paper::isPrinted)
                .forEach(p -> papers.add(inserts.blank(p).orElseGet(() -> writer.write(p))));
        for (int i = 0; i < papers.size(); i++) {
            boolean ends = i == papers.size() - 1;
            boolean fits = papers.get(i).ready().filter(r -> ends || r.settled()).isPresent();
            // The first begins without a break, unlike all that is remembered.
            if (papers.get(i).ready().isPresent() && (i == 0 || !fits)) {
                papers.set(i, papers.get(i).unsettled());
            }
        }
        try {
            return drawn(caseFile, papers, inserts, writer.findings());
        } catch (RuntimeException e) {
            blameStyle(caseFile);
        }
        papers.replaceAll(p -> layable(caseFile, writer, p.unforeseen()));
        try {
            return drawn(caseFile, papers, inserts, writer.findings());
        } catch (RuntimeException e) {
            // What is left are the finished pages, which come from files that are not ours.
            papers.replaceAll(p -> inserts.isOf(p) ? writer.heldBy(p.paper(), notJoined(p)) : p);
        }
        return drawn(caseFile, papers, new Inserts(List.of()), writer.findings());
    }

    /** Without a cover that says why, a page of reasons stands for a paper that is held. */
    private static List<Paper> printed(List<Paper> all) {
        return all.stream().anyMatch(p -> p.kind() == PaperKind.COVER)
                ? all.stream().filter(p -> !p.isBlocked()).toList()
                : all;
    }

    /**
     * Puts the shipped style sheet in place of one with which not even an empty paper comes out.
     */
    private void blameStyle(CaseFile caseFile) {
        if (style.equals(shippedStyle)) {
            return;
        }
        Paper any = caseFile.papers().get(0);
        Document empty = Markup.empty();
        empty.appendChild(empty.createElement("div"));
        PaperMarkup blank = new PaperMarkup(any, empty, empty, false);
        try {
            drawn(caseFile, List.of(blank), new Inserts(List.of()), List.of());
        } catch (RuntimeException e) {
            boolean told =
                    e instanceof RunLimit.Exceeded
                            || e instanceof TooManyPages
                            || e instanceof TextOffPage;
            refuseStyle(
                    told
                            ? "With it an empty paper " + e.getMessage() + "."
                            : "With it nothing can be laid out.");
        }
    }

    private void refuseStyle(String why) {
        style = shippedStyle;
        styleFinding =
                Optional.of(
                        Finding.of(
                                        FindingCode.TEMPLATE_BROKEN,
                                        new Place.InTemplate(STYLE, 0, 0),
                                        "The style sheet cannot be used, and the shipped one takes"
                                                + " its place. "
                                                + why,
                                        "Mend the style sheet, or take it away.")
                                .as(Severity.CHECK));
    }

    private static Finding notJoined(PaperMarkup paper) {
        return Finding.of(
                FindingCode.FORM_UNUSABLE,
                new Place.InTemplate(Paper.FORMS + "/" + paper.paper().variant() + ".pdf", 0, 0),
                "The filled form cannot be put into the pack.",
                "Open the form in a PDF reader and save it anew, or ask the buyer for it again.");
    }

    /**
     * The pack as a whole. What is remembered of other jobs must never cost a job its papers: where
     * it fails, all of them are drawn.
     */
    private Pack drawn(
            CaseFile caseFile, List<PaperMarkup> papers, Inserts inserts, List<Finding> before) {
        StyleSheet used = style;
        try {
            return inTime(() -> laidOut(caseFile, papers, inserts, before, used));
        } catch (RunLimit.Exceeded | TooManyPages | TextOffPage e) {
            throw e;
        } catch (RuntimeException e) {
            if (used.drawn().isEmpty()) {
                throw e;
            }
        }
        List<PaperMarkup> all = papers.stream().map(PaperMarkup::unforeseen).toList();
        return inTime(() -> laidOut(caseFile, all, inserts, before, used.drawingAll()));
    }

    private Pack inTime(RunLimit.Work<Pack, RuntimeException> layout) {
        return limit.run(layout, () -> {});
    }

    /** SHA-256 of every template used so far, and of the logo, by name. */
    public Map<String, String> templates() {
        Map<String, String> used = new TreeMap<>(engine.used());
        used.putAll(logo.sha256());
        return used;
    }

    /** What was noticed about the template folder as a whole, not while making a pack. */
    public List<Finding> findings() {
        return Stream.of(logo.finding(), styleFinding).flatMap(Optional::stream).toList();
    }

    /** The paper itself, or a page of reasons where its markup makes the layout fail. */
    private PaperMarkup layable(CaseFile caseFile, PaperWriter writer, PaperMarkup paper) {
        try {
            drawn(caseFile, List.of(paper), new Inserts(List.of()), List.of());
            return paper;
        } catch (RuntimeException e) {
            Paper of = paper.paper();
            String name = paper.template();
            if (e instanceof RunLimit.Exceeded over && over.reason() == RunLimit.Reason.TIME) {
                engine.remember(name);
            }
            boolean told =
                    e instanceof RunLimit.Exceeded
                            || e instanceof TooManyPages
                            || e instanceof TextOffPage;
            return writer.heldBy(
                    of,
                    Finding.of(
                                    FindingCode.TEMPLATE_BROKEN,
                                    new Place.InTemplate(name, 0, 0),
                                    told
                                            ? "The paper " + e.getMessage() + "."
                                            : "The markup of the template cannot be laid out.",
                                    "Take the last changes back, or use the shipped template.")
                            .forJob(caseFile.job().reference()));
        }
    }

    private Pack laidOut(
            CaseFile caseFile,
            List<PaperMarkup> papers,
            Inserts inserts,
            List<Finding> before,
            StyleSheet used) {
        String title = "Papers of job " + caseFile.job().reference();
        ResourceGate gate = new ResourceGate(folder, logo.png());
        try (PDDocument document = new PDDocument()) {
            LaidOut laidOut = Layout.draw(document, title, used, papers, gate);
            List<PaperPages> pages = pages(papers, laidOut.papers(), inserts);
            Conformance claims = inserts.fill(document, pages, papers, laidOut);
            Links.describe(document, pages);
            List<PaperPages> marked = pages.stream().filter(PaperPages::marked).toList();
            mark(document, laidOut.pages(), caseFile, marked);
            laidOut.slim();
            Imprint.of(caseFile, title, claims).stamp(document);
            byte[] pdf = PackWriter.bytes(document);
            List<Finding> findings = new ArrayList<>(before);
            gate.refused()
                    .forEach(
                            (uri, why) ->
                                    findings.add(
                                            refused(
                                                    TemplateFinder.of(uri, papers),
                                                    uri,
                                                    why,
                                                    caseFile)));
            return new Pack(
                    caseFile,
                    pdf,
                    pages,
                    laidOut.boxes(),
                    laidOut.fills(),
                    claims,
                    Finding.inOrder(findings));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static List<PaperPages> pages(
            List<PaperMarkup> papers, List<Extent> extents, Inserts inserts) {
        List<PaperPages> pages = new ArrayList<>();
        for (int i = 0; i < papers.size(); i++) {
            Paper paper = papers.get(i).paper();
            Extent at = extents.get(i);
            pages.add(
                    new PaperPages(
                            paper.kind(),
                            at.first() + 1,
                            at.count(),
                            inserts.isMarked(paper.kind()),
                            paper.blockedBy()));
        }
        return pages;
    }

    private static void mark(
            PDDocument document, SlimPages drawn, CaseFile file, List<PaperPages> papers)
            throws IOException {
        for (PaperPages paper : papers) {
            for (int i = 0; i < paper.pageCount(); i++) {
                int page = paper.firstPage() + i;
                PageMark says =
                        PageMark.of(
                                file.job().reference(),
                                paper.kind().folder(),
                                page,
                                file.batch().id());
                new ScanMark(says.text()).draw(drawn, document.getPage(page - 1));
            }
        }
    }

    private static Finding refused(String asker, String uri, String why, CaseFile caseFile) {
        return Finding.of(
                        FindingCode.TEMPLATE_BROKEN,
                        new Place.InTemplate(asker, 0, 0),
                        "It asks for "
                                + (uri.length() > 80 ? uri.substring(0, 80) + "..." : uri)
                                + ", "
                                + why
                                + ".",
                        "Copy a file of ordinary size into the template folder and name it without"
                                + " a folder.")
                .as(Severity.CHECK)
                .seeing(uri)
                .forJob(caseFile.job().reference());
    }
}
