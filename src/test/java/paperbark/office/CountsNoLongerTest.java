package paperbark.office;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import paperbark.cli.Program;
import paperbark.scan.Scanned;

/** What a later batch has no place for is taken back, and nothing sends or awaits it any more. */
class CountsNoLongerTest {
    private static final String CLAIM = ",yes,Kestrel Certificates,504.00,discount on the price,";

    @TempDir private Path folder;

    private ScannedOffice at;

    @BeforeEach
    void printTwoJobs() throws IOException {
        at = new ScannedOffice(folder);
    }

    private static String cover(Path batch, String job) throws IOException {
        return Drafts.pdf(Files.readAllBytes(ScannedOffice.pack(batch, job)))
                .replaceAll("\\s+", " ")
                .replace("- ", "-");
    }

    @Test
    void theStatementOfAClaimThatWasGivenUpIsTakenBackAndNotSent() throws IOException {
        assertThat(Drafts.of(at.office).get("2026-11-23-week/J-1-owner.eml").files().keySet())
                .containsExactly("J-1-owner-s-handover.pdf", "J-1-statement-of-benefit.pdf");

        String unclaimed = Offices.register(1).replace(CLAIM, ",no,,,,");
        Path later = at.print("more.csv", unclaimed);

        assertThat(Files.readString(later.resolve("index.html")))
                .contains(
                        "Take back only: Owner&#39;s handover, STC assignment, Statement of benefit;"
                                + " the other papers stand.");
        assertThat(cover(later, "J-1"))
                .contains(
                        "These of earlier batches count no longer, and have no other in their place:"
                                + " STC assignment of batch 2026-11-23-week, 23 Nov 2026; Statement"
                                + " of benefit of batch 2026-11-23-week, 23 Nov 2026. Take them back.");
        assertThat(Drafts.of(at.office))
                .doesNotContainKey("2026-11-23-week/J-1-owner.eml")
                .containsKeys("2026-11-23-week/J-2-owner.eml", "2026-11-23-more/J-1-owner.eml");
    }

    @Test
    void anAssignmentThatTheJobHasNoMoreIsNotAwaitedUntilTheJobHasItAgain() throws IOException {
        at.print("more.csv", Offices.register(1).replace(CLAIM, ",no,,,,"));
        try (Scanned pile = new Scanned()) {
            ScannedOffice.add(pile, at.batch, "J-1", "stc");
            pile.save(at.office.scans().resolve("pile.pdf"));
        }
        assertThat(at.scans().out())
                .contains(
                        "STC assignment of job J-1 is of batch 2026-11-23-week, and since batch"
                                + " 2026-11-23-more the job has no such paper any more.");
        assertThat(papers()).contains("J-2,STC assignment").doesNotContain("J-1,STC assignment");
        assertThat(at.states("J-1").get("stc 1").awaited())
                .isEqualTo("to be taken back, since the job has no such paper any more");

        // Two rows that both say that they are the job say nothing new of its papers.
        String[] rows = Offices.register(1).split("\n");
        at.print("twice.csv", rows[0] + "\n" + rows[1] + "\n" + rows[1].replace("Ada", "Eda"), 10);
        assertThat(papers()).doesNotContain("J-1,STC assignment");

        at.print("back.csv", Offices.register(1));
        assertThat(papers()).contains("J-1,STC assignment");
        assertThat(at.states("J-1").get("stc 1").isReady()).isTrue();
    }

    @Test
    void aJobWhosePlaceAnotherTakesIsGoneFromLettersCalendarAndPapers() throws IOException {
        try (Scanned pile = new Scanned()) {
            ScannedOffice.add(pile, at.batch, "J-2", "warranty");
            pile.save(at.office.scans().resolve("pile.pdf"));
        }
        assertThat(at.scans().exitCode()).isZero();
        assertThat(papers()).contains("J-1,STC assignment");
        Path later = at.print("fixed.csv", correcting("J-9", "J-1", Offices.register(1)));

        assertThat(Files.readString(later.resolve("index.html")))
                .contains(
                        "This row takes the place of J-1, as it says itself: take back the papers");
        assertThat(cover(later, "J-9"))
                .contains(
                        "This job takes the place of an earlier one, whose papers count no longer:"
                                + " Old-heater record of J-1, batch 2026-11-23-week, 23 Nov 2026;"
                                + " Warranty registration of J-1, batch",
                        "STC assignment of J-1,",
                        "Owner's handover of J-1,",
                        "Statement of benefit of J-1,")
                .doesNotContain("Entitlement working of J-1");
        assertThat(Drafts.of(at.office))
                .doesNotContainKeys("2026-11-23-week/J-1-owner.eml", "2026-11-23-week/J-1-STC.eml")
                .containsKeys("2026-11-23-week/J-2-owner.eml", "2026-11-23-fixed/J-9-owner.eml");
        assertThat(Drafts.of(at.office).get("2026-11-23-week/maker-dunlin.eml").files().keySet())
                .containsExactly("J-2-warranty-registration.pdf");
        assertThat(papers()).contains("J-9,STC assignment").doesNotContain("J-1,");
        List<String> yearly = yearly();
        assertThat(yearly).anyMatch(day -> day.contains(": J-1\n") && day.contains("CANCELLED"));
        assertThat(yearly).anyMatch(day -> day.contains(": J-9\n") && day.contains("CONFIRMED"));

        // Its row, where a list has it still, says nothing new.
        at.print("again.csv", Offices.register(1, 3));
        assertThat(Files.readString(at.office.packs().resolve("2026-11-23-again/index.html")))
                .contains("Job J-1 was withdrawn on 23 Nov 2026: corrected by job J-9.")
                .doesNotContain("packs/J-1.pdf");
    }

    private List<String> yearly() throws IOException {
        return Arrays.stream(Files.readString(at.office.calendar()).split("BEGIN:VEVENT"))
                .map(day -> day.replace("\r", ""))
                .filter(day -> day.contains("Yearly look over"))
                .toList();
    }

    private static String correcting(String job, String other, String register) {
        String[] lines = register.replace(other + ",", job + ",").split("\n");
        return lines[0] + ",Corrects\n" + lines[1] + "," + other + "\n";
    }

    /** Its sale is taken back in the journal of the batch, and the quarters count it no more. */
    @Test
    void aJobWithoutClaimsIsReplacedAsWell() throws IOException {
        String unclaimed = Offices.register(3).replace(CLAIM, ",no,,,,");
        at.print("three.csv", unclaimed);
        Path later = at.print("four.csv", correcting("J-4", "J-3", unclaimed));
        assertThat(later.resolve("journal.csv"))
                .content()
                .contains("J-3,", "Takes back the entry in batch 2026-11-23-three.");
        assertThat(cover(later, "J-4")).contains("Owner's handover of J-3,");
        // With the two of the first batch.
        assertThat(Program.run(at.office.root(), "quarters").out())
                .contains("    3      $13,860.00");
        assertThat(at.office.root().resolve("advices")).doesNotExist();
    }

    private String papers() throws IOException {
        return Files.readString(at.office.root().resolve(PaperList.TABLE));
    }
}
