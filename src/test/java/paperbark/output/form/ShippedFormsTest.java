package paperbark.output.form;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import paperbark.finding.Finding;
import paperbark.output.CaseFile;
import paperbark.output.CaseFiles;
import paperbark.output.Paper;
import paperbark.output.PaperKind;
import paperbark.value.SchemeName;

/** The example forms; {@code -Dforms.renew} draws them anew. */
class ShippedFormsTest {
    private static final Path SHIPPED = Path.of("templates/forms");

    @ParameterizedTest
    @ValueSource(strings = {"whimbrel-stc", "whimbrel-veec"})
    void areThoseThatTheSketchDraws(String name) throws IOException {
        byte[] drawn = name.endsWith("stc") ? ShippedForms.stc() : ShippedForms.veec();
        Path file = SHIPPED.resolve(name + ".pdf");
        if (Boolean.getBoolean("forms.renew")) {
            Files.write(file, drawn);
        }
        assertThat(Files.readAllBytes(file)).isEqualTo(drawn);
    }

    @Test
    void areFilledForAJobWithEveryFactWithoutAComplaint() {
        Forms.Filled filled =
                new Forms(Optional.empty()).fill(whimbrel(CaseFiles.installedSolar()));
        assertThat(news(CaseFiles.installedSolar(), filled)).isEmpty();
        assertThat(filled.papers()).hasSize(2);
        assertThat(Filling.text(filled.papers().get(0).pdf()))
                .contains("Wilhelmina Quokkaby", "SB-1032", "18/11/2026", "a solar heater");
        assertThat(Filling.text(filled.papers().get(1).pdf()))
                .contains("Wilhelmina Quokkaby", "SB-1032", "18/11/2026", "$1,200.00");
    }

    @Test
    void areFilledForJobsWithHardlyAFactWithoutAComplaint() {
        Stream.of(CaseFiles.bookedHeatPump(), CaseFiles.bare())
                .forEach(
                        file -> {
                            Forms.Filled filled = new Forms(Optional.empty()).fill(whimbrel(file));
                            assertThat(news(file, filled)).isEmpty();
                            assertThat(filled.papers()).isNotEmpty();
                        });
    }

    private static List<Finding> news(CaseFile before, Forms.Filled filled) {
        return filled.caseFile().findings().stream()
                .filter(f -> before.findings().stream().noneMatch(b -> b.fact().equals(f.fact())))
                .toList();
    }

    static CaseFile whimbrel(CaseFile file) {
        List<Paper> papers = new ArrayList<>();
        for (Paper paper : file.papers()) {
            boolean assigns =
                    paper.kind() == PaperKind.of(SchemeName.STC)
                            || paper.kind() == PaperKind.of(SchemeName.VEEC);
            papers.add(
                    assigns
                            ? new Paper(
                                    paper.kind(), "whimbrel-" + paper.kind().folder(), List.of())
                            : paper);
        }
        return Filling.with(file, papers);
    }
}
