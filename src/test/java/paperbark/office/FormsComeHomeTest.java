package paperbark.office;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import paperbark.batch.PageMap;
import paperbark.ledger.PaperState;
import paperbark.scan.Scanned;

/** A buyer's own forms without a mark that come back to an office; common practice, no source. */
class FormsComeHomeTest {
    @TempDir private Path folder;

    private ScannedOffice at;
    private Path batch;

    @BeforeEach
    void printThreeJobsWithForms() throws IOException {
        at = new ScannedOffice(folder);
        Path templates = at.office.root().resolve("templates");
        Files.createDirectories(templates.resolve("forms"));
        Offices.copy(Path.of("templates/forms"), templates.resolve("forms"));
        Files.writeString(
                templates.resolve("forms/whimbrel-stc.csv"),
                "#mark,no\n",
                StandardOpenOption.APPEND);
        String whimbrel =
                Offices.register(3, 4, 5)
                        .replace("Kestrel Certificates", "Whimbrel Exchange")
                        .replace("Ada Amberwood,4 Teaspoon Lane", "Basil Bluegum,18 Umbrella Rise")
                        .replace("Ada Amberwood,5 Teaspoon Lane", "Cora Correa,21 Inkwell Place");
        batch = at.print("forms.csv", whimbrel);
        for (String job : List.of("J-3", "J-4", "J-5")) {
            PageMap.PaperSpan form = ScannedOffice.paper(batch, job, "stc");
            assertThat(form.unmarked()).isTrue();
            assertThat(form.pages()).isOne();
        }
    }

    private void add(Scanned pile, String job, String kind) throws IOException {
        ScannedOffice.add(pile, batch, job, kind);
    }

    /** Job 3 with another tank serial. */
    private Path printAnew() throws IOException {
        String again =
                Offices.register(3)
                        .replace("Kestrel Certificates", "Whimbrel Exchange")
                        .replace("2610040004512103", "2610040004512109");
        return at.print("again.csv", again);
    }

    private PaperState.Step step(String job) {
        return at.states(job).get("stc 1").step();
    }

    @Test
    void aFormIsPlacedWhereItLiesBesideAPageOfItsPackAndLooksLikeThatJobsAlone()
            throws IOException {
        try (Scanned pile = new Scanned()) {
            add(pile, "J-3", "warranty");
            pile.page(
                    ScannedOffice.pack(batch, "J-3"),
                    ScannedOffice.paper(batch, "J-3", "stc").first(),
                    List.of(),
                    true,
                    true);
            pile.empty();
            add(pile, "J-4", "stc");
            add(pile, "J-4", "warranty");
            pile.save(at.office.scans().resolve("pile.pdf"));
        }
        assertThat(at.scans().out())
                .contains(
                        "4 pages of 4 papers sorted into signed/, 2 without a mark by looks and"
                                + " neighbours, 1 empty. 0 findings.");
        assertThat(step("J-3")).isEqualTo(PaperState.Step.BACK);
        assertThat(step("J-4")).isEqualTo(PaperState.Step.BACK);
        assertThat(step("J-5")).isEqualTo(PaperState.Step.PRINTED);
        assertThat(at.signed()).contains("J-3/J-3-stc-assignment.pdf");
    }

    @Test
    void aFormAmongPagesOfAnotherJobIsAskedAbout() throws IOException {
        try (Scanned pile = new Scanned()) {
            add(pile, "J-3", "warranty");
            add(pile, "J-5", "stc");
            add(pile, "J-3", "old-heater");
            pile.save(at.office.scans().resolve("pile.pdf"));
        }
        assertThat(at.scans().out()).containsOnlyOnce("[page-unplaced]");
        for (String job : List.of("J-3", "J-4", "J-5")) {
            assertThat(step(job)).isEqualTo(PaperState.Step.PRINTED);
        }
    }

    @Test
    void aFormIsOfTheVersionThatItsNeighboursAreOf() throws IOException {
        Path later = printAnew();
        try (Scanned pile = new Scanned()) {
            ScannedOffice.add(pile, later, "J-3", "warranty");
            ScannedOffice.add(pile, later, "J-3", "stc");
            pile.save(at.office.scans().resolve("pile.pdf"));
        }
        assertThat(at.scans().out()).contains("1 without a mark by looks and neighbours");
        assertThat(step("J-3")).isEqualTo(PaperState.Step.PRINTED);
        assertThat(at.states("J-3").get("stc 2").step()).isEqualTo(PaperState.Step.BACK);
    }

    @Test
    void aFormOfTheEarlierVersionAmongPagesOfTheLaterIsAskedAbout() throws IOException {
        Path later = printAnew();
        try (Scanned pile = new Scanned()) {
            ScannedOffice.add(pile, later, "J-3", "warranty");
            add(pile, "J-3", "stc");
            pile.save(at.office.scans().resolve("pile.pdf"));
        }
        assertThat(at.scans().out()).containsOnlyOnce("[page-unplaced]");
        assertThat(step("J-3")).isEqualTo(PaperState.Step.PRINTED);
    }
}
