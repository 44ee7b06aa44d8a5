package paperbark.batch;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.WebElement;
import paperbark.finding.Finding;
import paperbark.finding.FindingCode;
import paperbark.outside.Browser;

/** Pages to type from and tables to send, of the sample week. */
class EntryPagesTest {
    @TempDir private Path folder;

    private static List<CSVRecord> rows(Path csv) throws IOException {
        String text = Files.readString(csv);
        assertThat(text).startsWith("\uFEFF");
        try (CSVParser parser =
                CSVParser.parse(
                        text.substring(1),
                        CSVFormat.RFC4180.builder().setHeader().setSkipHeaderRecord(true).get())) {
            return parser.getRecords();
        }
    }

    private static Set<String> pages(Path batch) throws IOException {
        Path entries = batch.resolve("entries");
        try (Stream<Path> all = Files.walk(entries)) {
            return all.filter(f -> f.toString().endsWith(".html"))
                    .map(f -> entries.relativize(f).toString())
                    .collect(Collectors.toCollection(TreeSet::new));
        }
    }

    @Test
    void theSampleWeekHasThoseOfItsMakerAndItsBuyer() throws IOException {
        Path batch = SampleWeek.published();

        List<CSVRecord> warranties = rows(batch.resolve("entries/dunlin.csv"));
        List<CSVRecord> claims = rows(batch.resolve("entries/whimbrel-exchange.csv"));
        assertThat(warranties).hasSize(13);
        assertThat(warranties.get(0).toMap())
                .containsEntry("Serial number", "2610040004512037")
                .containsEntry("Date installed", "16/11/2026")
                .containsEntry("Our reference", "SB-1101");
        assertThat(claims)
                .extracting(row -> row.get("Reference"))
                .containsExactly(
                        "SB-1103-STC",
                        "SB-1103-VEEC",
                        "SB-1108-STC",
                        "SB-1119-VEEC",
                        "SB-1127-STC");
        assertThat(claims.get(0).get("Install date")).isEqualTo("2026-11-16");
        assertThat(pages(batch))
                .hasSize(18)
                .contains("SB-1101/dunlin.html", "SB-1103/whimbrel-exchange-veec.html");
        // No page of jobs that are booked, no entry of a claim that is held.
        assertThat(pages(batch)).noneMatch(page -> page.contains("SB-1133"));
        String index = Files.readString(batch.resolve("index.html"));
        for (String page : pages(batch)) {
            assertThat(index).contains("href=\"entries/" + page + "\"");
        }
        assertThat(index).contains("Entries for Dunlin (table)");
    }

    @Test
    void theNumbersAreThoseOfThePapers() throws IOException {
        Path batch = SampleWeek.published();
        String summary = Files.readString(batch.resolve("manifest.json"));
        for (CSVRecord row : rows(batch.resolve("entries/whimbrel-exchange.csv"))) {
            String job = row.get("Reference").replaceFirst("-[A-Z]+$", "");
            String counted = summary.split("\"job\" : \"" + job + "\"")[1].split("}")[0];
            assertThat(counted)
                    .contains(
                            "\""
                                    + row.get("Type")
                                    + "\" : "
                                    + row.get("Certificates").replace(" INVENTED", ""));
        }
    }

    @Test
    void textThatLooksLikeAFormulaDoesNotRunAndABrokenListCostsNothing() throws IOException {
        Path templates = Files.createDirectories(folder.resolve("templates/entries"));
        Files.write(
                templates.resolve("dunlin.csv"),
                List.of(
                        "heading,value",
                        "'=Odd heading,${job.reference}",
                        "Owner,=cmd|${job.owner.names}",
                        "Minus,-5",
                        "Wrong,${job.nothing}"));
        Path register = folder.resolve("week.csv");
        Files.writeString(register, SampleWeek.only("SB-1101", "SB-1107"), StandardCharsets.UTF_8);
        Request request = SampleWeek.request(register, folder.resolve("out"));
        Outcome outcome =
                new Batch((what, done, of) -> {})
                        .prepare(
                                new Request(
                                        request.register(),
                                        new Request.FirmFiles(
                                                SampleWeek.TABLES,
                                                Optional.of(templates.getParent()),
                                                request.firm().rules()),
                                        request.out(),
                                        request.run(),
                                        request.extras(),
                                        request.ledger()));

        Path batch = outcome.published().orElseThrow();
        String csv = Files.readString(batch.resolve("entries/dunlin.csv"));
        assertThat(csv.lines().skip(1).findFirst().orElseThrow())
                .isEqualTo("SB-1101,'=cmd|Ada Amberwood,-5,");
        assertThat(csv.lines().findFirst().orElseThrow()).contains("'=Odd heading");
        assertThat(
                        outcome.findings().stream()
                                .filter(f -> f.code() == FindingCode.SIDE_FILE_LACKING))
                .singleElement()
                .extracting(Finding::where)
                .asString()
                .contains("entries/dunlin.csv", "row 5");
        assertThat(Files.readString(batch.resolve("entries/SB-1101/dunlin.html")))
                .contains("=cmd|Ada Amberwood");
    }

    /** By WCAG 2.1, levels A and AA, as axe-core judges it. */
    @Test
    @Tag("outside")
    void thePageIsForEveryone() throws IOException {
        Path page = SampleWeek.published().resolve("entries/SB-1103/whimbrel-exchange-stc.html");
        try (Browser browser = new Browser(folder)) {
            for (String colours : List.of("light", "dark")) {
                for (int width : List.of(1400, 320)) {
                    browser.sized(width, 900).in(colours).open(page);
                    assertThat(browser.violations()).as(colours + " " + width).isEmpty();
                    assertThat((Long) browser.ask("document.documentElement.scrollWidth"))
                            .isLessThanOrEqualTo(width);
                }
            }
        }
    }

    @Test
    @Tag("outside")
    void aTickIsRememberedAndAValueIsCopied() throws IOException {
        Path page = SampleWeek.published().resolve("entries/SB-1103/whimbrel-exchange-stc.html");
        try (Browser browser = new Browser(folder)) {
            browser.sized(1400, 900).open(page);
            int all = browser.all("tbody tr").size();
            assertThat(browser.seen(".shown")).containsExactly("0 of " + all + " typed.");
            browser.reloadAfter(
                    () -> {
                        browser.tabTo("tr:nth-child(2) input").press(" ");
                        assertThat(browser.seen(".shown"))
                                .containsExactly("1 of " + all + " typed.");
                    },
                    () -> browser.all("input").stream().anyMatch(WebElement::isSelected));
            assertThat(browser.all("input").stream().filter(WebElement::isSelected)).hasSize(1);

            browser.tabTo("tr:nth-child(1) button").press(" ");
            browser.ask("new Promise((done) => setTimeout(done, 300))");
            assertThat(browser.seen(".shown"))
                    .containsExactly("Copied: Reference. 1 of " + all + " typed.");

            // Another page has ticks of its own.
            browser.open(page.resolveSibling("whimbrel-exchange-veec.html"));
            assertThat(browser.all("input").stream().filter(WebElement::isSelected)).isEmpty();

            browser.withoutScript().open(page);
            assertThat(browser.seen("button")).isEmpty();
            assertThat(browser.seen(".value")).contains("SB-1103-STC");
            assertThat(browser.seen("input")).hasSize(all);
        }
    }
}
