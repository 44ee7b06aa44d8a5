package paperbark.office;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
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
                .replaceAll("\\s+", " ");
    }

    @Test
    void theStatementOfAClaimThatWasGivenUpIsTakenBackAndNotSent() throws IOException {
        assertThat(Drafts.of(at.office).get("2026-11-23-week/J-1-owner.eml").files().keySet())
                .containsExactly("J-1-owner-s-handover.pdf", "J-1-statement-of-benefit.pdf");

        String unclaimed = Offices.register(1).replace(CLAIM, ",no,,,,");
        Path later = at.print("more.csv", unclaimed);

        assertThat(Files.readString(later.resolve("index.html")))
                .contains(
                        "Take back only: Owner&#39;s handover, Statement of benefit, STC assignment;"
                                + " the other papers stand.");
        assertThat(cover(later, "J-1"))
                .contains(
                        "These of earlier batches count no longer, and have no other in their place:"
                                + " Statement of benefit of batch 2026-11-23-week, 23 Nov 2026; STC"
                                + " assignment of batch 2026-11-23-week, 23 Nov 2026. Take them back.");
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

        at.print("back.csv", Offices.register(1));
        assertThat(papers()).contains("J-1,STC assignment");
        assertThat(at.states("J-1").get("stc 1").isReady()).isTrue();
    }

    private String papers() throws IOException {
        return Files.readString(at.office.root().resolve(PaperList.TABLE));
    }
}
