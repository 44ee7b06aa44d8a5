package paperbark.output.form;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Set;
import net.jqwik.api.Example;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import paperbark.finding.FindingCode;
import paperbark.output.CaseFile;
import paperbark.output.CaseFiles;

/** Whatever stands in the register, a form comes out as pages and the value stays a value. */
class HostileFormValuesTest {
    private static final Set<FindingCode> ABOUT_VALUES =
            Set.of(
                    FindingCode.FORM_TEXT_TOO_LONG,
                    FindingCode.FORM_CHOICE_UNKNOWN,
                    FindingCode.FORM_VALUE_UNSEEN);
    private static final String[] TABLE = {
        "field,value",
        "Line,${job.owner.name}",
        "Block,${job.owner.name}",
        "Comb,${job.owner.name}",
        "Tick,${job.owner.name}",
        "Zone,${job.owner.name}",
        "Day,${job.owner.name}"
    };

    private static byte[] form() {
        FormSketch form = new FormSketch();
        form.text("Line", 20, 20, 80, 7);
        form.lines("Block", 20, 30, 80, 20);
        form.comb("Comb", 20, 60, 5, 8);
        form.tick("Tick", 20, 70, "Yes");
        form.choice("Zone", 20, 80, 30, "1", "2");
        form.date("Day", 20, 90, 40, "AFDate_FormatEx(\"dd/mm/yyyy\")");
        return form.pdf();
    }

    private static Filling.Result filled(String value) {
        try {
            Path folder = Files.createTempDirectory("forms");
            CaseFile owned = CaseFiles.withOwner(CaseFiles.installedSolar(), value);
            return Filling.of(folder, owned, form(), TABLE);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    @Property(tries = 60)
    void anyTextComesOutAsPages(@ForAll String value) {
        Filling.Result result = filled(value);
        assertThat(result.filled().papers()).hasSize(1);
        assertThat(result.findings()).allMatch(f -> ABOUT_VALUES.contains(f.code()));
    }

    @Example
    void aValueIsNeverATemplateNorPartOfThePdf() {
        for (String value :
                new String[] {
                    "${7*7}", "<#assign x=1>", ") Tj ET Q (", "%PDF-1.7", "/JS (app.alert)", "a\\nb"
                }) {
            assertThat(filled(value).text()).contains(value);
        }
    }

    @Example
    void controlAndDirectionCharactersAreBoxes() {
        assertThat(filled("a\u0000b\u001Bc\u202Ed").text()).contains("a□b□c□d");
    }
}
