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
import org.w3c.dom.Document;
import paperbark.finding.Finding;
import paperbark.finding.FindingCode;
import paperbark.finding.Place;
import paperbark.output.CaseFile;
import paperbark.output.FinishedPaper;
import paperbark.output.Paper;
import paperbark.output.PaperKind;
import paperbark.output.RunLimit;
import paperbark.output.TemplateEngine;

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
    private final StyleInUse style;
    private final Logo logo;
    private final PackBinder binder;

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
        Optional<Path> folder = firmFolder.map(Packs::real);
        engine = new TemplateEngine(folder, limit);
        style = new StyleInUse(engine, shipped);
        logo = Logo.of(folder, limit);
        binder = new PackBinder(folder, logo, limit);
    }

    private static Path real(Path folder) {
        try {
            return folder.toRealPath();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
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
        PaperWriter writer =
                new PaperWriter(engine, shipped, caseFile, logo, style.sheet().drawn());
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
            return bound(caseFile, papers, inserts, writer);
        } catch (RuntimeException e) {
            blameStyle(caseFile);
        }
        papers.replaceAll(p -> layable(caseFile, writer, p.unforeseen()));
        try {
            return bound(caseFile, papers, inserts, writer);
        } catch (RuntimeException e) {
            // What is left are the finished pages, which come from files that are not ours.
            papers.replaceAll(p -> inserts.isOf(p) ? writer.heldBy(p.paper(), notJoined(p)) : p);
        }
        return bound(caseFile, papers, new Inserts(List.of()), writer);
    }

    private Pack bound(
            CaseFile caseFile, List<PaperMarkup> papers, Inserts inserts, PaperWriter writer) {
        return binder.bind(caseFile, papers, inserts, style.sheet()).noting(writer.findings());
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
        if (style.isShipped()) {
            return;
        }
        Paper any = caseFile.papers().get(0);
        Document empty = Markup.empty();
        empty.appendChild(empty.createElement("div"));
        PaperMarkup blank = new PaperMarkup(any, empty, empty, false);
        try {
            binder.bind(caseFile, List.of(blank), new Inserts(List.of()), style.sheet());
        } catch (RuntimeException e) {
            style.refuse(
                    PackBinder.reason(e)
                            .map(why -> "With it an empty paper " + why + ".")
                            .orElse("With it nothing can be laid out."));
        }
    }

    private static Finding notJoined(PaperMarkup paper) {
        return Finding.of(
                FindingCode.FORM_UNUSABLE,
                new Place.InTemplate(Paper.FORMS + "/" + paper.paper().variant() + ".pdf", 0, 0),
                "The filled form cannot be put into the pack.",
                "Open the form in a PDF reader and save it anew, or ask the buyer for it again.");
    }

    /** SHA-256 of every template used so far, and of the logo, by name. */
    public Map<String, String> templates() {
        Map<String, String> used = new TreeMap<>(engine.used());
        used.putAll(logo.sha256());
        return used;
    }

    /** What was noticed about the template folder as a whole, not while making a pack. */
    public List<Finding> findings() {
        return Stream.of(logo.finding(), style.finding()).flatMap(Optional::stream).toList();
    }

    /** The paper itself, or a page of reasons where its markup makes the layout fail. */
    private PaperMarkup layable(CaseFile caseFile, PaperWriter writer, PaperMarkup paper) {
        try {
            binder.bind(caseFile, List.of(paper), new Inserts(List.of()), style.sheet());
            return paper;
        } catch (RuntimeException e) {
            Paper of = paper.paper();
            String name = paper.template();
            if (e instanceof RunLimit.Exceeded over && over.reason() == RunLimit.Reason.TIME) {
                engine.remember(name);
            }
            return writer.heldBy(
                    of,
                    Finding.of(
                                    FindingCode.TEMPLATE_BROKEN,
                                    new Place.InTemplate(name, 0, 0),
                                    PackBinder.reason(e)
                                            .map(why -> "The paper " + why + ".")
                                            .orElse(
                                                    "The markup of the template cannot be laid out."),
                                    "Take the last changes back, or use the shipped template.")
                            .forJob(caseFile.job().reference()));
        }
    }
}
