package paperbark.batch;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import paperbark.finding.Concern;
import paperbark.finding.Finding;
import paperbark.finding.FindingCode;
import paperbark.finding.Severity;
import paperbark.job.Register;
import paperbark.ledger.ClaimEntry;
import paperbark.offer.Standing;
import paperbark.output.BatchView;
import paperbark.output.BatchViews;
import paperbark.output.CaseFile;
import paperbark.output.PaperKind;
import paperbark.output.TemplateModel;
import paperbark.output.journal.Journal;
import paperbark.output.paper.Pack;
import paperbark.output.paper.Packs;
import paperbark.output.paper.PaperPages;
import paperbark.output.table.BatchTables;
import paperbark.output.table.SummaryTables;
import paperbark.output.table.Table;
import paperbark.output.table.TableCell;
import paperbark.value.SchemeName;

/**
 * Whatever stops a claim, nothing else counts on it. The job is SB-1101 of the sample week: 14 STCs
 * for $504.00 and 7 VEECs for $462.00 off a price of $4,620.00, which leaves $3,654.00.
 */
class StoppedClaimTest {
    private static final Path GALLERY = Path.of("src/test/resources/findings");
    private static final Packs PACKS = new Packs(Optional.empty());

    private static final Map<List<Object>, Map<PaperKind, String>> PRINTED = new HashMap<>();

    /** What stands for each claim where it counts: benefit, and what its buyer pays. */
    private static final Map<SchemeName, List<String>> FIGURES =
            new EnumMap<>(
                    Map.of(
                            SchemeName.STC, List.of("504.00", "505.80", "520.80"),
                            SchemeName.VEEC, List.of("462.00", "459.50", "479.50")));

    private static final String BOTH_OFF = "3,654.00";

    static List<FindingCode> stops() {
        return Arrays.stream(FindingCode.values())
                .filter(code -> code.severity() == Severity.STOP)
                .filter(code -> !held(code.holds().stream().toList()).isEmpty())
                .toList();
    }

    @Test
    void withoutAStopTheFiguresAreThere() throws IOException {
        CaseFile sound = stopped();
        String pack =
                text(PACKS.make(sound, List.of()), PaperKind.values().toArray(PaperKind[]::new));

        assertThat(pack).contains("$504.00", "$462.00", "$" + BOTH_OFF);
        assertThat(cells(Assembled.view(List.of(sound)))).contains("504.00", "505.80", "459.50");
    }

    @ParameterizedTest
    @MethodSource("stops")
    void noFigureOfAStoppedClaimStandsElsewhereAsIfItWereDue(FindingCode code) throws IOException {
        isNowhereDue(stopped(stop(code)), held(code.holds().stream().toList()));
    }

    @ParameterizedTest
    @MethodSource("stops")
    void aStopOfOneClaimLeavesTheOther(FindingCode code) throws IOException {
        if (code.holds().contains(Concern.JOB)) {
            return;
        }
        for (SchemeName scheme : held(code.holds().stream().toList())) {
            Finding stop = stop(code).holding(Set.of(PaperKind.of(scheme).concern().orElseThrow()));
            CaseFile file = stopped(stop);

            counts(file, scheme);
            assertThat(paper(file, PaperKind.BENEFIT)).isEmpty();
            assertThat(file.price().orElseThrow().payable().toString())
                    .isEqualTo(scheme == SchemeName.STC ? "$4,158.00" : "$4,116.00");
        }
    }

    @Test
    void theStatementOfBenefitSaysWhatItWasWorkedOutWithout() throws IOException {
        Finding stop = stop(FindingCode.HEAT_PUMP_TOO_LARGE);
        String page = text(PACKS.make(stopped(stop), List.of()), List.of(PaperKind.BENEFIT));

        assertThat(page)
                .contains("Worked out without the STCs. That claim is held")
                .containsSubsequence("$4,620.00", "−$462.00", "$4,158.00");
    }

    @Test
    void theVeecPaperDoesNotSayThatHeldStcsAreAssigned() throws IOException {
        Finding stop = stop(FindingCode.HEAT_PUMP_TOO_LARGE);
        String page =
                text(PACKS.make(stopped(stop), List.of()), List.of(PaperKind.of(SchemeName.VEEC)));

        assertThat(page).contains("held on the day of this paper").doesNotContain(BOTH_OFF);
    }

    @Test
    void aClaimWhosePaperBreaksWhileItIsMadeFallsAwayToo(@TempDir Path templates)
            throws IOException {
        Files.createDirectories(templates.resolve("stc"));
        Files.writeString(
                templates.resolve("stc/kestrel.ftlh"), "<section>${nothing.there}</section>");
        Pack pack = new Packs(Optional.of(templates)).make(stopped(), List.of());

        assertThat(pack.packedCase().standing(SchemeName.STC)).isEqualTo(Standing.HELD);
        assertThat(text(pack, others(pack.packedCase()))).doesNotContain("$504.00", BOTH_OFF);
        assertThat(text(pack, List.of(PaperKind.BENEFIT))).contains("$4,158.00");
    }

    /** The smallest registers that bring each finding about. */
    @Test
    void inEveryRegisterOfTheGalleryNothingCountsOnAHeldClaim() throws IOException {
        int held = 0;
        for (FindingCode code : FindingCode.values()) {
            for (CaseFile file : gallery(GALLERY.resolve(code.code()))) {
                for (SchemeName scheme : SchemeName.values()) {
                    if (file.standing(scheme) == Standing.HELD) {
                        held++;
                        counts(file, scheme);
                    }
                }
            }
        }
        assertThat(held).isGreaterThan(40);
    }

    private static void isNowhereDue(CaseFile file, List<SchemeName> held) throws IOException {
        List<String> figures = new ArrayList<>(List.of(BOTH_OFF));
        for (SchemeName scheme : held) {
            assertThat(file.standing(scheme)).isEqualTo(Standing.HELD);
            counts(file, scheme);
            figures.addAll(FIGURES.get(scheme));
        }
        BatchView view = Assembled.view(List.of(file));
        Map<PaperKind, String> texts = printed(file, held);
        String working = texts.remove(PaperKind.WORKING);
        String others = String.join(" ", texts.values());
        String index = BatchViews.page(view);
        String journal =
                new String(new Journal(view, Register.TABLES.accounts(), Map.of()).csv(), "UTF-8");
        Map<String, Object> model = TemplateModel.of(file);
        for (String figure : figures) {
            assertThat(others).doesNotContain("$" + figure);
            assertThat(index).doesNotContain("expected</dt><dd>$" + figure);
            assertThat(journal).doesNotContain("," + figure + ",");
            for (String fact : List.of("price", "benefits", "expected", "coming", "firmGst")) {
                assertThat(String.valueOf(model.get(fact))).doesNotContain("$" + figure);
            }
        }
        assertThat(working.split("Not to be claimed", -1)).hasSize(held.size() + 1);
        assertThat(cells(view)).doesNotContainAnyElementsOf(figures);
        for (SchemeName scheme : held) {
            assertThat(index).contains(" " + scheme.word() + "s, held");
        }
    }

    /** The pages of a pack, printed once for all codes that hold the same papers. */
    private static Map<PaperKind, String> printed(CaseFile file, List<SchemeName> held)
            throws IOException {
        boolean warranty = paper(file, PaperKind.WARRANTY).isEmpty();
        List<Object> key = List.of(held, warranty);
        if (!PRINTED.containsKey(key)) {
            PRINTED.put(key, texts(PACKS.make(file, List.of())));
        }
        return new LinkedHashMap<>(PRINTED.get(key));
    }

    /** What every output asks. */
    private static void counts(CaseFile file, SchemeName scheme) {
        assertThat(file.coming()).noneMatch(e -> e.scheme() == scheme);
        assertThat(file.benefits()).noneMatch(b -> b.scheme() == scheme);
        assertThat(file.claimable()).noneMatch(e -> e.scheme() == scheme);
        assertThat(file.price().map(p -> p.discounts().containsKey(scheme)).orElse(false))
                .isFalse();
        assertThat(LedgerLines.claims(file)).extracting(ClaimEntry::scheme).doesNotContain(scheme);
        boolean all =
                Arrays.stream(SchemeName.values()).map(file::standing).noneMatch(Standing::counts);
        file.papers().stream()
                .filter(p -> p.kind() == PaperKind.BENEFIT)
                .forEach(p -> assertThat(p.isBlocked()).isEqualTo(all));
    }

    /** Every figure of every sheet, but for rows and columns that say that they are held. */
    private static List<String> cells(BatchView view) {
        BatchTables tables = BatchTables.of(view);
        List<Table> all = new ArrayList<>(SummaryTables.of(view, tables));
        all.addAll(tables.inOrder());
        List<String> figures = new ArrayList<>();
        for (Table table : all) {
            Stream.concat(table.rows().stream(), table.footers().stream())
                    .filter(row -> row.stream().noneMatch(StoppedClaimTest::saysHeld))
                    .forEach(
                            row -> {
                                for (int i = 0; i < row.size(); i++) {
                                    if (!table.columns().get(i).key().equals("held")) {
                                        figures.add(row.get(i).value().shown());
                                    }
                                }
                            });
        }
        return figures.stream().map(f -> f.replace("$", "")).toList();
    }

    private static boolean saysHeld(TableCell cell) {
        return cell.value().shown().toLowerCase(Locale.ROOT).matches("held( .*)?");
    }

    private static CaseFile stopped(Finding... stops) throws IOException {
        return Assembled.job(SampleWeek.only("SB-1101"), Register.TABLES, stops);
    }

    private static Finding stop(FindingCode code) {
        return Assembled.finding(code);
    }

    private static List<SchemeName> held(List<Concern> concerns) {
        return Arrays.stream(SchemeName.values())
                .filter(
                        s ->
                                concerns.contains(Concern.JOB)
                                        || concerns.contains(
                                                PaperKind.of(s).concern().orElseThrow()))
                .toList();
    }

    private static List<Finding> paper(CaseFile file, PaperKind kind) {
        return file.papers().stream()
                .filter(p -> p.kind() == kind)
                .findFirst()
                .orElseThrow()
                .blockedBy();
    }

    /** All papers but the working, which shows how far the count came. */
    private static List<PaperKind> others(CaseFile file) {
        return file.papers().stream()
                .map(p -> p.kind())
                .filter(k -> k != PaperKind.WORKING)
                .toList();
    }

    private static List<CaseFile> gallery(Path room) throws IOException {
        Path register = room.resolve("register.csv");
        if (!Files.exists(register)) {
            return List.of();
        }
        Request usual = SampleWeek.request(register, Path.of("target"));
        Path own = room.resolve("tables");
        Request.FirmFiles firm =
                Files.isDirectory(own)
                        ? new Request.FirmFiles(own, Optional.empty(), Optional.empty())
                        : usual.firm();
        return Assembled.cases(
                new Request(
                        usual.register(),
                        firm,
                        usual.out(),
                        usual.run(),
                        usual.extras(),
                        usual.ledger()));
    }

    private static String text(Pack pack, PaperKind... kinds) throws IOException {
        return text(pack, List.of(kinds));
    }

    private static String text(Pack pack, List<PaperKind> kinds) throws IOException {
        Map<PaperKind, String> texts = texts(pack);
        texts.keySet().retainAll(kinds);
        return String.join(" ", texts.values());
    }

    private static Map<PaperKind, String> texts(Pack pack) throws IOException {
        Map<PaperKind, String> texts = new LinkedHashMap<>();
        try (PDDocument document = Loader.loadPDF(pack.pdf())) {
            for (PaperPages paper : pack.papers()) {
                PDFTextStripper stripper = new PDFTextStripper();
                stripper.setSortByPosition(true);
                stripper.setStartPage(paper.firstPage());
                stripper.setEndPage(paper.lastPage());
                texts.put(paper.kind(), stripper.getText(document).replaceAll("\\s+", " "));
            }
        }
        return texts;
    }
}
