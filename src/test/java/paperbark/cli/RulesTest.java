package paperbark.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import paperbark.rules.Overlay;

class RulesTest {
    @TempDir private Path directory;

    @BeforeEach
    void writeTheFirmsRules() throws IOException {
        Files.createDirectories(directory.resolve("tables/rules"));
        Overlay.in(directory.resolve("tables/rules"))
                .file(
                        "gst.csv",
                        Files.readString(Path.of("src/main/resources/rules/gst.csv"))
                                        .lines()
                                        .findFirst()
                                        .orElseThrow()
                                + "\n2026-01-01,2026-12-31,10,test-list,page 4,derived,2025-01-31,\n");
    }

    @Test
    void everyRowHasItsValuesSourceConfidenceAndDay() {
        assertThat(rules("--as-of", "2026-11-23"))
                .startsWith("Rules in force on 23 Nov 2026:")
                .contains(
                        "stc/years.csv - years 5 1 Jan 2026 to 31 Dec 2026 row 7: Entitlement of",
                        "derived; confirmed 25 Nov 2026",
                        "count_rounding value down",
                        "from memory, not verified",
                        "why there is no value: some solar heaters may be replaced");
    }

    @Test
    void withoutADateTheDayIsToday() {
        assertThat(rules()).startsWith("Rules in force on 23 Nov 2026:");
        assertThat(rules("--as-of", "2027-02-01", "--table", "years")).contains("years 4");
    }

    @Test
    void aLongTableIsCountedUnlessAskedFor() {
        assertThat(rules()).contains("174 rows; --table stc/zones.csv shows them");
        List<String> rows =
                Program.run(directory, "rules", "--table", "stc/zones").out().lines().toList();
        assertThat(rows.stream().filter(line -> line.endsWith("from 1 Jan 2020"))).hasSize(174);
        assertThat(rows).doesNotContain("stc/years.csv");
    }

    @Test
    void whatLapsesWithinTheDaysIsListedWithWhetherItGoesOn() {
        String within = after(rules("--as-of", "2026-11-23"), "Lapsing");
        assertThat(within)
                .startsWith("Lapsing within 90 days, to 21 Feb 2027: 1 row")
                .contains(
                        "years 5 1 Jan 2026 to 31 Dec 2026", "a further row begins the day after");
        assertThat(after(rules("--as-of", "2026-11-23", "--within", "37"), "Lapsing"))
                .startsWith("Lapsing within 37 days, to 30 Dec 2026: none");
        assertThat(after(rules("--as-of", "2026-11-23", "--within", "38"), "Lapsing"))
                .startsWith("Lapsing within 38 days, to 31 Dec 2026: 1 row");
        Overlay.in(directory.resolve("tables/rules"))
                .file(
                        "veec/listed-counts.csv",
                        """
                        from,to,maker,model,activity,climate_zone,certificates,source,pinpoint,confidence,confirmed_on,note
                        2026-01-01,2026-12-31,Dunlin,D270-A,1D,4,12,test-list,,published,2026-11-20,
                        """);
        assertThat(rules("--tables", "tables", "--table", "listed-counts"))
                .contains("Dunlin, D270-A, 1D, 4", "no further row begins the day after");
    }

    @Test
    void whatNobodyComparedForAYearIsListed() {
        assertThat(after(rules("--as-of", "2027-11-25"), "Not confirmed"))
                .startsWith("Not confirmed for 12 months: 17 rows (17 from memory, not verified)")
                .doesNotContain("years 4");
        assertThat(after(rules("--as-of", "2027-11-26"), "Not confirmed"))
                .contains("years 4", "confirmed 25 Nov 2026");
    }

    @Test
    void theFirmsRowsAreNamedAsTheFirmsAndWin() {
        assertThat(rules("--tables", "tables", "--as-of", "2026-11-23", "--table", "gst"))
                .contains(
                        "gst.csv (the firm's) -",
                        "row 2: List made for a test, Nobody, page 4; derived; confirmed 31 Jan 2025",
                        "the firm's row for the same key wins",
                        "Not confirmed for 12 months: 1 row");
        assertThat(rules("--table", "gst")).doesNotContain("the firm's");
    }

    @Test
    void noLineIsLongerThanAHundred() {
        Program.Run run = Program.run(directory, "rules", "--tables", "tables");
        assertThat(run.out().lines()).isNotEmpty().allMatch(line -> line.length() <= 100);
    }

    @Test
    void machinesGetEveryRow() throws IOException {
        Program.Run run =
                Program.run(directory, "rules", "--json", "--tables", "tables", "--within", "40");
        JsonNode json = new ObjectMapper().readTree(run.out());
        assertThat(json.get("asOf").asText()).isEqualTo("2026-11-23");
        assertThat(json.get("withinDays").asInt()).isEqualTo(40);
        assertThat(json.get("inForce").size()).isGreaterThan(250);
        assertThat(json.get("lapsing").findValuesAsText("table"))
                .containsExactlyInAnyOrder("stc/years.csv", "gst.csv (the firm's)");
        JsonNode fromMemory = json.get("unconfirmed").get(0);
        assertThat(fromMemory.has("confirmedOn")).isFalse();
        assertThat(fromMemory.get("sure").asText()).isEqualTo("from memory, not verified");
        JsonNode old = json.get("unconfirmed").get(json.get("unconfirmed").size() - 1);
        assertThat(old.get("confirmedOn").asText()).isEqualTo("2025-01-31");
        assertThat(old.get("sure").asText()).isEqualTo("derived");
        assertThat(old.get("pinpoint").asText()).isEqualTo("page 4");
    }

    @Test
    void wrongWordsEndWithTwo() {
        Program.Run table = Program.run(directory, "rules", "--table", "stc/moons");
        assertThat(table.exitCode()).isEqualTo(2);
        assertThat(table.err())
                .contains("There is no rule table \"stc/moons\".", "stc/zones.csv", "gst.csv");
        Program.Run tables = Program.run(directory, "rules", "--tables", "nowhere");
        assertThat(tables.exitCode()).isEqualTo(2);
        assertThat(tables.err()).contains("Not found:", "nowhere");
        assertThat(Program.run(directory, "rules", "--within", "-1").exitCode()).isEqualTo(2);
        assertThat(Program.run(directory, "rules", "--within", "soon").exitCode()).isEqualTo(2);
    }

    @Test
    void tablesThatCannotBeUsedEndWithTwentyThree() {
        Overlay.in(directory.resolve("tables/rules")).file("stc/years.csv", "a,b\n1,2\n");
        Program.Run run = Program.run(directory, "rules", "--tables", "tables");
        assertThat(run.exitCode()).isEqualTo(23);
        assertThat(run.err()).contains("stc/years.csv (the firm's)");
    }

    /** The output as one line with single blanks, so that columns do not matter. */
    private String rules(String... more) {
        Program.Run run =
                Program.run(
                        directory,
                        Stream.concat(Stream.of("rules"), Stream.of(more)).toArray(String[]::new));
        assertThat(run.exitCode()).as(run.err()).isZero();
        return run.out().replaceAll("\\s+", " ");
    }

    private static String after(String out, String heading) {
        return out.substring(out.indexOf(heading));
    }
}
