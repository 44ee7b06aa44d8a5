package paperbark.output.form;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import paperbark.output.CaseFiles;
import paperbark.outside.Outside;

/** A form written by another program, filled and shown by a third one. */
@Tag("outside")
class LibreOfficeFormTest {
    private static final String PAGE =
            """
            <html><body><p>Made up claim</p><form name="Claim">
            <p>Owner <input type="text" name="Owner" size="40" maxlength="60"></p>
            <p>Notes <textarea name="Notes" rows="3" cols="40"></textarea></p>
            <p>New <input type="checkbox" name="New" value="brandnew"></p>
            <p>Paid <input type="radio" name="Paid" value="discount"> discount
              <input type="radio" name="Paid" value="payment"> payment</p>
            <p>Zone <select name="Zone" size="1"><option>three</option><option>four</option></select></p>
            <p>States <select name="States" size="3"><option>VIC</option><option>NSW</option></select></p>
            </form></body></html>
            """;
    private static final String FILTER =
            "pdf:writer_pdf_Export:{\"ExportFormFields\":{\"type\":\"boolean\",\"value\":\"true\"}}";

    @TempDir private static Path folder;
    private static byte[] form;

    @BeforeAll
    static void write() throws IOException {
        Path page = Files.writeString(folder.resolve("form.html"), PAGE);
        Outside.Result result =
                Outside.run(
                        folder,
                        "soffice",
                        "-env:UserInstallation=" + folder.resolve("profile").toUri(),
                        "--headless",
                        "--infilter=HTML (StarWriter)",
                        "--convert-to",
                        FILTER,
                        "--outdir",
                        folder.toString(),
                        page.toString());
        assertThat(result.exitCode()).as(result.err()).isZero();
        form = Files.readAllBytes(folder.resolve("form.pdf"));
    }

    @Test
    void everyFieldIsListedWithItsKindAndChoices() {
        assertThat(FieldList.of("form.pdf", form).result())
                .contains(
                        """
                        field,value,type,page,required,max_length,format,options
                        Owner,,text,1,,60,,
                        Notes,,lines of text,1,,,,
                        New,,tick box,1,,,,yes; no
                        Paid,,radio group,1,,,,discount; payment
                        Zone,,choice,1,,,,three; four
                        States,,list,1,,,,VIC; NSW
                        """);
    }

    @Test
    void popplerShowsEveryValue() throws IOException {
        Filling.Result blank = filled("#flatten,yes", "Owner,", "New,no", "Paid,");
        Filling.Result result =
                filled(
                        "#flatten,yes",
                        "Owner,Nguyễn Łukasz",
                        "Notes,first line\\nsecond line",
                        "New,yes",
                        "Paid,payment",
                        "Zone,four",
                        "States,NSW");
        assertThat(result.findings()).isEmpty();
        assertThat(poppler(result.pdf()))
                .contains("Nguyễn Łukasz", "first line", "second line", "four", "NSW");
        assertThat(Ink.inkOn(result.pdf())).isGreaterThan(Ink.inkOn(blank.pdf()));
    }

    @Test
    void popplerShowsTheValuesOfFieldsThatStayAliveToo() throws IOException {
        Filling.Result result = filled("#flatten,no", "Owner,Nguyễn Łukasz", "Zone,four");
        assertThat(result.findings()).isEmpty();
        assertThat(poppler(result.pdf())).contains("Nguyễn Łukasz", "four");
    }

    @Test
    void popplerShowsTheShippedFormAndSeesNoFieldsLeft() throws IOException {
        byte[] pdf =
                new Forms(Optional.empty())
                        .fill(ShippedFormsTest.whimbrel(CaseFiles.installedSolar()))
                        .papers()
                        .get(0)
                        .pdf();
        assertThat(poppler(pdf)).contains("Wilhelmina Quokkaby", "18/11/2026", "a solar heater");
        Outside.Result info = Outside.run(folder, "pdfinfo", write(pdf).toString());
        assertThat(info.out())
                .containsPattern("Form:\\s+none")
                .containsPattern("JavaScript:\\s+no");
    }

    private static Filling.Result filled(String... rows) {
        String[] table = new String[rows.length + 1];
        table[0] = "field,value";
        System.arraycopy(rows, 0, table, 1, rows.length);
        return Filling.of(folder.resolve("templates"), form, table);
    }

    private static String poppler(byte[] pdf) throws IOException {
        return Outside.run(folder, "pdftotext", "-layout", write(pdf).toString(), "-").out();
    }

    private static Path write(byte[] pdf) throws IOException {
        return Files.write(folder.resolve("filled.pdf"), pdf);
    }
}
