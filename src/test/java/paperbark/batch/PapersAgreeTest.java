package paperbark.batch;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.apache.commons.io.file.PathUtils;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import paperbark.output.CaseFile;
import paperbark.output.Paper;
import paperbark.output.PaperKind;
import paperbark.output.form.Forms;
import paperbark.output.paper.Packs;
import paperbark.value.SchemeName;

/**
 * What one paper of a pack says of the work the others say too: for odd jobs of the sample week.
 */
class PapersAgreeTest {
    private static final Packs PACKS = new Packs(Optional.empty());
    private static final Forms FORMS = new Forms(Optional.empty());
    private static final Map<String, CaseFile> CASES = new HashMap<>();

    /** Booked gas boosted, 800 litres, booked heat pump, and an installed heat pump. */
    private static final List<String> JOBS = List.of("SB-1140", "SB-1127", "SB-1139", "SB-1101");

    @TempDir static Path folder;

    @BeforeAll
    static void read() throws IOException {
        Path register = folder.resolve("week.csv");
        Files.writeString(register, SampleWeek.only(JOBS.toArray(String[]::new)));
        CASES.putAll(cases(SampleWeek.request(register, folder)));
    }

    private static Map<String, CaseFile> cases(Request request) {
        Inputs inputs = Inputs.read(request).result().orElseThrow();
        Map<String, CaseFile> all = new HashMap<>();
        new Cases(inputs, "week", request).all().forEach(c -> all.put(c.job().reference(), c));
        return all;
    }

    private static List<PaperKind> kinds(CaseFile file) {
        return file.papers().stream().map(Paper::kind).toList();
    }

    /** The text of one paper of a job, on its form where the buyer has one. */
    private static String text(String job, PaperKind kind, String... variant) throws IOException {
        CaseFile all = CASES.get(job);
        List<Paper> papers =
                variant.length > 0
                        ? List.of(new Paper(kind, variant[0], List.of()))
                        : all.papers().stream().filter(p -> p.kind() == kind).toList();
        // The cover tells of the whole pack, so it is made with all of it.
        CaseFile file = kind == PaperKind.COVER ? all : all.withPapers(papers);
        return text(file);
    }

    private static String text(CaseFile file) throws IOException {
        Forms.Filled filled = FORMS.fill(file);
        try (PDDocument document =
                Loader.loadPDF(PACKS.make(filled.caseFile(), filled.papers()).pdf())) {
            PDFTextStripper stripper = new PDFTextStripper();
            return stripper.getText(document).replaceAll("\\s+", " ");
        }
    }

    @Test
    void theDeclarationsOfALargeHeaterAreAPaperAStepAndALineOfEveryAssignment() throws IOException {
        CaseFile large = CASES.get("SB-1127");
        assertThat(kinds(large)).contains(PaperKind.DECLARATIONS);
        assertThat(kinds(CASES.get("SB-1101"))).doesNotContain(PaperKind.DECLARATIONS);
        assertThat(text("SB-1127", PaperKind.WORKING))
                .contains("Declarations for its size", "800 L, more than 700 L")
                .contains("dated 17 Nov 2026", "17 Nov 2026");
        PaperKind stc = PaperKind.of(SchemeName.STC);
        for (String variant : List.of("default", "kestrel")) {
            assertThat(text("SB-1127", stc, variant))
                    .as(variant)
                    .contains("declarations for a heater of this size, of 17 Nov 2026");
        }
        assertThat(text("SB-1127", stc, "whimbrel-stc")).contains("declarations 17 Nov 2026");
        assertThat(text("SB-1127", PaperKind.COVER))
                .contains("Large-heater declarations ready owner, a qualified person")
                .contains(
                        "With the STC assignment, whoever takes the certificates: the declarations");
        assertThat(text("SB-1127", PaperKind.DECLARATIONS))
                .contains("I intend it to stay where it stands", "Its size suits the hot water");
    }

    @Test
    void aGasBoostShowsWhereverTheHeaterIsDescribed() throws IOException {
        PaperKind stc = PaperKind.of(SchemeName.STC);
        assertThat(text("SB-1140", PaperKind.SITE_SHEET))
                .contains("natural gas", "LPG", "pipe tight", "Gas isolated at", "Flue")
                .contains("a licensed gasfitter does the gas work")
                .contains("flue taken down or closed", "water pipes to the firebox")
                .doesNotContain("wiring disconnected and made safe");
        assertThat(text("SB-1140", PaperKind.HANDOVER))
                .contains("Do you smell gas?", "Keep the flue free.", "Gas off at")
                .contains("Common practice, no source.");
        for (String variant : List.of("default", "kestrel", "whimbrel-stc")) {
            assertThat(text("SB-1140", stc, variant)).as(variant).contains("gas boost");
        }
        assertThat(text("SB-1139", PaperKind.SITE_SHEET)).doesNotContain("LPG", "Flue");
        assertThat(text("SB-1139", PaperKind.HANDOVER)).doesNotContain("smell gas");
    }

    // The years that count fall with the year of installation (stc/years.csv); nothing of the
    // Victorian count does.
    @Test
    void aBookedNumberSaysOnlyIfInstalledByTheYearsEndWhereItHangsOnTheYear() throws IOException {
        String only = "only if installed by 31 Dec 2026";
        PaperKind stc = PaperKind.of(SchemeName.STC);
        for (String variant : List.of("default", "kestrel", "whimbrel-stc")) {
            assertThat(text("SB-1139", stc, variant)).as(variant).contains(only);
        }
        assertThat(text("SB-1139", PaperKind.BENEFIT))
                .contains("(STCs), only if installed by 31 Dec 2026, to Kestrel Certificates")
                .doesNotContain("(VEECs), only");
        PaperKind veec = PaperKind.of(SchemeName.VEEC);
        assertThat(text("SB-1139", veec, "default")).doesNotContain("only if");
        assertThat(text("SB-1101", stc, "default")).doesNotContain("only if");
    }

    @Test
    void aPaymentIsStatedOfDoneWorkAndABoxBeforeIt() throws IOException {
        PaperKind veec = PaperKind.of(SchemeName.VEEC);
        assertThat(text("SB-1101", veec))
                .contains("I paid $3,654.00 for this heater", "Paid on", "Receipt number")
                .contains("Class of that licence A grade", "Product warranty 5 years")
                .contains("(03) 7010 0410, claims@kestrel.example.com, Level 3, 9 Ledger Lane");
        assertThat(text("SB-1139", veec)).contains("I paid $ ______________ for this heater");
    }

    @Test
    void aFactIsWrittenOnceOnSite() {
        assertThat(kinds(CASES.get("SB-1139")))
                .contains(PaperKind.SITE_SHEET, PaperKind.HANDOVER)
                .doesNotContain(PaperKind.WARRANTY, PaperKind.OLD_HEATER);
        assertThat(kinds(CASES.get("SB-1101"))).contains(PaperKind.WARRANTY, PaperKind.OLD_HEATER);
    }

    @Test
    void theCoverNamesThoseWhoSignTheFormThatIsInThePack() throws IOException {
        assertThat(text("SB-1127", PaperKind.COVER))
                .contains("STC assignment ready owner, installer ")
                .doesNotContain("owner, installer, buyer");
        assertThat(text("SB-1101", PaperKind.COVER))
                .contains("STC assignment ready owner, installer, buyer");
    }

    @Test
    void consentsPointToTheNoticeThatTellsWhoGetsWhat() throws IOException {
        assertThat(text("SB-1101", PaperKind.of(SchemeName.STC), "default"))
                .contains("as “Your data” in the handover says");
        assertThat(text("SB-1101", PaperKind.HANDOVER))
                .contains("Your data", "Kestrel Certificates, who takes your certificates")
                .contains("you get your benefit off the price", "office@saltmarsh.example.com");
        assertThat(text("SB-1127", PaperKind.HANDOVER))
                .contains("They stand on the paper for the buyer that pays you.");
    }

    @Test
    void anOwnersCopyLiesBehindEachAssignmentWhereTheFirmPrintsThem() throws IOException {
        assertThat(text("SB-1101", PaperKind.of(SchemeName.STC), "default"))
                .contains("photographed by the owner");
        Path tables = folder.resolve("tables");
        PathUtils.copyDirectory(SampleWeek.TABLES, tables);
        Path firm = tables.resolve("firm.csv");
        Files.writeString(firm, Files.readString(firm) + "owners copies,yes\n");
        Request week = SampleWeek.request(folder.resolve("week.csv"), folder);
        Request copies =
                new Request(
                        week.register(),
                        new Request.FirmFiles(
                                tables, Optional.empty(), Optional.of(tables.resolve("rules"))),
                        week.out(),
                        week.run(),
                        week.extras(),
                        week.ledger());
        CaseFile file = cases(copies).get("SB-1101");
        assertThat(kinds(file))
                .containsSubsequence(
                        PaperKind.of(SchemeName.STC),
                        PaperKind.copyOf(SchemeName.STC),
                        PaperKind.of(SchemeName.VEEC),
                        PaperKind.copyOf(SchemeName.VEEC));
        assertThat(kinds(CASES.get("SB-1101"))).doesNotContain(PaperKind.copyOf(SchemeName.STC));
        Paper copy = new Paper(PaperKind.copyOf(SchemeName.STC), "kestrel", List.of());
        assertThat(text(file.withPapers(List.of(copy))))
                .contains("STC assignment, owner's copy", "copy handed to the owner");
    }
}
