package paperbark.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.apache.poi.xssf.usermodel.XSSFRow;
import org.apache.poi.xssf.usermodel.XSSFSheet;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import paperbark.batch.HeadingProposal;
import paperbark.job.Field;
import paperbark.job.HeadingMatch;
import paperbark.sheet.ColumnNames;
import paperbark.sheet.HeadingTable;

/** A list whose headings nobody explained. */
class MatchHeadingsTest {
    private static final String LIST =
            """
            Plumbing jobs,,,,,,,,,,,,,
            Ref,How far,When,Client name,Address,Town,St.,P/Code,Brand,Unit,Cyl S/N,Sparky,Invoice total,Mob
            PL-301,finito,16/11/26,Nora Nettle,3 Saucepan Court,Ballan,VIC,3342,Dunlin,D270-A,2610040004512101,Tilly Teatree,4620.00,0491 570 156
            PL-302,complete,17/11/26,Otto Oakum,5 Teaspoon Lane,Ballan,VIC,3342,Dunlin,D200-A,2610040004512102,Tilly Teatree,3990.00,0491 570 157
            PL-304,booked,26/11/26,Quinn Quandong,2 Whisk Way,Ballan,VIC,3342,Ternlight,TL-E22-250,T23-100001,Tilly Teatree,3990.00,0491 570 158
            PL-306,booked,26/11/26,Rhea Rushes,8 Whisk Way,Ballan,VIC,3342,Ternlight,TL-E22-250,,Tilly Teatree,3990.00,0491 570 159
            PL-307,booked,26/11/26,Sol Saltbush,9 Whisk Way,Ballan,VIC,3342,Ternlight,TL-E22-250,,Tilly Teatree,3990.00,0491 570 156
            PL-305,offhand,27/11/26,Rex Ragwort,4 Ladle Lane,Gordon,VIC,3345,Dunlin,D200-A,,,,
            """;

    @TempDir private Path directory;

    @BeforeEach
    void write() throws IOException {
        Path tables = Files.createDirectories(directory.resolve("tables"));
        try (Stream<Path> sample = Files.list(Path.of("input-samples/tables"))) {
            for (Path table : sample.filter(Files::isRegularFile).toList()) {
                Files.copy(table, tables.resolve(table.getFileName()));
            }
        }
        Files.delete(tables.resolve("columns.csv"));
        Files.writeString(directory.resolve("list.csv"), LIST);
    }

    @Test
    void everyColumnIsProposedAndTheListIsThenRead() throws IOException {
        Program.Run run = Program.run(directory, "match-headings", "list.csv");
        assertThat(run.exitCode()).as(run.err()).isZero();
        assertThat(run.out())
                .contains("Ref")
                .containsPattern("Town +site-suburb +sure")
                .containsPattern("How far +stage +likely")
                .containsPattern("Cyl S/N +tank-serial +sure")
                .containsPattern("offhand +stage +1 +cancelled")
                .containsPattern("finito +stage +1 +\\? add it")
                .contains("two-digit-years");
        assertThat(directory.resolve("tables/columns.csv")).doesNotExist();

        Files.writeString(directory.resolve("list.csv"), LIST.replace(",Mob\n", ",Xyzzy\n"));
        Program.Run left =
                Program.run(directory, "match-headings", "list.csv", "--write", "--replace");
        assertThat(left.out())
                .contains("Written to the table \"columns\": Ref = job; How far = stage; ")
                .containsPattern("Left out, look at it yourself: .*Xyzzy \\(");
        Files.writeString(directory.resolve("list.csv"), LIST);
        Files.delete(directory.resolve("tables/columns.csv"));

        assertThat(Program.run(directory, "match-headings", "list.csv", "--write").exitCode())
                .isZero();
        assertThat(Files.readString(directory.resolve("tables/columns.csv")))
                .contains("tank-serial,Cyl S/N,")
                .contains("site-postcode,P/Code,")
                .contains("two-digit-years,,yes");
        assertThat(Files.readString(directory.resolve("tables/words.csv")))
                .contains("stage,offhand,cancelled")
                .contains("stage,fell through,cancelled");
        Program.Run checked = Program.run(directory, "check", "list.csv");
        assertThat(checked.out()).contains("Jobs:         5").contains("cancelled: 1");
        assertThat(checked.out()).doesNotContain("column-missing");
    }

    /** A tab a month, all with the same headings: the newest is meant. */
    @Test
    void ofSheetsNamedAfterMonthsTheNewestIsProposedAndThenRead() throws IOException {
        try (XSSFWorkbook book = new XSSFWorkbook();
                OutputStream out = Files.newOutputStream(directory.resolve("year.xlsx"))) {
            for (String month : List.of("Oct 2026", "Nov 2026")) {
                XSSFSheet sheet = book.createSheet(month);
                int n = 0;
                for (String line : LIST.replace("PL-", month.charAt(0) + "-").lines().toList()) {
                    XSSFRow row = sheet.createRow(n++);
                    String[] cells = line.split(",");
                    for (int i = 0; i < cells.length; i++) {
                        row.createCell(i).setCellValue(cells[i]);
                    }
                }
            }
            book.write(out);
        }
        assertThat(Program.run(directory, "check", "year.xlsx").exitCode()).isEqualTo(11);

        Program.Run run = Program.run(directory, "match-headings", "year.xlsx", "--write");
        assertThat(run.exitCode()).as(run.err()).isZero();
        assertThat(Files.readString(directory.resolve("tables/columns.csv")))
                .contains("sheet,newest month,", "tank-serial,Cyl S/N,");
        Program.Run checked = Program.run(directory, "check", "year.xlsx");
        assertThat(checked.out()).contains("Jobs:         5", "Nov 2026").doesNotContain("O-30");
        assertThat(
                        Program.run(
                                        directory,
                                        "match-headings",
                                        "year.xlsx",
                                        "--write",
                                        "--replace")
                                .exitCode())
                .isZero();
        assertThat(Files.readString(directory.resolve("tables/columns.csv")))
                .as("the firm's rule stays")
                .containsOnlyOnce("sheet,newest month,");
    }

    @Test
    void aColumnThatNothingSpeaksForSaysWhatStandsBelowIt() throws IOException {
        Files.writeString(
                directory.resolve("list.csv"),
                """
                Job,Who for,Going on,All up,Came out,Rmk,Hot water unit
                PL-1,Nora Nettle,26/11/2026,4620,gas storage,ring first,Ternlight TL-E22-250
                PL-2,Otto Oakum,27/11/2026,3990,electric storage,dog,Ternlight X-1
                PL-3,Rex Ragwort,28/11/2026,12500,gas storage,gate,Shoveler S-1
                """);
        assertThat(Program.run(directory, "match-headings", "list.csv").out())
                .containsPattern("Who for +- +- +may be \"Owner\" \\(3 of 3 may be names\\)")
                .containsPattern("Going on +- +- +may be \"Date, planned or done\"")
                .containsPattern("All up +- +- +may be \"Full price\"")
                .containsPattern("Came out +- +- +may be \"Old heater\"")
                .containsPattern("Rmk +- +- +nothing speaks for any field")
                .contains("stc-claim,,yes")
                .containsPattern("Hot water unit +product-one-cell +look +2 of 3 begin with");
    }

    @Test
    void aTableOfTheFirmsIsNeverReplacedUnasked() throws IOException {
        Path own = directory.resolve("tables/columns.csv");
        Files.writeString(own, "field,alias,always\njob,Ref,\nsheet,Jobs *,\nnew-system,,yes\n");
        Program.Run run = Program.run(directory, "match-headings", "list.csv", "--write");
        assertThat(run.exitCode()).isEqualTo(2);
        assertThat(run.err()).contains("--replace");
        assertThat(Files.readString(own)).contains("job,Ref,\nsheet");

        assertThat(
                        Program.run(directory, "match-headings", "list.csv", "--write", "--replace")
                                .exitCode())
                .isZero();
        assertThat(Files.readString(own))
                .contains("sheet,Jobs *,")
                .contains("new-system,,yes")
                .contains("maker,Brand,");
        assertThat(Files.readString(directory.resolve("tables/before/columns.csv")))
                .contains("job,Ref,\nsheet");
    }

    @Test
    void inAWorkbookOfTablesTheProposalGoesToItsSheet() throws IOException {
        Program.run(directory, "tables", "tables", "--to", "xlsx");
        assertThat(Program.run(directory, "match-headings", "list.csv", "--write").exitCode())
                .isZero();
        try (Stream<Path> files = Files.list(directory.resolve("tables"))) {
            assertThat(files.filter(f -> f.toString().endsWith(".csv"))).isEmpty();
        }
        assertThat(Program.run(directory, "check", "list.csv").out()).contains("Jobs:         5");
    }

    @Test
    void cellsOfSeveralFactsAreProposedAsSuchAndTheListIsThenRead() throws IOException {
        for (String headings :
                new String[] {"Where,Heater", "Site Address,Model no.", "Where,Unit"}) {
            Files.deleteIfExists(directory.resolve("tables/columns.csv"));
            Files.writeString(
                    directory.resolve("list.csv"),
                    """
                    Job,Status,Installed,Owner,%s
                    PL-1,booked,26/11/2026,Nora Nettle,"3 Saucepan Court, Ballan VIC 3342",Ternlight TL-E22-250
                    PL-2,booked,27/11/2026,Otto Oakum,"5 Teaspoon Lane, Ballan VIC 3342",Dunlin D200-A
                    """
                            .formatted(headings));
            Program.Run run = Program.run(directory, "match-headings", "list.csv", "--write");
            assertThat(run.exitCode()).as(run.err()).isZero();
            assertThat(run.out())
                    .containsPattern("site-one-cell +likely")
                    .containsPattern("product-one-cell +likely")
                    .contains("No column was found for: which certificates are claimed");
            Program.Run checked = Program.run(directory, "check", "list.csv");
            assertThat(checked.out()).contains("Jobs:         2");
            assertThat(checked.out()).doesNotContain("column-missing", "cell-not-split");
        }
    }

    @Test
    void aPartWithAColumnOfItsOwnOrAnOldHeaterIsNoWhole() throws IOException {
        Files.writeString(
                directory.resolve("list.csv"),
                """
                Job,Brand,Heater,Old unit,Where,Suburb
                PL-1,Ternlight,Ternlight TL-E22-250,Dunlin D200-A,"3 Saucepan Court, Ballan VIC 3342",Ballan
                PL-2,Dunlin,Dunlin D200-A,Dunlin D270-A,"5 Teaspoon Lane, Ballan VIC 3342",Ballan
                """);
        Program.Run run = Program.run(directory, "match-headings", "list.csv");
        assertThat(run.exitCode()).as(run.err()).isZero();
        assertThat(run.out())
                .containsPattern("Brand +maker +sure")
                .containsPattern("Suburb +site-suburb +sure")
                .doesNotContain("one-cell");

        // The name of a field means that field in every table.
        Files.writeString(
                directory.resolve("list.csv"),
                "Job,Model,Old unit\nPL-1,Dunlin D200-A,Dunlin D200-A\nPL-2,Dunlin D270-A,Dunlin D270-A\n");
        assertThat(Program.run(directory, "match-headings", "list.csv").out())
                .doesNotContain("product-one-cell");
    }

    /**
     * How often the proposal is right: the sample week's headings, with which the sample firm's own
     * table says the truth, looked at without that table.
     */
    @Test
    void mostOfTheSampleWeekIsProposedRightly() {
        Path week = Path.of("input-samples/week-47.xlsx");
        ColumnNames<Field> truth =
                HeadingTable.of(
                        Field.values(),
                        "columns",
                        Path.of("input-samples/tables"),
                        new ArrayList<>());
        Map<String, String> wrong = new TreeMap<>();
        long right = 0;
        HeadingProposal proposal =
                HeadingProposal.of(week, Optional.empty(), directory.resolve("tables"))
                        .result()
                        .orElseThrow();
        for (var match : proposal.matches()) {
            String said = match.field().map(Field::key).orElse("-");
            String meant = truth.field(match.column().heading()).map(Field::key).orElse("-");
            if (said.equals(meant)) {
                right++;
            } else if (match.sure() == HeadingMatch.Sure.SURE) {
                wrong.put(match.column().heading(), said + " for " + meant);
            }
        }
        assertThat(wrong).as("what is called sure is right").isEmpty();
        assertThat(right * 100 / proposal.matches().size()).isGreaterThanOrEqualTo(70);
    }

    @Test
    void whatCannotBeReadIsARefusal() throws IOException {
        Files.writeString(directory.resolve("empty.csv"), "");
        assertThat(Program.run(directory, "match-headings", "empty.csv").exitCode()).isEqualTo(11);
        Files.delete(directory.resolve("tables/firm.csv"));
        assertThat(Program.run(directory, "match-headings", "list.csv").exitCode()).isEqualTo(23);
    }
}
