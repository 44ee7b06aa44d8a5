package paperbark.batch;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import paperbark.finding.Finding;
import paperbark.finding.FindingCode;
import paperbark.output.CaseFile;
import paperbark.output.CaseFiles;
import paperbark.output.Paper;
import paperbark.output.PaperKind;
import paperbark.output.form.Forms;
import paperbark.output.paper.Pack;
import paperbark.output.paper.Packs;

/**
 * Every shipped template and form with every job of the sample week, and with jobs of which hardly
 * a fact is known: nothing breaks, and nothing of the program's own language reaches the paper.
 */
class EveryTemplateTest {
    private static final Packs PACKS = new Packs(Optional.empty());
    private static final Forms FORMS = new Forms(Optional.empty());
    private static final Pattern NOT_FOR_PEOPLE =
            Pattern.compile(
                    "\\bnull\\b|Optional[\\[.]|[$#]\\{|</?[#@]|\\b(?:java|paperbark)\\.[a-z]|\\{\\}|(?m:^|: )(?:true|false)\\s*$|&(?:amp|lt|gt|quot|#)|@[0-9a-f]{6}");

    /** Jobs with nothing but a number, a stage and their claims, in every combination. */
    private static final String HARDLY_A_FACT =
            """
            Job,Stage,Claim STCs,Claim VEECs,Owner,Site street,Site suburb,Site state,Site postcode,Maker,Model
            N-1,booked,yes,yes,,,,,,,
            N-2,booked,no,no,,,,,,,
            N-3,installed,yes,yes,,,,,,,
            N-4,installed,no,no,,,,,,,
            N-5,installed,yes,yes,Somebody,,,VIC,,Ternlight,
            N-6,booked,yes,yes,Somebody,,,NSW,,Nobody's,Nothing
            """;

    @TempDir static Path folder;

    static List<Paper> templates() throws IOException {
        List<Paper> papers = new ArrayList<>();
        for (PaperKind kind : PaperKind.values()) {
            try (Stream<Path> files = Files.list(Path.of("templates", kind.folder()))) {
                files.map(f -> f.getFileName().toString().replace(".ftlh", ""))
                        .sorted()
                        .forEach(variant -> papers.add(new Paper(kind, variant, List.of())));
            }
        }
        return papers;
    }

    static List<Paper> forms() throws IOException {
        try (Stream<Path> files = Files.list(Path.of("templates", Paper.FORMS))) {
            return files.map(f -> f.getFileName().toString())
                    .filter(f -> f.endsWith(".pdf"))
                    .map(f -> f.replace(".pdf", ""))
                    .sorted()
                    .map(f -> new Paper(kindOf(f), f, List.of()))
                    .toList();
        }
    }

    private static PaperKind kindOf(String form) {
        return PaperKind.values().stream()
                .filter(kind -> form.endsWith("-" + kind.folder()))
                .findFirst()
                .orElseThrow(() -> new AssertionError(form + " must end in its paper's name"));
    }

    static Stream<Arguments> cases() throws IOException {
        Path register = folder.resolve("hardly.csv");
        Files.writeString(register, HARDLY_A_FACT);
        return Stream.of(
                        read(SampleWeek.XLSX).stream(),
                        read(register).stream(),
                        Stream.of(
                                CaseFiles.bare(),
                                CaseFiles.bookedHeatPump(),
                                CaseFiles.installedSolar()))
                .flatMap(s -> s)
                .map(c -> Arguments.of(c.job().reference() + " " + c.job().stage().word(), c));
    }

    private static List<CaseFile> read(Path register) {
        Request week = SampleWeek.request(register, folder);
        Request request =
                new Request(
                        week.register(),
                        week.firm(),
                        week.out(),
                        week.run(),
                        new Request.Extras(true, false, false, false, false),
                        week.ledger());
        Inputs inputs = Inputs.read(request).result().orElseThrow();
        Cases cases = new Cases(inputs, "all", request);
        return inputs.jobs().stream().map(job -> cases.of(job, job.reference() + ".pdf")).toList();
    }

    @Test
    void theFoldersHoldWhatIsTried() throws IOException {
        assertThat(templates()).hasSizeGreaterThanOrEqualTo(10);
        assertThat(forms()).hasSizeGreaterThanOrEqualTo(2);
        assertThat(forms()).extracting(Paper::kind).doesNotHaveDuplicates();
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("cases")
    void printsEveryTemplateAndForm(String name, CaseFile file) throws IOException {
        for (List<Paper> templates : oneOfAKind(templates())) {
            CaseFile all = file.withPapers(templates);
            Pack pack = PACKS.make(all, List.of());
            // A statement of benefit of claims that are all held is but a line on the cover.
            List<Paper> printed = all.papers().stream().filter(p -> !p.isBlocked()).toList();
            assertThat(printed).hasSizeGreaterThanOrEqualTo(templates.size() - 1);
            assertThat(pack.papers()).hasSameSizeAs(printed);
            isForPeople(pack);
        }
        Forms.Filled filled = FORMS.fill(file.withPapers(forms()));
        assertThat(filled.papers()).hasSameSizeAs(forms());
        isForPeople(PACKS.make(filled.caseFile(), filled.papers()));
    }

    /** As in a pack of the program, which holds no kind of paper twice. */
    private static List<List<Paper>> oneOfAKind(List<Paper> papers) {
        List<List<Paper>> packs = new ArrayList<>();
        for (Paper paper : papers) {
            List<Paper> pack =
                    packs.stream()
                            .filter(p -> p.stream().noneMatch(o -> o.kind() == paper.kind()))
                            .findFirst()
                            .orElseGet(
                                    () -> {
                                        packs.add(new ArrayList<>());
                                        return packs.get(packs.size() - 1);
                                    });
            pack.add(paper);
        }
        return packs;
    }

    private static void isForPeople(Pack pack) throws IOException {
        assertThat(pack.findings())
                .extracting(Finding::code)
                .doesNotContain(FindingCode.TEMPLATE_BROKEN);
        assertThat(pack.papers()).allMatch(p -> p.heldBy().isEmpty());
        try (PDDocument document = Loader.loadPDF(pack.pdf())) {
            String text = new PDFTextStripper().getText(document);
            assertThat(NOT_FOR_PEOPLE.matcher(text).results().map(m -> around(text, m)).toList())
                    .isEmpty();
        }
    }

    private static String around(String text, MatchResult found) {
        return text.substring(
                Math.max(0, found.start() - 40), Math.min(text.length(), found.end() + 20));
    }

    @Test
    void whatIsNotForPeopleIsNoticed() {
        for (String text :
                List.of(
                        "null",
                        "Optional[x]",
                        "Optional.empty",
                        "${x}",
                        "<@p.fact/>",
                        "java.util.List",
                        "true",
                        "Job@1b2c3d4e")) {
            assertThat(NOT_FOR_PEOPLE.matcher("before: " + text).find()).as(text).isTrue();
        }
        assertThat(NOT_FOR_PEOPLE.matcher("nullified, office@example.com, true words").find())
                .isFalse();
    }
}
