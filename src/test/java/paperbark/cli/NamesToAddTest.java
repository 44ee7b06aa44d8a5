package paperbark.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import paperbark.firm.TableRows;

/** A first list, whose makers, models and people no table knows. */
class NamesToAddTest {
    private static final String HEADINGS =
            "Job,Stage,Visit date,Owner,Site street,Site suburb,Site state,Site postcode,Maker,Model,"
                    + "Plumber,Claim STCs,STC buyer\n";
    private static final String ROW =
            "%s,booked,25/11/2026,Ada Amberwood,%d Teaspoon Lane,Ballan,VIC,3342,%s,%s,%s,yes,%s\n";

    @TempDir private Path directory;

    @BeforeEach
    void copyTables() throws IOException {
        Path tables = Files.createDirectories(directory.resolve("tables"));
        try (Stream<Path> sample = Files.list(Path.of("input-samples/tables"))) {
            for (Path table : sample.filter(Files::isRegularFile).toList()) {
                Files.copy(table, tables.resolve(table.getFileName()));
            }
        }
    }

    private void list(String... makersModelsPeopleBuyers) throws IOException {
        StringBuilder csv = new StringBuilder(HEADINGS);
        int n = 1;
        for (String line : makersModelsPeopleBuyers) {
            String[] parts = line.split(",");
            csv.append(ROW.formatted("N-" + n, n++, parts[0], parts[1], parts[2], parts[3]));
        }
        Files.writeString(directory.resolve("first.csv"), csv);
    }

    @Test
    void theyAreToldOnceAndCollectedAndTheJobsAreHeldAllTheSame() throws IOException {
        list(
                "Merganser,M-1,Nora Nettle,Teal",
                "merganser,M-1,Nora  Nettle,Teal",
                "Merganser,M-2,Otto Oakum,Teal",
                "Dunlin,D270-A,Wanda Wattle,Kestrel Certificates");
        Program.Run run = Program.run(directory, "check", "first.csv");
        assertThat(run.exitCode()).isEqualTo(10);
        assertThat(run.out())
                .contains("people: 2, makers: 1, products: 2, buyers: 1")
                .contains("held: 3")
                .doesNotContain("[maker-unknown]", "[person-unknown]", "[buyer-unknown]");

        List<TableRows> sheets =
                TableRows.read(directory.resolve("first-names-to-add.xlsx")).result().orElseThrow();
        assertThat(sheets)
                .extracting(TableRows::name)
                .containsExactly("people", "makers", "products", "buyers");
        TableRows people = sheets.get(0);
        assertThat(people.rows())
                .extracting(row -> people.said(row, "person") + ": " + people.said(row, "note"))
                .containsExactly(
                        "Nora Nettle: in 2 rows, first in row 2",
                        "Otto Oakum: in 1 row, first in row 4");
        TableRows products = sheets.get(2);
        assertThat(products.rows())
                .extracting(row -> products.said(row, "maker") + " " + products.said(row, "model"))
                .containsExactly("Merganser M-1", "Merganser M-2");
    }

    @Test
    void completedTheyAreAddedAndNothingElseChanges() throws IOException {
        list("Merganser,M-1,Nora Nettle,Teal", "Shoveler,S-1,Otto Oakum,Teal");
        Program.run(directory, "check", "first.csv");
        String before = Files.readString(directory.resolve("tables/offers.csv"));
        Program.Run run =
                Program.run(directory, "tables", "tables", "--add", "first-names-to-add.xlsx");
        assertThat(run.exitCode()).as(run.err()).isZero();
        assertThat(Files.readString(directory.resolve("tables/makers.csv")))
                .contains("Ternlight", "Merganser", "Shoveler");
        assertThat(Files.readString(directory.resolve("tables/offers.csv"))).isEqualTo(before);
        assertThat(Files.readString(directory.resolve("tables/before/makers.csv")))
                .doesNotContain("Merganser");
        assertThat(Program.run(directory, "check", "first.csv").out())
                .doesNotContain("names-unknown", "maker-unknown", "person-unknown");
        assertThat(
                        Program.run(
                                        directory,
                                        "tables",
                                        "tables",
                                        "--add",
                                        "first-names-to-add.xlsx")
                                .out())
                .contains("Nothing was new.");
        assertThat(Program.run(directory, "tables", "tables").exitCode()).isEqualTo(2);
    }

    @Test
    void theIndexOfTheBatchLeadsToWhatIsThereAndToNothingElse() throws IOException {
        list("Merganser,M-1,Nora Nettle,Teal");
        assertThat(index("many"))
                .contains("<a href=\"names-to-add.xlsx\">", "<a href=\"summary.xlsx\">");

        list("Dunlinn,D270-A,Wanda Wattle,Kestrel Certificates");
        assertThat(index("slip"))
                .contains("<a href=\"summary.xlsx\">")
                .doesNotContain("names-to-add.xlsx\"");
    }

    /** A person who reads the page has not the list before them. */
    @Test
    void whatIsToBeMendedIsSaidWithItsWordAndItsHeading() throws IOException {
        list("Dunlinn,D270-A,Wanda Wattle,Kestrel Certificates");
        Path register = directory.resolve("first.csv");
        Files.writeString(
                register,
                Files.readString(register)
                        .replaceFirst("\n", ",Benefit form\n")
                        .replaceFirst("\n$", ",off somehow\n"));
        assertThat(index("mend").replace("&quot;", "\""))
                .contains(
                        "<li>Maker: The makers table has no \"Dunlinn\".</li>",
                        "<li>Benefit form, \"off somehow\": The word is none of those that this column takes.</li>");
    }

    private String index(String out) throws IOException {
        Program.Run run = Program.run(directory, "prepare", "first.csv", "--out", out);
        assertThat(run.exitCode()).as(run.out() + run.err()).isEqualTo(10);
        try (Stream<Path> all = Files.walk(directory.resolve(out))) {
            return Files.readString(
                    all.filter(f -> f.endsWith("index.html")).findFirst().orElseThrow());
        }
    }

    @Test
    void aSlipOrTwoIsToldOneByOne() throws IOException {
        list("Dunlinn,D270-A,Wanda Wattle,Kestrel Certificates");
        Program.Run run = Program.run(directory, "check", "first.csv");
        assertThat(run.out())
                .contains("[maker-unknown]")
                .contains("Dunlin")
                .doesNotContain("names");
        assertThat(directory.resolve("first-names-to-add.xlsx")).doesNotExist();
    }
}
