package paperbark.office;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import org.apache.james.mime4j.dom.BinaryBody;
import org.apache.james.mime4j.dom.Entity;
import org.apache.james.mime4j.dom.Message;
import org.apache.james.mime4j.dom.Multipart;
import org.apache.james.mime4j.dom.TextBody;
import org.apache.james.mime4j.message.DefaultMessageBuilder;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import paperbark.cli.Program;

/** The page of the week, its sheet, and its mail draft as another library (mime4j) reads it. */
class WeekTest {
    @TempDir private Path folder;

    @BeforeEach
    void threeJobsOfWhichOneIsHeld() throws IOException {
        Offices.make(folder);
        Files.writeString(
                folder.resolve("intake/week.csv"),
                Offices.register(1, 2, 3).replace("DEMO-2,17/11/2026", ","));
        watch("2026-11-23");
    }

    private Program.Run run(String day, String... words) {
        Program.Run run = Program.run(Instant.parse(day + "T02:00:00Z"), folder, words);
        assertThat(run.exitCode()).as(run.out() + run.err()).isIn(0, 10);
        return run;
    }

    private void watch(String day) {
        run(day, "watch", ".", "--once", "--quiet-for", "0");
    }

    private String page() throws IOException {
        return text(Files.readString(folder.resolve("week.html")));
    }

    private static String text(String html) {
        return html.replaceAll("(?s)<style>.*</style>", " ")
                .replaceAll("<[^>]*>", " ")
                .replaceAll("\\s+", " ");
    }

    @Test
    void theWeekTellsWhatIsToBeDoneAndWhomToRing() throws IOException {
        run("2026-11-24", "paid", "J-3-STC", "100.00");
        run("2026-12-20", "week", ".");

        assertThat(page())
                .contains(
                        "The week of 14 Dec 2026 to 20 Dec 2026",
                        "Nothing closes by the end of the week.",
                        "Last day for Compliance certificate: J-2: 21 Nov 2026, 29 days ago",
                        "2026-11-23-week : 1 job",
                        // The number is that of the buyers table.
                        "Kestrel Certificates (03) 7010 0410 $",
                        "J-1-STC, due 30 Nov 2026, 20 days")
                .doesNotContain("Amberwood", "Teaspoon");
        String money = page().split("Money overdue")[1];
        assertThat(run("2026-12-20", "owed").out())
                .contains(money.replaceAll(".*Together (\\S+)\\..*", "$1"));

        run("2026-12-21", "paid", "J-1-STC", "--more", "505.80");
        run("2026-12-21", "withdraw", "J-3", "--because", "called off");
        run("2026-12-21", "week", ".");
        assertThat(page()).contains("Nothing is overdue.", "Disk: ", "1 copy of the ledger");
    }

    @Test
    void aBookedJobWhoseVisitShouldBeOverIsAskedForUntilItsRowTellsMore() throws IOException {
        String booked =
                Offices.register(4, 5)
                        .replace("Job,Stage,Installed on", "Job,Stage,Visit")
                        .replace("installed,16/11/2026", "booked,24/11/2026")
                        .replaceFirst("J-5,booked,24", "J-5,booked,27");
        Files.writeString(folder.resolve("intake/next.csv"), booked);
        watch("2026-11-24");
        run("2026-11-24", "week", ".");
        assertThat(page()).doesNotContain("Visits that should be over");
        run("2026-11-26", "week", ".");
        assertThat(page())
                .contains("Visits that should be over J-4 : visit was on 24 Nov 2026 (2 days ago)")
                .doesNotContain("J-5 : visit");
        try (PDDocument sheet = Loader.loadPDF(folder.resolve("week.pdf").toFile())) {
            assertThat(new PDFTextStripper().getText(sheet).replaceAll("\\s+", " "))
                    .contains("J-4: visit was on 24 Nov 2026 (2 days ago): installed?");
        }
        Files.writeString(folder.resolve("intake/done.csv"), Offices.register(4));
        run("2026-11-30", "withdraw", "J-5", "--because", "called off");
        watch("2026-11-30");
        run("2026-11-30", "week", ".");
        assertThat(page()).doesNotContain("Visits that should be over");
    }

    @Test
    void whatClosesThisWeekStandsFirst() throws IOException {
        run("2027-11-15", "week", ".");
        assertThat(page().split("Failed")[0])
                .contains("To be lodged this week", "J-1-STC", "16 Nov 2027 1 day left")
                .doesNotContain("J-2-STC");
        run("2027-11-15", "lodged", "J-1", "J-3");
        run("2027-11-15", "week", ".");
        assertThat(page()).contains("Nothing closes by the end of the week.");
        // Seven days earlier it is not of that week.
        run("2027-11-08", "week", ".");
        assertThat(page()).contains("Nothing closes by the end of the week.");
    }

    @Test
    void theDraftIsReadByAnotherLibrary() throws IOException {
        run("2026-12-20", "week", ".");
        Message draft =
                new DefaultMessageBuilder()
                        .parseMessage(
                                new ByteArrayInputStream(
                                        Files.readAllBytes(folder.resolve("week.eml"))));

        assertThat(draft.getTo().flatten())
                .extracting(Object::toString)
                .containsExactly("office@saltmarsh.example.com");
        assertThat(draft.getSubject())
                .startsWith(
                        "The week of 14 Dec 2026 to 20 Dec 2026: 0 to lodge, 0 failed, 1 papers");
        List<Entity> parts = ((Multipart) draft.getBody()).getBodyParts();
        assertThat(parts).hasSize(2);
        String body =
                new String(
                        ((TextBody) parts.get(0).getBody()).getInputStream().readAllBytes(),
                        StandardCharsets.UTF_8);
        assertThat(text(body)).isEqualTo(page());
        assertThat(parts.get(1).getFilename()).isEqualTo("week.pdf");
        byte[] sheet = ((BinaryBody) parts.get(1).getBody()).getInputStream().readAllBytes();
        assertThat(sheet).isEqualTo(Files.readAllBytes(folder.resolve("week.pdf")));
        try (PDDocument pdf = Loader.loadPDF(sheet)) {
            assertThat(new PDFTextStripper().getText(pdf).replaceAll("\\s+", " "))
                    .contains("The week of 14 Dec 2026", "Kestrel Certificates (03) 7010 0410");
        }
    }

    /** What it says of days is what the newest batch's index page says. */
    @Test
    void watchMakesItAnewWhenSomethingWasTakenInAndWhenADayIsOver() throws IOException {
        assertThat(page())
                .contains("The week of 23 Nov 2026 to 29 Nov 2026", "2026-11-23-week : 1 job");
        Files.writeString(
                folder.resolve("intake/late.csv"),
                Offices.register(4)
                        .replace("16/11/2026", "27/11/2025")
                        .replace("17/11/2026", "28/11/2025"));
        watch("2026-11-23");
        assertThat(page().split("Failed")[0])
                .contains("To be lodged this week", "J-4-STC", "27 Nov 2026 4 days left");
        watch("2026-11-24");
        assertThat(page()).contains("27 Nov 2026 3 days left");
        watch("2026-12-01");
        assertThat(page()).contains("The week of 30 Nov 2026 to 6 Dec 2026");
    }

    @Test
    void aBookingThatNoBatchToldOfForAYearIsGivenUp() throws IOException {
        Files.writeString(
                folder.resolve("intake/next.csv"),
                Offices.register(4)
                        .replace("Job,Stage,Installed on", "Job,Stage,Visit")
                        .replace("installed,16/11/2026", "booked,24/11/2026"));
        watch("2026-11-24");
        run("2027-11-24", "week", ".");
        assertThat(page()).contains("J-4 : visit was on 24 Nov 2026");
        run("2027-11-25", "week", ".");
        assertThat(page()).doesNotContain("J-4 : visit");
    }
}
