package paperbark.output.form;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDDocumentNameDictionary;
import org.apache.pdfbox.pdmodel.PDEmbeddedFilesNameTreeNode;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.common.filespecification.PDComplexFileSpecification;
import org.apache.pdfbox.pdmodel.interactive.action.PDActionJavaScript;
import org.apache.pdfbox.pdmodel.interactive.action.PDActionLaunch;
import org.apache.pdfbox.pdmodel.interactive.annotation.PDAnnotation;
import org.apache.pdfbox.pdmodel.interactive.annotation.PDAnnotationLink;
import org.apache.pdfbox.pdmodel.interactive.annotation.PDAnnotationWidget;
import org.apache.pdfbox.pdmodel.interactive.documentnavigation.outline.PDOutlineItem;
import org.apache.pdfbox.pdmodel.interactive.form.PDAcroForm;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import paperbark.output.PaperKind;
import paperbark.output.paper.Pack;
import paperbark.output.paper.Packs;
import paperbark.output.paper.PaperPages;
import paperbark.output.paper.PrintRuns;
import paperbark.value.SchemeName;

/** Filled forms among the other papers. */
class FormsInPacksTest {
    @TempDir private Path folder;

    private Pack pack(byte[] form, String... table) {
        Forms.Filled filled = Filling.of(folder, form, table).filled();
        return new Packs(Optional.of(folder)).make(filled.caseFile(), filled.papers());
    }

    private static byte[] twoPages() {
        FormSketch form = new FormSketch();
        form.text("Owner", 20, 40, 80, 7);
        form.newPage().words(20, 20, 10, "their second page");
        return form.pdf();
    }

    @ParameterizedTest
    @ValueSource(strings = {"yes", "no"})
    void aFormLiesInItsPlaceWithBookmarkAndPageNumbersRight(String flatten) throws IOException {
        Pack pack =
                pack(twoPages(), "field,value", "#flatten," + flatten, "Owner,${job.owner.name}");
        PaperPages stc =
                pack.papers().stream()
                        .filter(p -> p.kind() == PaperKind.of(SchemeName.STC))
                        .findFirst()
                        .orElseThrow();
        assertThat(stc.pageCount()).isEqualTo(2);
        try (PDDocument document = Loader.loadPDF(pack.pdf())) {
            assertThat(document.getNumberOfPages())
                    .isEqualTo(pack.papers().get(pack.papers().size() - 1).lastPage());
            assertThat(text(document, stc.firstPage() + 1)).contains("their second page");
            assertThat(text(document, stc.firstPage() + 2))
                    .contains(
                            "Page " + (stc.firstPage() + 2) + " of " + document.getNumberOfPages());
            List<String> bookmarks = new ArrayList<>();
            for (PDOutlineItem item :
                    document.getDocumentCatalog().getDocumentOutline().children()) {
                PDPage page = item.findDestinationPage(document);
                bookmarks.add(item.getTitle() + " " + (document.getPages().indexOf(page) + 1));
            }
            assertThat(bookmarks).contains("STC assignment " + stc.firstPage());
        }
    }

    @Test
    void liveFieldsKeepTheirValuesInThePackAndOnThePrintRun() throws IOException {
        Pack pack = pack(twoPages(), "field,value", "#flatten,no", "Owner,${job.owner.name}");
        try (PDDocument document = Loader.loadPDF(pack.pdf())) {
            PDAcroForm fields = document.getDocumentCatalog().getAcroForm(null);
            assertThat(fields.getField("Owner").getValueAsString())
                    .isEqualTo("Wilhelmina Quokkaby");
            PDAnnotationWidget widget = fields.getField("Owner").getWidgets().get(0);
            int page = document.getPages().indexOf(widget.getPage());
            assertThat(document.getPage(page).getAnnotations()).contains(widget);
        }
        int stc =
                pack.papers().stream()
                        .filter(p -> p.kind().equals(PaperKind.of(SchemeName.STC)))
                        .findFirst()
                        .orElseThrow()
                        .firstPage();
        try (PDDocument run = Loader.loadPDF(PrintRuns.of(folder, List.of(pack)))) {
            StringBuilder all = new StringBuilder();
            for (int page = 1; page <= run.getNumberOfPages(); page++) {
                String text = text(run, page);
                all.append(text.startsWith("Wilhelmina Quokkaby") ? "form page" : "");
                assertThat(run.getPage(page - 1).getAnnotations())
                        .doesNotHaveAnyElementsOfTypes(PDAnnotationWidget.class);
            }
            assertThat(all).hasToString("form page");
        }
        assertThat(stc).isPositive();
    }

    @Test
    void nothingThatActsOrHidesComesAlong() throws IOException {
        for (String flatten : List.of("yes", "no")) {
            Pack pack = pack(nasty(), "field,value", "#flatten," + flatten, "Owner,x");
            try (PDDocument document = Loader.loadPDF(pack.pdf())) {
                assertThat(document.getDocumentCatalog().getOpenAction()).isNull();
                assertThat(document.getDocumentCatalog().getNames()).isNull();
                for (PDPage page : document.getPages()) {
                    assertThat(page.getCOSObject().containsKey(COSName.AA)).isFalse();
                    for (PDAnnotation annotation : page.getAnnotations()) {
                        assertThat(annotation.getCOSObject().containsKey(COSName.A))
                                .as(annotation.getSubtype())
                                .isEqualTo(
                                        annotation instanceof PDAnnotationLink link
                                                && link.getCOSObject().containsKey(COSName.A)
                                                && link.getAction().getSubType().equals("GoTo"));
                        assertThat(annotation.getCOSObject().containsKey(COSName.AA)).isFalse();
                    }
                }
            }
            String raw = new String(pack.pdf(), StandardCharsets.ISO_8859_1);
            assertThat(raw).doesNotContain("JavaScript", "/Launch", "EmbeddedFile", "app.alert");
        }
    }

    private static byte[] nasty() throws IOException {
        FormSketch form = new FormSketch();
        form.date("Owner", 20, 40, 80, "app.alert('field')");
        PDDocument document = form.document();
        document.getDocumentCatalog().setOpenAction(new PDActionJavaScript("app.alert('open')"));
        PDActionLaunch launch = new PDActionLaunch();
        launch.setF("calculator");
        PDAnnotationLink link = new PDAnnotationLink();
        link.setAction(launch);
        form.page().getAnnotations().add(link);
        form.page()
                .getCOSObject()
                .setItem(COSName.AA, new PDActionJavaScript("app.alert('page')").getCOSObject());
        PDDocumentNameDictionary names =
                new PDDocumentNameDictionary(document.getDocumentCatalog());
        PDEmbeddedFilesNameTreeNode files = new PDEmbeddedFilesNameTreeNode();
        files.setNames(java.util.Map.of("virus.exe", new PDComplexFileSpecification()));
        names.setEmbeddedFiles(files);
        document.getDocumentCatalog().setNames(names);
        return form.pdf();
    }

    @Test
    void theScanMarkCanBeLeftOut() {
        byte[] with = pack(twoPages(), "field,value", "Owner,x").pdf();
        byte[] without = pack(twoPages(), "field,value", "#mark,no", "Owner,x").pdf();
        assertThat(without.length).isLessThan(with.length);
    }

    @ParameterizedTest
    @ValueSource(strings = {"yes", "no"})
    void theSameJobGivesTheSameBytes(String flatten) {
        String[] table = {"field,value", "#flatten," + flatten, "Owner,Nguyễn ${job.owner.name}"};
        assertThat(pack(twoPages(), table).pdf()).isEqualTo(pack(twoPages(), table).pdf());
    }

    private static String text(PDDocument document, int page) throws IOException {
        PDFTextStripper stripper = new PDFTextStripper();
        stripper.setSortByPosition(true);
        stripper.setStartPage(page);
        stripper.setEndPage(page);
        return stripper.getText(document);
    }
}
