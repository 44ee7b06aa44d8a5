package paperbark.packaged;

import static java.util.Map.entry;
import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;
import paperbark.outside.Browser;
import paperbark.outside.Outside;
import paperbark.outside.Typist;

/**
 * A new office, from the zip to its first published week: what a person types into a command
 * window, does with files, types in LibreOffice and reads in Chromium, and nothing else. No text
 * editor.
 */
@Tag("outside")
@EnabledOnOs(OS.LINUX)
@Timeout(value = 10, unit = TimeUnit.MINUTES)
class FirstWeekIT {
    private static final String REGISTER = "Our jobs.xls";

    @TempDir private Path home;

    private final LocalDate today = LocalDate.now();
    private NewOffice office;
    private Typist typist;
    private Browser browser;

    @BeforeEach
    void unpack() throws IOException {
        Path packaged = Unpacked.packaged();
        Outside.Result unzipped =
                Outside.run(home, "unzip", "-q", packaged + ".zip", "-d", home.toString());
        assertThat(unzipped.exitCode()).as(unzipped.err()).isZero();
        office = new NewOffice(home, home.resolve(packaged.getFileName()).resolve("paperbark"));
        browser = new Browser(home.resolve("browser"));
        typist = new Typist(Files.createDirectories(home.resolve("typist")));
    }

    @AfterEach
    void stop() throws Exception {
        office.kill();
        browser.close();
    }

    @Test
    void fromTheZipToAPublishedWeekWithoutATextEditor() throws Exception {
        answerWhoTheFirmIs();
        typeThePrices();
        office.start();
        status("now", "p", "Nothing is being worked on.");

        Path list = OwnList.of(home.resolve("desktop"), REGISTER, today, typist);
        office.drop(list);
        Path returned = office.returned();
        acceptTheHeadings(returned);

        // As the note says: the same file again.
        office.drop(returned.resolve(REGISTER));
        Path first = office.batch(1);
        assertThat(status("people", "li", "4 jobs still held"))
                .as("the list that went back waits no longer")
                .hasSize(1);
        completeTheNames(first);

        office.drop(list);
        Path second = office.batch(2);
        assertThat(index(second, "held")).containsExactly("K-305");
        assertThat(index(second, "")).contains("K-301", "K-302", "K-303").hasSize(4);
        assertThat(browser.seen("table.jobs").get(0))
                .contains("STCs")
                .doesNotContain("none claimed");
        answerWhatIsMissing(second);

        Path third = office.batch(3);
        assertThat(index(third, "held")).isEmpty();
        assertThat(index(third, "")).containsExactly("K-305");
        for (String job : List.of("K-301", "K-302", "K-303")) {
            assertThat(second.resolve("packs/" + job + ".pdf")).isRegularFile();
        }
        assertThat(third.resolve("packs/K-305.pdf")).isRegularFile();
        assertThat(third.resolve("print-run.pdf")).isRegularFile();
        assertThat(status("people", "p", "Nothing.")).hasSize(1);

        assertThat(office.stop().out()).contains("Stopped");
        Outside.Result doctor = office.command("doctor office");
        assertThat(doctor.exitCode()).as(doctor.out()).isZero();
    }

    private void answerWhoTheFirmIs() throws Exception {
        Path logo = Files.createDirectories(home.resolve("desktop")).resolve("logo.svg");
        Files.writeString(
                logo,
                "<svg xmlns='http://www.w3.org/2000/svg' width='60' height='20'>"
                        + "<rect width='60' height='20' fill='#246'/></svg>");
        Outside.Result setup =
                office.talk(
                        "setup office",
                        List.of(
                                entry("Legal name of the firm", "Curlew Hot Water Pty Ltd"),
                                entry("ABN, 11 digits", "61 000 000 003"),
                                entry("ABN, 11 digits", "61 000 000 002"),
                                entry("ACN, if it is a company", ""),
                                entry("yes or no", "y"),
                                entry("street and number", "8 Ladle Lane"),
                                entry("Suburb", "Ballan"),
                                entry("State, such as VIC", "Victoria"),
                                entry("Postcode", "3342"),
                                entry("Office telephone", "03 5550 0199"),
                                entry("Office e-mail", "office@curlew.example.com"),
                                entry("account that buyers pay to", "Curlew Hot Water"),
                                entry("BSB of that account", "000-000"),
                                entry("Number of that account", "00000200"),
                                entry("A plumber or electrician", "Percy Plover"),
                                entry("plumber or electrician", "plumber"),
                                entry("number of that licence", "00123"),
                                entry("state of that licence", "VIC"),
                                entry("A plumber or electrician", "Tilly Teasel"),
                                entry("plumber or electrician", "sparky"),
                                entry("number of that licence", "E-55"),
                                entry("state of that licence", "vic"),
                                entry("A plumber or electrician", ""),
                                entry("A maker whose heaters you put in", "Merganser"),
                                entry("another", ""),
                                entry("A buyer of your certificates", "Teal"),
                                entry("another", ""),
                                entry("a .png or .svg file", "desktop/logo.svg")));
        assertThat(setup.exitCode()).as(setup.out()).isZero();
        assertThat(setup.out())
                .containsOnlyOnce("The check digits do not fit")
                .contains("tables/ (1 files)", "templates/", "start.sh");
    }

    private void typeThePrices() throws IOException {
        Path tables = office.folder("tables/tables.xlsx");
        Cells cells = Cells.of(tables, "offers");
        Map<String, String> typed = new LinkedHashMap<>();
        int row = cells.firstEmpty();
        typed.put(cells.at(row, "buyer"), "Teal");
        typed.put(cells.at(row, "scheme"), "STC");
        typed.put(cells.at(row, "from"), today.minusYears(1).toString());
        typed.put(cells.at(row, "to"), today.plusYears(1).toString());
        typed.put(cells.at(row, "price_per_certificate"), "36.90");
        typed.put(cells.at(row, "payment_days"), "7");
        typist.type(tables, typed);
    }

    /** What the note beside the returned list asks for. */
    private void acceptTheHeadings(Path returned) throws Exception {
        assertThat(status("people", "li", "could not be used; the note says why")).hasSize(1);
        assertThat(browser.open(returned.resolve("WHAT-TO-DO.txt")).seen("body").get(0))
                .contains("match equally well", "columns-proposed.csv")
                .contains("stage: on the board", "stage: pulled out", "stc-claim,,yes");
        Outside.Result accepted =
                office.command(
                        "match-headings '"
                                + returned.resolve(REGISTER)
                                + "' --tables office/tables --write");
        assertThat(accepted.exitCode()).as(accepted.out() + accepted.err()).isZero();
        assertThat(accepted.out())
                .contains("newest month", "Left out, look at it yourself: Cyl S/N (tank-serial?)");

        Path tables = office.folder("tables/tables.xlsx");
        Map<String, String> typed = new LinkedHashMap<>();
        Cells columns = Cells.of(tables, "columns");
        int line = columns.firstEmpty();
        typed.put(columns.at(line, "field"), "tank-serial");
        typed.put(columns.at(line++, "alias"), "Cyl S/N");
        typed.put(columns.at(line, "field"), "stc-claim");
        typed.put(columns.at(line, "always"), "yes");
        Cells words = Cells.of(tables, "words");
        int row = words.firstEmpty();
        for (Map.Entry<String, String> word :
                List.of(entry("on the board", "booked"), entry("pulled out", "cancelled"))) {
            typed.put(words.at(row, "field"), "stage");
            typed.put(words.at(row, "word"), word.getKey());
            typed.put(words.at(row++, "ours"), word.getValue());
        }
        typist.type(tables, typed);
    }

    private void completeTheNames(Path batch) throws Exception {
        Path names = batch.resolve("names-to-add.xlsx");
        Map<String, String> typed = new LinkedHashMap<>();
        Cells people = Cells.of(names, "people");
        int dora = people.row("person", "Dora Dotterel");
        typed.put(people.at(dora, "trade"), "plumbing");
        typed.put(people.at(dora, "licence"), "00456");
        typed.put(people.at(dora, "state"), "VIC");
        Cells products = Cells.of(names, "products");
        for (String model : List.of("MG-315", "S-270")) {
            int row = products.row("model", model);
            typed.put(products.at(row, "kind"), "heat pump");
            typed.put(products.at(row, "boost"), "electric");
            typed.put(products.at(row, "litres"), "270");
            typed.put(products.at(row, "eligible_from"), "2023-11-01");
            for (int zone = 1; zone <= 5; zone++) {
                typed.put(products.at(row, "stcs_zone_" + zone), "28");
            }
            typed.put(products.at(row, "register_version"), "54");
            typed.put(products.at(row, "warranty_tank_years"), "7");
            typed.put(products.at(row, "warranty_parts_years"), "5");
        }
        typist.type(names, typed);
        Outside.Result added = office.command("tables office --add '" + names + "'");
        assertThat(added.exitCode()).as(added.out() + added.err()).isZero();
    }

    private void answerWhatIsMissing(Path batch) throws Exception {
        Path asking = batch.resolve("still-missing.xlsx");
        Cells cells = Cells.of(asking, "Still missing");
        Map<String, String> typed = new LinkedHashMap<>();
        int certificate = cells.row("Job", "K-305", "Field", "plumbing-certificate");
        typed.put(cells.at(certificate, "Answer"), "P-7705");
        Path answered = home.resolve("desktop/still-missing.xlsx");
        typist.typeAndSave(asking, typed, answered);
        office.drop(answered);
    }

    /**
     * What a section of the status page shows, once it says this: it is written behind the work.
     */
    private List<String> status(String section, String element, String words) throws Exception {
        List<String> seen = List.of();
        for (int i = 0; i < 60 && seen.stream().noneMatch(s -> s.contains(words)); i++) {
            Thread.sleep(1000);
            seen =
                    browser.open(office.folder("status.html"))
                            .seen("section[aria-labelledby=" + section + "] " + element);
        }
        assertThat(seen).anyMatch(s -> s.contains(words));
        return seen;
    }

    /** Job numbers on the index page of a batch, of one status or of all. */
    private List<String> index(Path batch, String status) {
        String chosen = status.isEmpty() ? "" : "[data-status=" + status + "]";
        return browser.open(batch.resolve("index.html"))
                .seen("table.jobs tr" + chosen + " th[scope=row] strong");
    }
}
