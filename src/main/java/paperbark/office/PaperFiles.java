package paperbark.office;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import paperbark.batch.PageMap;
import paperbark.ledger.PaperState;
import paperbark.output.LetterView;

/** Finds the files that go with letters: papers as signed or as printed, and what people put by. */
final class PaperFiles {
    /**
     * More than that no mail server is sure to take: written as mail it is a third more, and many
     * refuse from 20 or 25 MB on (common practice, no source).
     */
    static final long MOST_BYTES = 14_000_000;

    private final Office office;

    PaperFiles(Office office) {
        this.office = office;
    }

    /** A paper that nobody sends back, as printed. */
    Enclosure printed(PrintedJob of, PageMap.PaperSpan paper, boolean withoutAccounts)
            throws IOException {
        LetterView.Enclosed as =
                new LetterView.Enclosed(
                        of.job().job(), paper.title(), name(of, paper), "", false, "");
        return Enclosure.cut(as, of.file(), paper.first(), paper.pages(), withoutAccounts);
    }

    /** A paper that people sign: as it came back with all its pages, otherwise as printed. */
    Enclosure signed(PrintedJob of, String kind) throws IOException {
        PageMap.PaperSpan paper = of.span(kind).orElseThrow();
        PaperState state = of.state(kind).orElseThrow();
        String job = of.job().job();
        Path file = SignedFile.of(office, job, paper.title(), state.version());
        PaperState.Step step = state.step();
        if (step.isBack() && Files.isRegularFile(file)) {
            String empty = state.emptyBoxes();
            String said = empty.isEmpty() ? "signed" : "as it came back: " + empty;
            String look = empty.isEmpty() ? "" : empty + " of the " + paper.title() + " of " + job;
            return Enclosure.file(
                    new LetterView.Enclosed(job, paper.title(), name(of, paper), said, false, look),
                    file);
        }
        String said =
                step == PaperState.Step.INCOMPLETE
                        ? "as printed, because the signed one is back in part"
                        : "as printed, not signed";
        return Enclosure.cut(
                new LetterView.Enclosed(job, paper.title(), name(of, paper), said, true, ""),
                of.file(),
                paper.first(),
                paper.pages(),
                false);
    }

    private static String name(PrintedJob of, PageMap.PaperSpan paper) {
        return Office.signedName(of.job().job(), paper.title(), 1);
    }

    /**
     * The pictures and documents that people put by for a job, as long as a mail can take them.
     *
     * @param doubtful what is to be looked at of files, by their names
     */
    void put(
            PrintedJob of,
            List<JobFile> files,
            Map<String, String> doubtful,
            List<Enclosure> enclosed,
            List<LetterView.Apart> apart)
            throws IOException {
        long bytes = Files.size(of.file());
        for (JobFile file : files) {
            if (file.kind() == JobFile.Kind.OTHER) {
                apart.add(new LetterView.Apart(file.name(), "It is no picture and no PDF."));
            } else if (bytes + file.bytes() > MOST_BYTES) {
                apart.add(
                        new LetterView.Apart(
                                file.name(),
                                "With it the e-mail would be too large; send it in another way."));
            } else {
                bytes += file.bytes();
                enclosed.add(
                        Enclosure.file(
                                new LetterView.Enclosed(
                                        of.job().job(),
                                        file.what(),
                                        flat(file),
                                        "",
                                        false,
                                        doubtful.getOrDefault(file.name(), "")),
                                file.path()));
            }
        }
    }

    /** A name without folders; two files that differ in their folders alone keep apart. */
    private static String flat(JobFile file) {
        return file.name().replace("/", " - ");
    }
}
