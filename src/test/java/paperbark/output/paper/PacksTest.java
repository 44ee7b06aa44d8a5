package paperbark.output.paper;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.stream.IntStream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.interactive.documentnavigation.outline.PDOutlineItem;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import paperbark.finding.Finding;
import paperbark.finding.FindingCode;
import paperbark.output.CaseFile;
import paperbark.output.CaseFiles;
import paperbark.output.Paper;
import paperbark.output.PaperKind;
import paperbark.value.SchemeName;

class PacksTest {
    private static final Packs PACKS = new Packs(Optional.empty());

    private static final Set<PaperKind> SHARING =
            Set.of(PaperKind.WORKING, PaperKind.OLD_HEATER, PaperKind.BENEFIT);

    static List<CaseFile> cases() {
        return List.of(CaseFiles.installedSolar(), CaseFiles.bookedHeatPump(), CaseFiles.bare());
    }

    @ParameterizedTest
    @MethodSource("cases")
    void makesEveryPaperWithoutAFinding(CaseFile caseFile) {
        Pack pack = PACKS.make(caseFile, List.of());

        assertThat(pack.findings()).isEmpty();
        assertThat(pack.papers())
                .extracting(PaperPages::kind)
                .containsExactlyElementsOf(caseFile.papers().stream().map(Paper::kind).toList());
        assertThat(pack.papers()).allMatch(p -> p.pageCount() >= 1);
    }

    @ParameterizedTest
    @MethodSource("cases")
    void printsNothingThatOnlyAProgramUnderstands(CaseFile caseFile) {
        assertThat(PdfText.of(PACKS.make(caseFile, List.of())))
                .doesNotContainPattern("\\bnull\\b|N/A|Optional|\\$\\{|</?[a-z#@]");
    }

    @ParameterizedTest
    @MethodSource("cases")
    void namesJobBatchFirmAndBothPageNumbersOnEveryPage(CaseFile caseFile) {
        Pack pack = PACKS.make(caseFile, List.of());

        for (PaperPages paper : pack.papers()) {
            for (int i = 1; i <= paper.pageCount(); i++) {
                int page = paper.firstPage() + i - 1;
                assertThat(PdfText.of(pack.pdf(), page, page))
                        .contains(
                                "Job " + caseFile.job().reference(),
                                "Batch 2026-W48-a",
                                "Saltmarsh Hot Water Pty Ltd · ABN 99 000 000 000",
                                paper.kind().title() + ": page " + i + " of " + paper.pageCount(),
                                "Page " + page + " of " + PdfText.pages(pack) + " of the pack");
            }
        }
    }

    @ParameterizedTest
    @MethodSource("cases")
    void beginsAPaperOnAFreshSheetUnlessTheSamePeopleKeepItWithTheOneBefore(CaseFile caseFile)
            throws IOException {
        Pack pack = PACKS.make(caseFile, List.of());

        int next = 1;
        try (PDDocument document = Loader.loadPDF(pack.pdf())) {
            for (PaperPages paper : pack.papers()) {
                if (next % 2 == 0 && !SHARING.contains(paper.kind())) {
                    PDPage back = document.getPage(next - 1);
                    assertThat(back.hasContents()).isFalse();
                    assertThat(back.getAnnotations()).isEmpty();
                    next++;
                }
                assertThat(paper.firstPage()).as(paper.kind().title()).isEqualTo(next);
                next = paper.lastPage() + 1;
            }
            assertThat(document.getNumberOfPages()).isEqualTo(PdfText.pages(pack));
        }
        assertThat(next).isEqualTo(PdfText.pages(pack) + 1);
    }

    @Test
    void headsThePagesOfEachPaperWithItsTitle() {
        Pack pack = PACKS.make(CaseFiles.installedSolar(), List.of());

        for (PaperPages paper : pack.papers()) {
            int last = paper.firstPage() + paper.pageCount() - 1;
            for (int page = paper.firstPage(); page <= last; page++) {
                assertThat(PdfText.of(pack.pdf(), page, page)).contains(paper.kind().title());
            }
        }
    }

    @Test
    void givesTheSameBytesEachTimeAndOnAllThreads() throws Exception {
        byte[] once = PACKS.make(CaseFiles.installedSolar(), List.of()).pdf();
        ExecutorService threads = Executors.newFixedThreadPool(4);
        try {
            Callable<byte[]> task =
                    () ->
                            new Packs(Optional.empty())
                                    .make(CaseFiles.installedSolar(), List.of())
                                    .pdf();
            List<Future<byte[]>> others =
                    threads.invokeAll(IntStream.range(0, 8).mapToObj(i -> task).toList());
            for (Future<byte[]> other : others) {
                assertThat(other.get()).isEqualTo(once);
            }
        } finally {
            threads.shutdownNow();
        }
    }

    @Test
    void saysWhatItIs() throws IOException {
        try (PDDocument document =
                Loader.loadPDF(PACKS.make(CaseFiles.installedSolar(), List.of()).pdf())) {
            assertThat(document.getDocumentInformation().getTitle())
                    .isEqualTo("Papers of job SB-1032");
            assertThat(document.getDocumentInformation().getCreationDate().toInstant())
                    .hasToString("2026-11-25T00:00:00Z");
            assertThat(document.getDocumentCatalog().getLanguage()).isEqualTo("en-AU");
            List<String> bookmarks = new ArrayList<>();
            for (PDOutlineItem item :
                    document.getDocumentCatalog().getDocumentOutline().children()) {
                bookmarks.add(item.getTitle());
            }
            assertThat(bookmarks)
                    .containsExactly(
                            "Cover and checklist",
                            "Entitlement working",
                            "Old-heater record",
                            "Site sheet",
                            "Warranty registration",
                            "STC assignment",
                            "VEEC assignment",
                            "Large-heater declarations",
                            "Owner's handover",
                            "Statement of benefit");
        }
    }

    @Test
    void embedsOnlyTheOneTypeface() throws IOException {
        try (PDDocument document =
                Loader.loadPDF(PACKS.make(CaseFiles.installedSolar(), List.of()).pdf())) {
            for (PDPage page : document.getPages()) {
                for (COSName name : page.getResources().getFontNames()) {
                    assertThat(page.getResources().getFont(name).getName())
                            .contains("LiberationSans");
                    assertThat(page.getResources().getFont(name).isEmbedded()).isTrue();
                }
            }
        }
    }

    @Test
    void aHeldPaperIsALineOnTheCoverAndNotInThePack() {
        Pack pack =
                PACKS.make(
                        CaseFiles.withPapers(
                                CaseFiles.installedSolar(),
                                new Paper(PaperKind.COVER, "default", List.of()),
                                new Paper(
                                        PaperKind.of(SchemeName.STC),
                                        "default",
                                        List.of(CaseFiles.stop())),
                                new Paper(PaperKind.HANDOVER, "default", List.of())),
                        List.of());

        assertThat(pack.papers())
                .extracting(PaperPages::kind)
                .containsExactly(PaperKind.COVER, PaperKind.HANDOVER);
        assertThat(PdfText.of(pack, PaperKind.COVER))
                .contains("– STC assignment ■ held nobody: not in this pack, see section 4")
                .contains("3 Owner's handover ready");
        assertThat(pack.packedCase().isHeld()).isTrue();
    }

    @Test
    void withoutACoverAPageOfReasonsStandsInPlaceOfAHeldPaper() {
        Pack pack =
                PACKS.make(
                        CaseFiles.withPapers(
                                CaseFiles.installedSolar(),
                                new Paper(
                                        PaperKind.of(SchemeName.STC),
                                        "default",
                                        List.of(CaseFiles.stop())),
                                new Paper(PaperKind.OLD_HEATER, "default", List.of())),
                        List.of());

        assertThat(pack.papers().get(0).pageCount()).isEqualTo(1);
        assertThat(PdfText.of(pack, PaperKind.of(SchemeName.STC)))
                .contains(
                        "Held: STC assignment",
                        "■ STOP",
                        "was already claimed for job SB-0988",
                        "Do: Read the number off the tank again",
                        "week-48.xlsx > Week 48 > F14 \"Tank no.\"")
                .doesNotContain("The owner states");
        assertThat(PdfText.of(pack, PaperKind.OLD_HEATER)).contains("cut open with a saw");
    }

    @Test
    void usesTheDefaultWhereTheTablesNameAVariantThatIsNotThere() {
        Pack pack =
                PACKS.make(
                        CaseFiles.withPapers(
                                CaseFiles.installedSolar(),
                                new Paper(
                                        PaperKind.of(SchemeName.STC),
                                        "../../etc/passwd",
                                        List.of()),
                                new Paper(PaperKind.WARRANTY, "nobody", List.of())),
                        List.of());

        assertThat(PdfText.of(pack, PaperKind.of(SchemeName.STC)))
                .contains("Assignment of certificates (STC)");
        assertThat(PdfText.of(pack, PaperKind.WARRANTY)).contains("Warranty registration For");
        assertThat(pack.findings())
                .extracting(Finding::code, f -> f.severity().word())
                .containsOnly(
                        org.assertj.core.groups.Tuple.tuple(FindingCode.TEMPLATE_BROKEN, "check"))
                .hasSize(2);
    }
}
