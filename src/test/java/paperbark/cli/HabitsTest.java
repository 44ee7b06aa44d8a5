package paperbark.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.File;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Stream;
import org.apache.commons.io.FileUtils;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import paperbark.batch.Ending;

/**
 * Registers that three firms keep in their own ways, from the first drop to a batch without a held
 * job. Only tables are edited on the way: {@code habits/<name>/tables} goes over the sample firm's,
 * the register stays as it is.
 */
class HabitsTest {
    private static final Path HABITS = Path.of("src/test/resources/habits");

    @TempDir private Path folder;

    /** The firms of these lists know other makers, people, sellers and buyers. */
    private static final Map<String, String> OWN_NAMES =
            Map.ofEntries(
                    Map.entry("Dunlin", "Godwit"),
                    Map.entry("Ternlight", "Lampwing"),
                    Map.entry("Kestrel Certificates", "Harrier Certificates"),
                    Map.entry("Pipit and Wren", "Robin and Reed"),
                    Map.entry("Whimbrel Exchange", "Stilt Exchange"),
                    Map.entry("Mudlark Merchants", "Magpie Merchants"),
                    Map.entry("Curlew Bathroom Supplies", "Dotterel Bathroom Supplies"),
                    Map.entry("Wanda Wattle", "Willa Waratah"),
                    Map.entry("Tilly Teatree", "Tessa Tallow"),
                    Map.entry("Banjo Bottlebrush", "Basil Banksia"),
                    Map.entry("Clem Currawong", "Cass Cassia"),
                    Map.entry("Gus Grevillea", "Gil Gumnut"),
                    Map.entry("Perry Peppermint", "Pip Paperbark"));

    @BeforeEach
    void aFirmBeginsWithTheSampleTables() throws IOException {
        FileUtils.copyDirectory(
                Path.of("input-samples/tables").toFile(), folder.resolve("tables").toFile());
        // The sample firm's own headings and words are what a firm replaces first.
        Files.delete(folder.resolve("tables/columns.csv"));
        Files.delete(folder.resolve("tables/words.csv"));
        for (Path table :
                FileUtils.listFiles(folder.toFile(), new String[] {"csv"}, true).stream()
                        .map(File::toPath)
                        .toList()) {
            String text = Files.readString(table);
            for (Map.Entry<String, String> name : OWN_NAMES.entrySet()) {
                text = text.replace(name.getKey(), name.getValue());
            }
            Files.writeString(table, text);
        }
    }

    @Test
    void monthTabsWithColoursLegendsAndRemarksBetweenTheJobs() throws IOException {
        HabitBooks.xlsx(text("month-tabs"), folder.resolve("jobs.xlsx"));
        assertThat(prepare("jobs.xlsx").ending()).isEqualTo(Ending.REFUSED);

        edit("month-tabs");
        Result result = prepare("jobs.xlsx");
        assertThat(result.held()).as(result.toString()).isZero();
        assertThat(result.ending()).isEqualTo(Ending.DONE);
        assertThat(result.jobs()).isEqualTo(4);
        assertThat(result.cancelled()).isEqualTo(1);
        assertThat(result.rows("row-no-job")).containsExactly(4, 7, 12, 15, 16);
        assertThat(result.rows("row-ignored")).containsExactly(9, 11);
        assertThat(result.stops()).isEmpty();
    }

    @Test
    void anOldWorkbookWithLookUpsDaysFrom1904AndNoJobNumbers() throws IOException {
        HabitBooks.xlsFrom1904(text("look-ups"), folder.resolve("jobs.xls"));
        assertThat(prepare("jobs.xls").ending()).isEqualTo(Ending.REFUSED);

        edit("look-ups");
        Result result = prepare("jobs.xls");
        assertThat(result.held()).as(result.toString()).isZero();
        assertThat(result.ending()).isEqualTo(Ending.DONE);
        assertThat(result.jobs()).isEqualTo(3);
        assertThat(result.rows("row-no-job")).containsExactly(6);
        assertThat(result.rows("row-ignored")).containsExactly(5);
        assertThat(result.rows("dates-from-1904")).hasSize(1);
        assertThat(result.stops()).isEmpty();
        try (Stream<Path> packs = Files.list(result.published().resolve("packs"))) {
            assertThat(packs.map(p -> p.getFileName().toString()))
                    .hasSize(3)
                    .allMatch(name -> name.matches("(?i)ql-[0-9a-z]{7}.*\\.pdf"));
        }
    }

    @Test
    void anExportWithARowACertificate() throws IOException {
        Files.copy(HABITS.resolve("row-a-certificate/register.csv"), folder.resolve("export.csv"));
        assertThat(prepare("export.csv").ending()).isEqualTo(Ending.REFUSED);

        edit("row-a-certificate");
        Result result = prepare("export.csv");
        assertThat(result.held()).as(result.toString()).isZero();
        assertThat(result.ending()).isEqualTo(Ending.DONE);
        assertThat(result.jobs()).isEqualTo(3);
        assertThat(result.certificates()).isEqualTo("{\"STC\":42,\"VEEC\":14}");
        assertThat(result.rows("cell-split")).contains(2, 4, 5);
        assertThat(result.rows("row-no-job")).containsExactly(7);
        assertThat(result.rows("row-ignored")).isEmpty();
        assertThat(result.stops()).isEmpty();
    }

    private static Path text(String habit) {
        return HABITS.resolve(habit).resolve("register.txt");
    }

    private void edit(String habit) throws IOException {
        FileUtils.copyDirectory(
                HABITS.resolve(habit).resolve("tables").toFile(),
                folder.resolve("tables").toFile());
    }

    private Result prepare(String register) throws IOException {
        Program.Run run = Program.run(folder, "prepare", register, "--tables", "tables", "--json");
        assertThat(run.err()).isEmpty();
        return new Result(new ObjectMapper().readTree(run.out()));
    }

    /** What the program answers to other programs. */
    private record Result(JsonNode json) {
        Ending ending() {
            return Ending.valueOf(json.get("ending").asText().toUpperCase(Locale.ROOT));
        }

        int jobs() {
            return json.get("jobs").asInt();
        }

        int held() {
            return json.get("heldJobs").asInt();
        }

        int cancelled() {
            return json.get("cancelled").asInt();
        }

        String certificates() {
            return json.get("certificates").toString();
        }

        Path published() {
            return Path.of(json.get("published").asText());
        }

        List<Integer> rows(String code) {
            List<Integer> rows = new ArrayList<>();
            json.get("findings")
                    .forEach(
                            finding -> {
                                if (!finding.get("code").asText().equals(code)) {
                                    return;
                                }
                                if (finding.has("rows")) {
                                    finding.get("rows").forEach(row -> rows.add(row.asInt()));
                                } else {
                                    rows.add(finding.get("row").asInt());
                                }
                            });
            return rows;
        }

        List<String> stops() {
            List<String> stops = new ArrayList<>();
            json.get("findings")
                    .forEach(
                            finding -> {
                                if (finding.get("severity").asText().equals("stop")) {
                                    stops.add(finding.toString());
                                }
                            });
            return stops;
        }
    }
}
