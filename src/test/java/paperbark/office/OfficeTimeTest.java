package paperbark.office;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.time.Instant;
import java.util.List;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import paperbark.cli.Program;

/** A clock that is wrong costs no copy, and the day is the office's and not the computer's. */
class OfficeTimeTest {
    private static final Instant YEARS_AHEAD = Instant.parse("2035-03-01T00:00:00Z");

    @TempDir private Path folder;

    private Office office;

    @BeforeEach
    void makeAnOffice() throws IOException {
        office = Offices.make(folder.resolve("office"));
    }

    private Program.Run at(Instant now, String... words) {
        return Program.run(now, office.root(), words);
    }

    private Program.Run watch(Instant now) {
        return at(now, "watch", ".", "--once", "--quiet-for", "0");
    }

    private void drop(String name, String content, String brought) throws IOException {
        Path file = Files.writeString(office.intake().resolve(name), content);
        Files.setLastModifiedTime(file, FileTime.from(Instant.parse(brought)));
    }

    private List<String> copies() throws IOException {
        return Office.list(office.backups()).stream().map(f -> f.getFileName().toString()).toList();
    }

    @Test
    void aClockYearsAheadDeletesNoCopy() throws IOException {
        drop("one.csv", Offices.register(1), "2026-11-01T10:00:00Z");
        for (int day = 10; day < 20; day++) {
            watch(Instant.parse("2026-11-" + day + "T01:00:00Z"));
        }
        assertThat(copies()).hasSize(10);
        watch(YEARS_AHEAD);
        assertThat(copies()).hasSize(11).contains("paperbark-2026-11-10.db");
        drop("two.csv", Offices.register(2), "2026-11-20T10:00:00Z");
        watch(YEARS_AHEAD);
        watch(YEARS_AHEAD.plusSeconds(86_400));
        assertThat(copies()).hasSize(12).contains("paperbark-2026-11-10.db");
    }

    @Test
    void copiesGoWhenTwoWitnessesAgreeButNeverTheLast() throws IOException {
        for (int day = 10; day < 20; day++) {
            watch(Instant.parse("2026-11-" + day + "T01:00:00Z"));
        }
        drop("one.csv", Offices.register(1), "2027-06-01T10:00:00Z");
        watch(Instant.parse("2027-06-01T11:00:00Z"));
        assertThat(copies())
                .hasSize(Backups.ALWAYS_KEPT)
                .contains("paperbark-2026-11-19.db", "paperbark-2027-06-01.db");
    }

    @Test
    void aBatchOfADayToComeCanBeSettled() throws IOException {
        drop("one.csv", Offices.register(1), "2026-11-01T10:00:00Z");
        watch(YEARS_AHEAD);
        Instant now = Instant.parse("2026-11-23T01:00:00Z");
        Program.Run wrong = at(now, "doctor", ".");
        assertThat(wrong.exitCode()).isEqualTo(23);
        assertThat(wrong.out()).contains("batch 2035-03-01-one", "--clock-right");
        assertThat(at(now, "doctor", ".", "--clock-right").exitCode()).isZero();
        assertThat(at(now, "doctor", ".").exitCode()).isZero();
    }

    /** A morning in Victoria is the evening before in UTC. */
    @ParameterizedTest
    @CsvSource({
        "'', 2026-11-24",
        "'time zone,Australia/Perth', 2026-11-24",
        "'time zone,Etc/UTC', 2026-11-23"
    })
    void theDayIsTheOffices(String fact, String day) throws IOException {
        Path firm = office.tables().resolve("firm.csv");
        Files.writeString(firm, Files.readString(firm) + fact + (fact.isEmpty() ? "" : "\n"));
        drop("one.csv", Offices.register(1), "2026-11-01T10:00:00Z");
        Program.Run watch = watch(Instant.parse("2026-11-23T20:30:00Z"));
        assertThat(watch.exitCode()).as(watch.out() + watch.err()).isZero();
        assertThat(office.packs().resolve(day + "-one")).isDirectory();
    }

    private String preview(Instant now) throws IOException {
        Program.Run preview =
                at(now, "preview", "cover", "--register", "intake/one.csv", "--out", "seen.pdf");
        assertThat(preview.exitCode()).as(preview.out() + preview.err()).isZero();
        return text(office.root().resolve("seen.pdf"));
    }

    private static String text(Path pdf) throws IOException {
        try (PDDocument document = Loader.loadPDF(pdf.toFile())) {
            return new PDFTextStripper().getText(document).replaceAll("\\s+", " ");
        }
    }

    @Test
    void theDayOfRulesAndPreviewAndGuideIsTheOfficesToo() throws IOException {
        Instant morning = Instant.parse("2026-11-23T20:30:00Z");
        assertThat(at(morning, "rules").out()).contains("Rules in force on 24 Nov 2026");
        Program.Run elsewhere =
                Program.run(morning, folder, "rules", "--tables", office.tables().toString());
        assertThat(elsewhere.out()).contains("Rules in force on 24 Nov 2026");
        assertThat(Program.run(morning, folder, "rules").out())
                .contains("Rules in force on 23 Nov 2026");

        // A job of that morning is done by the office's day, and still to come by the computer's.
        drop(
                "one.csv",
                Offices.register(1).replace("16/11/2026", "24/11/2026"),
                "2026-11-23T20:00:00Z");
        assertThat(preview(morning)).doesNotContain("is still to come");
        Path firm = office.tables().resolve("firm.csv");
        Files.writeString(firm, Files.readString(firm) + "time zone,Etc/UTC\n");
        assertThat(preview(morning)).contains("is still to come");

        Path fresh = folder.resolve("fresh");
        Program.run(morning, folder, "setup", fresh.toString());
        assertThat(text(fresh.resolve("guide.pdf"))).contains("24 Nov 2026");
    }

    @Test
    void aTimeZoneThatIsNoneIsNamed() throws IOException {
        Path firm = office.tables().resolve("firm.csv");
        Files.writeString(firm, Files.readString(firm) + "time zone,Ballan\n");
        assertThat(at(YEARS_AHEAD, "doctor", ".").out()).contains("No time zone has this name.");
    }
}
