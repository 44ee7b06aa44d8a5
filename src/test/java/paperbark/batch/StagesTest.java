package paperbark.batch;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import paperbark.finding.Finding;
import paperbark.finding.FindingCode;

/** One sound job of the sample week as it is, replaced under warranty, and cancelled. */
class StagesTest {
    @TempDir private static Path directory;
    private static Outcome outcome;
    private static Path folder;

    @BeforeAll
    static void prepare() throws IOException {
        outcome = prepared("stages", week());
        folder = outcome.published().orElseThrow();
    }

    private static List<String> week() throws IOException {
        List<String> lines = SampleWeek.only("SB-1101", "SB-1103").lines().toList();
        String sound = lines.get(1);
        return List.of(
                lines.get(0),
                sound,
                lines.get(2).replaceFirst(",installed,", ",Warranty replacement,"),
                sound.replace("SB-1101", "SB-1190").replaceFirst(",installed,", ",VOID,"));
    }

    private static Outcome prepared(String name, List<String> lines) throws IOException {
        Path register = directory.resolve(name + ".csv");
        Files.write(register, lines);
        return new Batch((what, done, of) -> {})
                .prepare(SampleWeek.request(register, directory.resolve("out")));
    }

    @Test
    void aCancelledJobIsNamedOnceAndGetsNoPack() throws IOException {
        assertThat(outcome.findings())
                .filteredOn(f -> f.code() == FindingCode.JOB_CANCELLED)
                .singleElement()
                .matches(f -> f.fact().contains("SB-1190"))
                .matches(f -> f.place().cellAddress().equals("B4"));
        try (Stream<Path> packs = Files.list(folder.resolve("packs"))) {
            assertThat(packs.map(p -> p.getFileName().toString()))
                    .containsExactlyInAnyOrder("SB-1101.pdf", "SB-1103.pdf");
        }
        assertThat(outcome.counts().jobs()).isEqualTo(2);
        assertThat(outcome.counts().cancelled()).isEqualTo(1);
        assertThat(Files.readString(folder.resolve("index.html"))).contains("1 cancelled");
        assertThat(Files.readString(folder.resolve("manifest.json"))).contains("\"cancelled\" : 1");
    }

    @Test
    void whatACancelledJobHasMayBeAnothers() {
        assertThat(outcome.findings())
                .extracting(Finding::code)
                .doesNotContain(FindingCode.SERIAL_TWICE, FindingCode.CERTIFICATE_TWICE)
                .doesNotContain(FindingCode.ADDRESS_TWICE);
        assertThat(outcome.ending()).isEqualTo(Ending.DONE);
    }

    @Test
    void noPaperOfWorkWithoutAClaimSpeaksOfCertificatesToClaim() throws IOException {
        try (PDDocument pack = Loader.loadPDF(folder.resolve("packs/SB-1103.pdf").toFile())) {
            String text = new PDFTextStripper().getText(pack);
            assertThat(text)
                    .contains("Stage: no claim", "Warranty registration", "Owner's handover")
                    .doesNotContain("STC", "VEEC", "ssign", "ntitlement");
            // Of certificates only those of the people who did the work are spoken of.
            assertThat(text.replaceAll("(?s)electrician's\\s+certificates", ""))
                    .doesNotContain("ertificates");
        }
        assertThat(outcome.counts().certificates().values()).allMatch(count -> count > 0);
    }

    @Test
    void aRegisterOfCancelledJobsAloneIsNothingNew() throws IOException {
        Outcome nothing = prepared("called-off", List.of(week().get(0), week().get(3)));
        assertThat(nothing.ending()).isEqualTo(Ending.ALREADY);
        assertThat(nothing.findings())
                .extracting(Finding::code)
                .contains(FindingCode.JOB_CANCELLED);
    }
}
