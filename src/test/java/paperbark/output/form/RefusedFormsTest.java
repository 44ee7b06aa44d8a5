package paperbark.output.form;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.cos.COSStream;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.encryption.AccessPermission;
import org.apache.pdfbox.pdmodel.encryption.StandardProtectionPolicy;
import org.apache.pdfbox.pdmodel.interactive.digitalsignature.PDSignature;
import org.apache.pdfbox.pdmodel.interactive.form.PDAcroForm;
import org.apache.pdfbox.pdmodel.interactive.form.PDSignatureField;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import paperbark.finding.Concern;
import paperbark.finding.Finding;
import paperbark.finding.FindingCode;
import paperbark.output.CaseFiles;
import paperbark.output.PaperKind;
import paperbark.output.paper.Pack;
import paperbark.output.paper.Packs;
import paperbark.value.SchemeName;

/** Forms that cannot be filled truthfully hold their own paper and nothing else. */
class RefusedFormsTest {
    @TempDir private Path folder;

    @Test
    void aFormMadeOfXfaAlone() throws IOException {
        FormSketch form = new FormSketch();
        COSStream xfa = form.document().getDocument().createCOSStream();
        try (var out = xfa.createOutputStream()) {
            out.write("<xdp/>".getBytes(StandardCharsets.US_ASCII));
        }
        PDAcroForm fields = new PDAcroForm(form.document());
        fields.getCOSObject().setItem(COSName.XFA, xfa);
        form.document().getDocumentCatalog().setAcroForm(fields);
        refuses(form.pdf(), "XFA");
    }

    @Test
    void aFormWithFieldsAndXfaIsFilledByItsFields() throws IOException {
        FormSketch form = new FormSketch();
        form.text("Owner", 20, 20, 60, 7);
        form.form()
                .getCOSObject()
                .setItem(COSName.XFA, form.document().getDocument().createCOSStream());
        Filling.Result result = Filling.of(folder, form.pdf(), "field,value", "Owner,both kinds");
        assertThat(result.text()).contains("both kinds");
        assertThat(result.findings()).isEmpty();
    }

    @ParameterizedTest
    @ValueSource(strings = {"secret", ""})
    void anEncryptedForm(String userPassword) throws IOException {
        FormSketch form = new FormSketch();
        form.text("Owner", 20, 20, 60, 7);
        AccessPermission permission = new AccessPermission();
        permission.setCanModify(false);
        StandardProtectionPolicy policy =
                new StandardProtectionPolicy("owner", userPassword, permission);
        policy.setEncryptionKeyLength(128);
        form.document().protect(policy);
        refuses(form.pdf(), "encrypted");
    }

    @Test
    void aSignedForm() throws IOException {
        FormSketch form = new FormSketch();
        form.text("Owner", 20, 20, 60, 7);
        PDSignatureField signature = new PDSignatureField(form.form());
        signature.getCOSObject().setItem(COSName.V, new PDSignature());
        form.form().getFields().add(signature);
        refuses(form.pdf(), "signed");
    }

    @Test
    void aFileThatIsNoPdf() {
        refuses("Dear Sir, our form is attached.".getBytes(StandardCharsets.UTF_8), "no PDF");
    }

    @Test
    void aFormCutOffInTheMiddle() {
        FormSketch form = new FormSketch();
        form.text("Owner", 20, 20, 60, 7);
        byte[] whole = form.pdf();
        Filling.Result result =
                Filling.of(
                        folder,
                        java.util.Arrays.copyOf(whole, whole.length / 3),
                        "field,value",
                        "Owner,x");
        assertThat(result.filled().papers()).isEmpty();
        assertThat(result.findings())
                .extracting(Finding::code)
                .containsExactly(FindingCode.FORM_UNUSABLE);
    }

    @Test
    void aBookOfAHundredPages() throws IOException {
        FormSketch form = new FormSketch();
        for (int i = 1; i < 100; i++) {
            form.newPage();
        }
        refuses(form.pdf(), "100 pages");
    }

    @Test
    void aDocumentWithoutPages() throws IOException {
        try (PDDocument document = new PDDocument()) {
            document.addPage(new PDPage());
            document.removePage(0);
            ByteArrayOutputStream out = new ByteArrayOutputStream();
            document.save(out);
            refuses(out.toByteArray(), "0 pages");
        }
    }

    @Test
    void aFormWithoutFieldsWhoseTableNamesSome() {
        refuses(new FormSketch().pdf(), "has no fields");
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "apples,pears\n1,2"})
    void aFormWithoutATableThatCanBeRead(String table) {
        FormSketch form = new FormSketch();
        form.text("Owner", 20, 20, 60, 7);
        Filling.Result result = Filling.of(folder, form.pdf(), table);
        assertThat(result.findings())
                .singleElement()
                .satisfies(f -> assertThat(f.fact()).contains("has no mapping table"));
    }

    @Test
    void theCoverSaysWhyAFormIsHeldAndTheOtherPapersGoOut() {
        FormSketch form = new FormSketch();
        Filling.Result result = Filling.of(folder, form.pdf(), "field,value", "Owner,x");
        Pack pack =
                new Packs(Optional.of(folder))
                        .make(result.filled().caseFile(), result.filled().papers());
        String text = Filling.text(pack.pdf());
        assertThat(text).contains("The form has no fields", "Owner's handover");
        assertThat(pack.papers()).hasSize(CaseFiles.installedSolar().papers().size() - 1);
        assertThat(result.filled().caseFile().papers())
                .filteredOn(p -> p.isBlocked())
                .extracting(p -> p.kind())
                .containsExactly(PaperKind.of(SchemeName.STC));
    }

    private void refuses(byte[] form, String why) {
        Filling.Result result = Filling.of(folder, form, "field,value", "Owner,x");
        assertThat(result.filled().papers()).isEmpty();
        assertThat(result.findings())
                .singleElement()
                .satisfies(
                        f -> {
                            assertThat(f.code()).isEqualTo(FindingCode.FORM_UNUSABLE);
                            assertThat(f.fact()).contains(why);
                            assertThat(f.holds()).containsExactly(Concern.claim(SchemeName.STC));
                            assertThat(f.job()).contains("SB-1032");
                            assertThat(f.place().file()).isEqualTo("forms/theirs.pdf");
                        });
        assertThat(FieldList.of("theirs.pdf", form).result().isPresent())
                .isEqualTo(why.equals("has no fields"));
        assertThat(List.of(result.filled().caseFile().isHeld())).containsExactly(true);
    }
}
