package paperbark.output.paper;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.w3c.dom.Document;
import paperbark.finding.Finding;
import paperbark.finding.FindingCode;
import paperbark.finding.Place;
import paperbark.finding.Severity;
import paperbark.output.BrokenTemplate;
import paperbark.output.CaseFile;
import paperbark.output.Paper;
import paperbark.output.PaperKind;
import paperbark.output.PrintableText;
import paperbark.output.TemplateEngine;
import paperbark.output.TemplateModel;
import paperbark.output.Typeface;

/**
 * Fills in the templates of one job's papers. A paper that is held, or whose template is broken,
 * becomes one page that says why.
 */
final class PaperWriter {
    static final String HELD = "blocked.ftlh";
    static final String RUNNING = "running.ftlh";
    private static final String BLANK = "blank-";

    private final TemplateEngine engine;
    private final TemplateEngine shipped;
    private final CaseFile caseFile;
    private final Logo logo;
    private final Map<String, Object> model;
    private final PrintableText printable;
    private final List<Finding> findings = new ArrayList<>();
    private final Optional<PaperMemory> memory;

    /**
     * A writer for the job, on the firm's templates and, should they fail, the shipped ones.
     *
     * @param memory of papers that were laid out; empty where none is kept
     */
    PaperWriter(
            TemplateEngine engine,
            TemplateEngine shipped,
            CaseFile caseFile,
            Logo logo,
            Optional<PaperMemory> memory) {
        this.engine = engine;
        this.memory = memory;
        this.logo = logo;
        this.shipped = shipped;
        this.caseFile = caseFile;
        printable = new PrintableText(Typeface.shared());
        Map<String, Object> all = new LinkedHashMap<>(TemplateModel.of(caseFile));
        Diary diary =
                Diary.of(
                        caseFile.job(),
                        caseFile.doneOn(),
                        caseFile.firm().name(),
                        caseFile.firm().workmanshipYears());
        all.put("diary", TemplateModel.of(diary));
        model = printable.clean(all);
        printable.changed().forEach(text -> findings.add(notPrintable(text)));
    }

    /** What went wrong so far. */
    List<Finding> findings() {
        return findings;
    }

    /** The markup of a paper as it goes out. */
    PaperMarkup write(Paper paper) {
        if (paper.isBlocked()) {
            return held(paper);
        }
        try {
            return markup(paper, templateOf(paper));
        } catch (BrokenTemplate e) {
            return heldBy(paper, e.finding().forJob(caseFile.job().reference()));
        }
    }

    /** The page that says that a paper is held by the given finding, which is remembered. */
    PaperMarkup heldBy(Paper paper, Finding finding) {
        Finding stop = paper.kind().concern().map(c -> finding.holding(Set.of(c))).orElse(finding);
        findings.add(stop);
        return held(paper.heldBy(List.of(stop)));
    }

    private PaperMarkup held(Paper paper) {
        Read running = orShipped(RUNNING, paper);
        return new PaperMarkup(paper, running.document(), orShipped(HELD, paper).document(), true)
                .withHead(head(running));
    }

    /** Another logo makes another head. */
    private Optional<TagsAndWords> head(Read running) {
        return running.wording()
                .map(w -> new TagsAndWords(w.tags() + logo.sha256(), w.words(), w.markup()));
    }

    private PaperMarkup markup(Paper paper, String template) throws BrokenTemplate {
        Read running = orShipped(RUNNING, paper);
        return content(paper, template, running.document()).withHead(head(running));
    }

    private PaperMarkup content(Paper paper, String template, Document running)
            throws BrokenTemplate {
        String markup = filled(engine, template, paper);
        Optional<TagsAndWords> wording = memory.flatMap(m -> TagsAndWords.of(markup));
        Optional<PaperMarkup.Foreseen> foreseen =
                wording.flatMap(w -> memory.get().foresee(template, w));
        Optional<ReadyPaper> ready =
                foreseen.filter(PaperMarkup.Foreseen::sure).map(PaperMarkup.Foreseen::paper);
        if (ready.isPresent()) {
            Document blank = Markup.blank(ready.get().pages(), BLANK + paper.anchor() + "-");
            return new PaperMarkup(
                    paper, running, blank, false, Optional.empty(), wording, foreseen);
        }
        Read read = read(engine, template, markup, wording);
        return new PaperMarkup(
                paper, running, read.document(), false, Optional.empty(), read.wording(), foreseen);
    }

    /** The template of a paper of which no other is wanted. */
    static String usual(PaperKind kind) {
        return kind.folder() + "/default.ftlh";
    }

    private String templateOf(Paper paper) {
        String folder = paper.kind().folder();
        String wanted = folder + "/" + paper.variant() + ".ftlh";
        String usual = usual(paper.kind());
        // The variant comes from a table, so it may be anything.
        if (paper.variant().matches("[\\w-]{1,40}") && engine.has(wanted)) {
            return wanted;
        }
        findings.add(
                Finding.of(
                                FindingCode.TEMPLATE_BROKEN,
                                new Place.InTemplate(usual, 0, 0),
                                "There is no template variant \""
                                        + paper.variant()
                                        + "\" of the paper \""
                                        + paper.title()
                                        + "\"; the default was used.",
                                "Put the variant into the template folder, or correct its name in"
                                        + " the makers or buyers table.")
                        .as(Severity.CHECK)
                        .forJob(caseFile.job().reference()));
        return usual;
    }

    /**
     * Markup that was read.
     *
     * @param wording the same taken apart; empty where something is told of it, which would not be
     *     told of the next that is like it
     */
    private record Read(Document document, Optional<TagsAndWords> wording) {}

    private Read orShipped(String template, Paper paper) {
        try {
            return render(engine, template, paper);
        } catch (BrokenTemplate e) {
            // The shipped one takes its place, so nothing is held.
            findings.add(e.finding().as(Severity.CHECK).forJob(caseFile.job().reference()));
        }
        try {
            return render(shipped, template, paper);
        } catch (BrokenTemplate e) {
            throw new IllegalStateException("the shipped " + template + " is broken", e);
        }
    }

    private Read render(TemplateEngine from, String template, Paper paper) throws BrokenTemplate {
        String markup = filled(from, template, paper);
        return read(from, template, markup, memory.flatMap(m -> TagsAndWords.of(markup)));
    }

    private Read read(
            TemplateEngine from, String template, String markup, Optional<TagsAndWords> wording)
            throws BrokenTemplate {
        int before = findings.size();
        Document document = parsed(from, template, markup);
        return new Read(document, wording.filter(w -> findings.size() == before));
    }

    /** The markup of a template, filled in. */
    String filled(TemplateEngine from, String template, Paper paper) throws BrokenTemplate {
        Map<String, Object> seen = new LinkedHashMap<>(model);
        seen.put("paper", printable.clean(TemplateModel.of(paper)));
        logo.png().ifPresent(picture -> seen.put("logo", ResourceGate.LOGO));
        return from.render(template, seen);
    }

    private Document parsed(TemplateEngine from, String template, String markup)
            throws BrokenTemplate {
        Document document = Markup.parse(markup, template, from);
        Addresses.restrict(document).forEach(a -> findings.add(notLinked(template, a)));
        PrintableText own = new PrintableText(Typeface.shared());
        own.clean(document);
        own.changed().forEach(text -> findings.add(notPrintable(template, text)));
        return document;
    }

    private Finding notPrintable(String text) {
        return Finding.of(
                        FindingCode.TEXT_NOT_PRINTABLE,
                        caseFile.job().origin().wholeRow(),
                        "The text \""
                                + shortened(text)
                                + "\" holds characters that the document"
                                + " font cannot print; a box stands in their place.",
                        "Spell the text with Latin letters, or write it on the papers by hand.")
                .seeing(text)
                .forJob(caseFile.job().reference());
    }

    private Finding notLinked(String template, String address) {
        return Finding.of(
                        FindingCode.TEMPLATE_BROKEN,
                        new Place.InTemplate(template, 0, 0),
                        "A link of the template leads to \""
                                + shortened(address)
                                + "\", which may not stand in a pack; its words are printed"
                                + " without the link.",
                        "Let the link begin with https:, mailto:, tel: or #.")
                .as(Severity.CHECK)
                .seeing(address)
                .forJob(caseFile.job().reference());
    }

    private static Finding notPrintable(String template, String text) {
        return Finding.of(
                        FindingCode.TEXT_NOT_PRINTABLE,
                        new Place.InTemplate(template, 0, 0),
                        "The template's text \""
                                + shortened(text.strip())
                                + "\" holds characters"
                                + " that the document font cannot print.",
                        "Use other characters in the template.")
                .seeing(text);
    }

    private static String shortened(String text) {
        return text.codePointCount(0, text.length()) <= 40
                ? text
                : text.substring(0, text.offsetByCodePoints(0, 40)) + "…";
    }
}
