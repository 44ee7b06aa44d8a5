package paperbark.output.form;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.concurrent.ConcurrentHashMap;
import paperbark.finding.Concern;
import paperbark.finding.Finding;
import paperbark.output.CaseFile;
import paperbark.output.FinishedPaper;
import paperbark.output.Paper;
import paperbark.output.PaperKind;
import paperbark.output.TemplateEngine;

/**
 * Fills the buyers' and makers' own forms of a job. Safe for use by several threads; the same job
 * gives the same bytes each time.
 *
 * <p>A paper of the variant {@code x} is made from {@code forms/x.pdf} where there is such a form
 * and no template {@code <paper>/x.ftlh}.
 */
public final class Forms {
    /** The most bytes that a form may have. */
    public static final int LARGEST = FormFolder.LARGEST;

    private final TemplateEngine engine;
    private final FormFolder folder;
    private final Map<String, ReadyForm> ready = new ConcurrentHashMap<>();

    /**
     * Forms of the firm's template folder and, behind them, the shipped ones.
     *
     * @param templates an existing folder; empty takes the shipped forms alone
     */
    public Forms(Optional<Path> templates) {
        this(templates, new TemplateEngine(templates));
    }

    /**
     * The same for who has read templates of that folder.
     *
     * @param engine reads and fills in templates of the same folder
     */
    public Forms(Optional<Path> templates, TemplateEngine engine) {
        this.engine = engine;
        folder = new FormFolder(templates);
    }

    /**
     * What came of a job's forms.
     *
     * @param caseFile the job with what was noticed; a paper whose form cannot be used is held
     * @param papers the filled forms
     */
    public record Filled(CaseFile caseFile, List<FinishedPaper> papers) {
        /** Keeps the papers from being changed. */
        public Filled {
            papers = List.copyOf(papers);
        }
    }

    /** The forms of a job, filled in. */
    public Filled fill(CaseFile caseFile) {
        List<FinishedPaper> papers = new ArrayList<>();
        List<Finding> findings = new ArrayList<>();
        Map<PaperKind, List<Finding>> held = new HashMap<>();
        for (Paper paper : caseFile.papers()) {
            Optional<FormFile> form = form(paper);
            if (form.isPresent() && paper.isPrinted() && !paper.isBlocked()) {
                try {
                    FormFiller filler =
                            new FormFiller(
                                    ready(form.get()), new FormModel(engine, caseFile, paper));
                    papers.add(finished(paper, filler.fill()));
                    findings.addAll(filler.findings());
                } catch (UnusableForm e) {
                    // Nothing else matters about a form that does not go out.
                    Concern concern = paper.kind().concern().orElseThrow();
                    Finding stop =
                            e.finding().forJob(caseFile.job().reference()).holding(Set.of(concern));
                    findings.add(stop);
                    held.put(paper.kind(), List.of(stop));
                }
            }
        }
        return new Filled(findings.isEmpty() ? caseFile : caseFile.packed(findings, held), papers);
    }

    /** SHA-256 of every form, mapping table and imported template used so far, by name. */
    public Map<String, String> used() {
        Map<String, String> used = new TreeMap<>(engine.used());
        used.putAll(folder.used());
        return used;
    }

    private Optional<FormFile> form(Paper paper) {
        if (paper.kind().concern().isEmpty()
                || engine.has(paper.kind().folder() + "/" + paper.variant() + ".ftlh")) {
            return Optional.empty();
        }
        return folder.form(paper.variant());
    }

    private ReadyForm ready(FormFile form) throws UnusableForm {
        ReadyForm known = ready.get(form.name());
        if (known == null) {
            known = ReadyForm.of(form);
            ready.put(form.name(), known);
        }
        return known;
    }

    private static FinishedPaper finished(Paper paper, FormFiller.Pages pages) {
        return new FinishedPaper(paper.kind(), pages.pdf(), pages.count(), pages.marked());
    }
}
