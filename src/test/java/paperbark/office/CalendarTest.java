package paperbark.office;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.Map;
import java.util.TreeMap;
import net.fortuna.ical4j.data.CalendarBuilder;
import net.fortuna.ical4j.data.ParserException;
import net.fortuna.ical4j.model.Calendar;
import net.fortuna.ical4j.model.component.VEvent;
import net.fortuna.ical4j.validate.ValidationResult;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import paperbark.cli.Program;

/** The office's calendar, read back by another library (ical4j, after RFC 5545). */
class CalendarTest {
    @TempDir private Path folder;

    @BeforeEach
    void threeJobs() throws IOException {
        Offices.make(folder);
        Path rules = Files.createDirectories(folder.resolve("tables/rules/au"));
        Files.writeString(
                rules.resolve("public-holidays.csv"),
                "from,to,day,states,holiday,source,pinpoint,confidence,confirmed_on,note\n"
                        + "2026-01-01,2027-02-28,2026-12-24,VIC,A local day,how-we-read,test,derived,"
                        + "2026-11-01,made up\n");
        // The second has no plumbing certificate yet.
        Files.writeString(
                folder.resolve("week.csv"),
                Offices.register(1, 2, 3).replace("DEMO-2,17/11/2026", ","));
        prepare("2026-11-23", "week.csv");
    }

    private Program.Run run(String day, String... words) {
        Program.Run run = Program.run(Instant.parse(day + "T02:00:00Z"), folder, words);
        assertThat(run.exitCode()).as(run.out() + run.err()).isIn(0, 10);
        return run;
    }

    private void prepare(String day, String register) {
        run(
                day,
                "prepare",
                register,
                "--tables",
                "tables",
                "--ledger",
                "paperbark.db",
                "--out",
                "packs");
    }

    /** The days by their titles. */
    private Map<String, VEvent> calendar(String day) throws IOException, ParserException {
        run(day, "week", ".");
        Calendar calendar;
        try (var in = Files.newInputStream(folder.resolve("calendar.ics"))) {
            calendar = new CalendarBuilder().build(in);
        }
        ValidationResult judged = calendar.validate();
        assertThat(judged.getEntries()).isEmpty();
        Map<String, VEvent> days = new TreeMap<>();
        for (Object event : calendar.getComponents("VEVENT")) {
            VEvent one = (VEvent) event;
            days.put(one.getSummary().getValue(), one);
        }
        return days;
    }

    private static String day(VEvent event) {
        return event.getStartDate().getValue();
    }

    @Test
    void whatMustNotBeForgottenIsInItWithWarnings() throws Exception {
        Map<String, VEvent> days = calendar("2026-11-23");

        VEvent closing = days.get("Last day to create 14 STCs: J-1");
        assertThat(day(closing)).isEqualTo("20271116");
        assertThat(closing.getAlarms())
                .extracting(a -> a.getTrigger().getValue())
                .containsExactly("-P60D", "-P2W");
        assertThat(closing.getStatus().getValue()).isEqualTo("CONFIRMED");
        assertThat(days.get("Last day to create STCs: J-2, held")).isNotNull();
        // Five days after 16 November, as the sample firm's table of state papers says.
        assertThat(day(days.get("Last day for Compliance certificate: J-2"))).isEqualTo("20261121");
        assertThat(days).doesNotContainKey("Last day for Compliance certificate: J-1");
        assertThat(day(days.get("Yearly look over: J-1"))).isEqualTo("20271116");
        assertThat(day(days.get("Licence ends: Wanda Wattle, plumbing, VIC")))
                .isEqualTo("20270630");
        assertThat(day(days.get("Offer ends: Kestrel Certificates, STCs"))).isEqualTo("20261130");
        assertThat(day(days.get("Rule ends: au/public-holidays.csv for 2026-12-24")))
                .isEqualTo("20270228");
        assertThat(Files.readString(folder.resolve("calendar.ics")))
                .doesNotContain("Amberwood", "Teaspoon", "0491 57", "example.com");
    }

    @Test
    void aDayKeepsItsNameAndIsCancelledWithItsJob() throws Exception {
        Map<String, VEvent> before = calendar("2026-11-23");
        byte[] bytes = Files.readAllBytes(folder.resolve("calendar.ics"));
        assertThat(calendar("2026-11-23")).hasSameSizeAs(before);
        assertThat(Files.readAllBytes(folder.resolve("calendar.ics"))).isEqualTo(bytes);

        run("2026-11-24", "withdraw", "J-1", "--because", "called off");
        run("2026-11-24", "lodged", "J-3");
        Map<String, VEvent> after = calendar("2026-11-24");

        for (String title :
                new String[] {"Last day to create 14 STCs: J-1", "Yearly look over: J-1"}) {
            assertThat(after.get(title).getUid()).isEqualTo(before.get(title).getUid());
            assertThat(after.get(title).getStatus().getValue()).isEqualTo("CANCELLED");
            assertThat(after.get(title).getAlarms()).isEmpty();
            assertThat(after.get(title).getSequence().getSequenceNo())
                    .isGreaterThan(before.get(title).getSequence().getSequenceNo());
        }
        VEvent lodged = after.get("Last day to create 14 STCs: J-3");
        assertThat(lodged.getStatus().getValue()).isEqualTo("CANCELLED");
        assertThat(lodged.getDescription().getValue()).contains("Lodged");
        assertThat(after.get("Yearly look over: J-3").getStatus().getValue())
                .isEqualTo("CONFIRMED");
    }

    @Test
    void aCalendarThatCannotBeMadeCostsNoRegister() throws Exception {
        Files.createDirectories(folder.resolve("calendar.ics/in the way"));
        Files.writeString(folder.resolve("intake/more.csv"), Offices.register(4));

        Program.Run run =
                Program.run(
                        Instant.parse("2026-11-24T02:00:00Z"),
                        folder,
                        "watch",
                        ".",
                        "--once",
                        "--quiet-for",
                        "0");

        assertThat(run.exitCode()).as(run.out() + run.err()).isIn(0, 10);
        assertThat(folder.resolve("packs/2026-11-24-more/index.html")).exists();
        assertThat(Files.readString(folder.resolve("status.html")))
                .contains("calendar.ics could not be made");
    }
}
