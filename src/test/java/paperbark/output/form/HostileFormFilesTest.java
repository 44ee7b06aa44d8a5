package paperbark.output.form;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSBase;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSInteger;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.cos.COSStream;
import org.apache.pdfbox.pdfwriter.compress.CompressParameters;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import paperbark.finding.Finding;
import paperbark.finding.FindingCode;
import paperbark.output.CaseFile;
import paperbark.output.CaseFiles;
import paperbark.output.Paper;
import paperbark.output.PaperKind;
import paperbark.value.SchemeName;

/** Forms made to take time or memory cost their own paper and nothing else. */
class HostileFormFilesTest {
    @TempDir private Path folder;

    @Test
    void aPageWhoseDrawingUnpacksToAGreatDeal() throws IOException {
        refuses(new FormSketch(), page(40_000_000, COSName.FLATE_DECODE), "unpacks to more than");
    }

    @Test
    void aPageWhoseDrawingIsLongerThanAnyoneDraws() throws IOException {
        refuses(new FormSketch(), page(6_000_000, COSName.FLATE_DECODE), "A page of the form");
    }

    @Test
    void aPageWhoseDrawingIsPackedTwice() throws IOException {
        COSArray twice = new COSArray();
        twice.add(COSName.FLATE_DECODE);
        twice.add(COSName.FLATE_DECODE);
        refuses(new FormSketch(), page(40_000_000, twice), "unpacks to more than");
    }

    @Test
    void aDrawingThatDrawsItselfTwice() throws IOException {
        FormSketch form = new FormSketch();
        COSStream again = form.document().getDocument().createCOSStream();
        again.setItem(COSName.TYPE, COSName.XOBJECT);
        again.setItem(COSName.SUBTYPE, COSName.FORM);
        COSArray box = new COSArray();
        for (int side : new int[] {0, 0, 100, 100}) {
            box.add(COSInteger.get(side));
        }
        again.setItem(COSName.BBOX, box);
        COSDictionary drawings = new COSDictionary();
        drawings.setItem(COSName.getPDFName("Again"), again);
        COSDictionary resources = new COSDictionary();
        resources.setItem(COSName.XOBJECT, drawings);
        again.setItem(COSName.RESOURCES, resources);
        write(again, null, "/Again Do ".repeat(8));
        form.page().getCOSObject().setItem(COSName.RESOURCES, resources);
        COSStream content = form.document().getDocument().createCOSStream();
        write(content, null, "/Again Do /Again Do");
        form.page().getCOSObject().setItem(COSName.CONTENTS, content);

        Filling.Result result =
                Filling.of(folder, form.pdf(), "page,x_mm,y_mm,value", "1,20,20,seen");
        assertThat(result.filled().papers()).isEmpty();
        assertThat(codes(result)).containsExactly(FindingCode.FORM_UNUSABLE);
    }

    @ParameterizedTest
    @ValueSource(ints = {-5, 0, 1, 20})
    void aFormThatCountsItsPagesWrongly(int said) {
        FormSketch form = new FormSketch().newPage();
        form.text("Owner", 20, 20, 60, 7);
        form.document().getPages().getCOSObject().setInt(COSName.COUNT, said);
        byte[] pdf = form.pdf();
        Filling.Result result = Filling.of(folder, pdf, "field,value", "Owner,x");
        assertThat(codes(result)).containsExactly(FindingCode.FORM_UNUSABLE);
        assertThat(FieldList.of("theirs.pdf", pdf).result()).isEmpty();
    }

    @Test
    void aFormOfThreeHundredPagesThatClaimsToHaveOne() {
        FormSketch form = new FormSketch();
        for (int i = 1; i < 300; i++) {
            form.newPage();
        }
        form.document().getPages().getCOSObject().setInt(COSName.COUNT, 1);
        Filling.Result result = Filling.of(folder, form.pdf(), "page,x_mm,y_mm,value", "1,20,20,x");
        assertThat(codes(result)).containsExactly(FindingCode.FORM_UNUSABLE);
    }

    @Test
    void aFormLockedForACertificate() throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        new FormSketch().document().save(out, CompressParameters.NO_COMPRESSION);
        byte[] pdf =
                out.toString(StandardCharsets.ISO_8859_1)
                        .replaceFirst(
                                "trailer\\s*<<",
                                "trailer <</Encrypt <</Filter/Adobe.PubSec/SubFilter"
                                        + "/adbe.pkcs7.s5/V 4/R 4/Length 128/CF"
                                        + "<</DefaultCryptFilter<</CFM/AESV2/Length 16"
                                        + "/Recipients[<3080>]>>>>/StmF/DefaultCryptFilter"
                                        + "/StrF/DefaultCryptFilter>>/ID[<00><00>] ")
                        .getBytes(StandardCharsets.ISO_8859_1);
        assertThat(FieldList.of("theirs.pdf", pdf).findings())
                .singleElement()
                .satisfies(f -> assertThat(f.fact()).isEqualTo("The form is encrypted."));
        assertThat(Grid.of("theirs.pdf", pdf).findings())
                .singleElement()
                .satisfies(f -> assertThat(f.fact()).isEqualTo("The form is encrypted."));
    }

    @Test
    void aFormOfMoreBytesThanTheLimitSaysHowMany() throws IOException {
        Files.createDirectories(folder.resolve("forms"));
        Files.write(folder.resolve("forms/theirs.pdf"), new byte[20_000_001]);
        assertThat(unusable().fact())
                .isEqualTo("The file theirs.pdf has 20,000,001 bytes; the limit is 20,000,000.");
    }

    @Test
    void aFormThatIsALinkOutOfTheFolder(@TempDir Path elsewhere) throws IOException {
        Path other = Files.write(elsewhere.resolve("other.pdf"), new FormSketch().pdf());
        Files.createDirectories(folder.resolve("forms"));
        Files.createSymbolicLink(folder.resolve("forms/theirs.pdf"), other);
        assertThat(unusable().fact()).contains("a link that leads out of the template folder");
    }

    @Test
    void aValueBesideThePageDoesNotCountAsSeen() {
        Filling.Result result =
                Filling.of(
                        folder,
                        new FormSketch().pdf(),
                        "page,x_mm,y_mm,value",
                        "1,20,20,on the page",
                        "1,400,20,right of it",
                        "1,20,600,below it");
        assertThat(codes(result))
                .containsExactly(FindingCode.FORM_VALUE_UNSEEN, FindingCode.FORM_VALUE_UNSEEN);
    }

    @Test
    void aFieldNameThatASpreadsheetWouldRunIsListedAsTextAndStillFilled() {
        FormSketch form = new FormSketch();
        form.text("=cmd|' /C calc'!A0", 20, 20, 60, 7);
        String table = FieldList.of("theirs.pdf", form.pdf()).result().orElseThrow();
        assertThat(table.lines().skip(1)).singleElement().asString().startsWith("'=cmd|");
        form = new FormSketch();
        form.text("=cmd|' /C calc'!A0", 20, 20, 60, 7);
        Filling.Result result =
                Filling.of(
                        folder, form.pdf(), "field,value", "'=cmd|' /C calc'!A0,the owner's name");
        assertThat(result.findings()).isEmpty();
        assertThat(result.text()).contains("the owner's name");
    }

    private interface Change {
        void to(FormSketch form) throws IOException;
    }

    private static Change page(int bytes, COSBase filters) {
        return form -> {
            COSStream content = form.document().getDocument().createCOSStream();
            write(content, filters, "0 0 m ".repeat(bytes / 6));
            form.page().getCOSObject().setItem(COSName.CONTENTS, content);
        };
    }

    private static void write(COSStream stream, COSBase filters, String content)
            throws IOException {
        try (OutputStream out =
                filters == null
                        ? stream.createOutputStream()
                        : stream.createOutputStream(filters)) {
            out.write(content.getBytes(StandardCharsets.US_ASCII));
        }
    }

    private void refuses(FormSketch form, Change change, String why) throws IOException {
        form.text("Owner", 20, 20, 60, 7);
        change.to(form);
        Filling.Result result = Filling.of(folder, form.pdf(), "field,value", "Owner,x");
        assertThat(result.filled().papers()).isEmpty();
        assertThat(result.findings())
                .singleElement()
                .satisfies(f -> assertThat(f.fact()).contains(why));
    }

    private Finding unusable() {
        CaseFile job =
                CaseFiles.withPapers(
                        CaseFiles.installedSolar(),
                        new Paper(PaperKind.of(SchemeName.STC), "theirs", List.of()));
        Forms.Filled filled = new Forms(Optional.of(folder)).fill(job);
        assertThat(filled.papers()).isEmpty();
        return filled.caseFile().findings().stream()
                .filter(f -> f.code() == FindingCode.FORM_UNUSABLE)
                .findFirst()
                .orElseThrow();
    }

    private static List<FindingCode> codes(Filling.Result result) {
        return result.findings().stream().map(Finding::code).toList();
    }
}
