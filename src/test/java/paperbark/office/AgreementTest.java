package paperbark.office;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import paperbark.cli.Program;
import paperbark.settle.Owing;
import paperbark.settle.Quarter;
import paperbark.value.Money;

/**
 * What journals have booked of sales and buyers is what {@code quarters} and {@code owed} say,
 * whatever became of the job.
 */
class AgreementTest {
    private static final String SERIAL = "2610040004512101";

    @TempDir private Path folder;

    private Office office;

    @BeforeEach
    void oneJobIsClaimed() throws IOException {
        office = Offices.make(folder.resolve("office"));
        drop("2026-11-23", "a", Offices.register(1));
        assertAgreement("2026-11-23");
        assertThat(owed("2026-11-23")).isNotEqualTo(Money.ZERO);
    }

    private Program.Run run(String day, String... words) {
        return Program.run(Instant.parse(day + "T02:00:00Z"), office.root(), words);
    }

    private String index(String day, String name) throws IOException {
        return Files.readString(office.packs().resolve(day + "-" + name).resolve("index.html"));
    }

    private void drop(String day, String name, String rows) throws IOException {
        Files.writeString(office.intake().resolve(name + ".csv"), rows);
        Program.Run watch = run(day, "watch", ".", "--once", "--quiet-for", "0");
        assertThat(watch.exitCode()).as(watch.out() + watch.err()).isIn(0, 10);
    }

    private Money owed(String day) {
        return Owing.of(office.ledger(), LocalDate.parse(day)).total().values().stream()
                .reduce(Money.ZERO, Money::plus);
    }

    /** Debits less credits of an account in all journals. */
    private Money booked(String account) throws IOException {
        List<Path> journals = new ArrayList<>();
        for (Path batch : Office.list(office.packs())) {
            journals.add(batch.resolve("journal.csv"));
        }
        for (Path file : Office.list(office.root().resolve("advices"))) {
            if (file.toString().endsWith("-journal.csv")) {
                journals.add(file);
            }
        }
        BigDecimal sum = BigDecimal.ZERO.setScale(2);
        for (Path journal : journals) {
            if (Files.isRegularFile(journal)) {
                for (String line : Files.readAllLines(journal)) {
                    String[] cells = line.split(",", -1);
                    if (cells[3].equals(account)) {
                        sum = sum.add(amount(cells[4])).subtract(amount(cells[5]));
                    }
                }
            }
        }
        return new Money(sum);
    }

    private static BigDecimal amount(String cell) {
        return cell.isEmpty() ? BigDecimal.ZERO : new BigDecimal(cell);
    }

    /** Nothing was paid in these tests, so what buyers owe is all that was booked of them. */
    private void assertAgreement(String day) throws IOException {
        Money sales =
                Quarter.ofYear(office.ledger(), 2027, LocalDate.parse(day)).stream()
                        .map(q -> q.sales().minus(q.gst()))
                        .reduce(Money.ZERO, Money::plus);
        assertThat(Money.ZERO.minus(booked("income:heaters and installation"))).isEqualTo(sales);
        assertThat(booked("assets:receivable:certificate buyers")).isEqualTo(owed(day));
    }

    @Test
    void whatTheBuyerHasIsOwedAlsoWhereTheCorrectedPaperIsHeld() throws IOException {
        run("2026-11-24", "lodged", "J-1");
        Money before = owed("2026-11-24");
        Money owners = booked("assets:receivable:owners");
        drop("2026-11-25", "b", Offices.register(1).replace(SERIAL, "2610040004512199"));
        assertAgreement("2026-11-25");
        assertThat(owed("2026-11-25")).isEqualTo(before);
        assertThat(booked("assets:receivable:owners")).isEqualTo(owners);
        assertThat(index("2026-11-25", "b"))
                .contains("The claim J-1-STC is with the buyer, and it hangs on");
    }

    /** A slip of the pen in a list takes nothing back of what the buyer has. */
    @ParameterizedTest
    @ValueSource(strings = {"16/12/2026", "31/11/2026", ""})
    void whatTheBuyerHasIsSoldAndOwedWhateverDayTheRowSays(String day) throws IOException {
        run("2026-11-24", "lodged", "J-1");
        Money before = owed("2026-11-24");
        Money owners = booked("assets:receivable:owners");
        drop("2026-11-25", "b", Offices.register(1).replace("16/11/2026,Ada", day + ",Ada"));
        assertAgreement("2026-11-25");
        assertThat(owed("2026-11-25")).isEqualTo(before);
        assertThat(booked("assets:receivable:owners")).isEqualTo(owners);
        assertThat(run("2026-11-25", "quarters").out()).contains("    1       $4,620.00");
        assertThat(index("2026-11-25", "b")).contains("The claim J-1-STC is with the buyer");
        drop("2026-11-26", "c", Offices.register(1) + "\n");
        assertAgreement("2026-11-26");
        assertThat(owed("2026-11-26")).isEqualTo(before);
    }

    @ParameterizedTest
    @CsvSource({"Kestrel Certificates, Pipit and Wren", "504.00, 480.00"})
    void whatTheBuyerHasIsToldAsItWasClaimed(String then, String now) throws IOException {
        run("2026-11-24", "lodged", "J-1");
        Money before = owed("2026-11-24");
        Money owners = booked("assets:receivable:owners");
        receivedAndOverdue("b", Offices.register(1).replace(then, now));
        assertAgreement("2026-11-25");
        assertThat(owed("2026-11-25")).isEqualTo(before);
        assertThat(booked("assets:receivable:owners")).isEqualTo(owners);
        Path batch = office.packs().resolve("2026-11-25-b");
        assertThat(Files.readString(batch.resolve("summary-csv/expected-claims.csv")))
                .contains("J-1,Ada Amberwood,Kestrel Certificates,STC,14,", ",505.80,1.80,");
        assertThat(index("2026-11-25", "b"))
                .contains("the buyer has: STC assignment, to be agreed on with them")
                .contains("nothing is to be taken back");
    }

    @Test
    void whatTheBuyerHasIsPaidAsItWasOffered() throws IOException {
        run("2026-11-24", "lodged", "J-1");
        Money before = owed("2026-11-24");
        // The offer of November is over, and nobody has entered the next one.
        drop("2026-12-07", "b", Offices.register(1).replace("4620.00", "4840.00"));
        assertAgreement("2026-12-07");
        assertThat(owed("2026-12-07")).isEqualTo(before);
        assertThat(run("2026-12-07", "lodged", "J-1").out()).contains("lodged already");
    }

    @Test
    void whatNobodyHasLodgedIsNotOwedOnceItIsHeld() throws IOException {
        drop("2026-11-25", "b", Offices.register(1).replace("D270-A", "D999"));
        assertAgreement("2026-11-25");
        assertThat(owed("2026-11-25")).isEqualTo(Money.ZERO);
        // Mended it is claimed anew, in a list of other bytes than the first.
        drop("2026-11-26", "c", Offices.register(1) + "\n");
        assertAgreement("2026-11-26");
        assertThat(owed("2026-11-26")).isNotEqualTo(Money.ZERO);
    }

    @Test
    void whatIsOnlyBookedAgainIsNeitherSoldNorOwed() throws IOException {
        run("2026-11-24", "lodged", "J-1");
        drop("2026-11-25", "b", Offices.register(1).replace("J-1,installed", "J-1,booked"));
        assertAgreement("2026-11-25");
        assertThat(owed("2026-11-25")).isEqualTo(Money.ZERO);
        assertThat(index("2026-11-25", "b"))
                .contains("the claim J-1-STC falls away")
                .contains("booked for 16 Nov 2026")
                .doesNotContain("installed 16 Nov 2026")
                .contains("agree with Kestrel Certificates on J-1-STC, which they have");
    }

    @Test
    void aJobThatTakesThePlaceOfAnotherWithOtherNumbersTakesAllOfIt() throws IOException {
        String[] lines = Offices.register(7).split("\n");
        drop("2026-11-25", "b", lines[0] + ",Corrects\n" + lines[1] + ",J-1\n");
        assertAgreement("2026-11-25");
        assertThat(run("2026-11-25", "quarters").out()).contains("    1       $4,620.00");
    }

    @Test
    void workWithoutCertificatesIsASaleToo() throws IOException {
        drop("2026-11-25", "b", Offices.register(2).replace("J-2,installed", "J-2,no claim"));
        assertAgreement("2026-11-25");
        assertThat(run("2026-11-25", "quarters").out()).contains("    2       $9,240.00");
    }

    @Test
    void aHeaterThatIsInSinceNobodyKnowsWhenIsNoSaleYet() throws IOException {
        drop("2026-11-25", "b", Offices.register(2).replace("16/11/2026,Ada", "31/11/2026,Ada"));
        assertAgreement("2026-11-25");
        assertThat(run("2026-11-25", "quarters").out()).contains("    1       $4,620.00");
        assertThat(index("2026-11-25", "b")).contains("installed, day not known");
    }

    @Test
    void aDayThatIsStillToComeIsNoSaleUntilItIsThere() throws IOException {
        String rows = Offices.register(2).replace("16/11/2026,Ada", "27/11/2026,Ada");
        drop("2026-11-25", "b", rows);
        assertAgreement("2026-11-25");
        assertThat(run("2026-11-25", "quarters").out()).contains("    1       $4,620.00");
        assertThat(index("2026-11-25", "b"))
                .contains("installed, day not known: 27 Nov 2026 is still to come")
                .contains(
                        "Warranty registration, STC assignment, Owner&#39;s handover, Statement of"
                                + " benefit");
        assertThat(office.calendar()).content().contains(": J-1\r").doesNotContain(": J-2\r");
        assertThat(office.send().resolve("2026-11-25-b")).doesNotExist();

        // The very same list, once the day is there.
        drop("2026-11-27", "c", rows);
        assertAgreement("2026-11-27");
        assertThat(run("2026-11-27", "quarters").out()).contains("    2       $9,240.00");
        assertThat(office.calendar()).content().contains("Yearly look over: J-2\r");
        assertThat(office.send().resolve("2026-11-27-c/J-2-owner.eml")).exists();
    }

    @Test
    void whatIsCancelledIsNeitherSoldNorOwed() throws IOException {
        Files.writeString(
                office.intake().resolve("b.csv"),
                Offices.register(1).replace("J-1,installed", "J-1,cancelled"));
        // No batch, and so no page, comes of it: watch says what is to be done.
        assertThat(run("2026-11-25", "watch", ".", "--once", "--quiet-for", "0").out())
                .contains("Job J-1 is cancelled", "Take back its papers", "book it too");
        assertAgreement("2026-11-25");
        assertThat(owed("2026-11-25")).isEqualTo(Money.ZERO);
        assertThat(run("2026-11-25", "owed").out()).doesNotContain("asked back");
    }

    /** Money that came stays here until somebody takes it back. */
    @Test
    void whatWasPaidForAJobThatIsCalledOffIsNamed() throws IOException {
        assertThat(run("2026-11-24", "paid", "J-1", "510.80", "--more").out())
                .contains("$510.80 received, $5.00 more than expected")
                .doesNotContain("-$");
        Program.Run withdrawn =
                run("2026-11-25", "withdraw", "J-1", "--because", "returned to the maker");
        assertThat(withdrawn.out())
                .contains(
                        "J-1-STC, 14 certificates to Kestrel Certificates, $5.00 more than expected")
                .contains("agree with Kestrel Certificates on J-1-STC, for which they paid $510.80")
                .doesNotContain("-$");
        assertThat(booked("income:heaters and installation")).isEqualTo(Money.ZERO);
        assertThat(booked("assets:receivable:certificate buyers")).isEqualTo(Money.ZERO);
        assertThat(run("2026-11-25", "owed").out())
                .contains("Paid for claims that stand no longer, may be asked back")
                .containsPattern("J-1-STC +\\$510.80  Kestrel Certificates");
        assertThat(run("2026-11-24", "owed").out()).doesNotContain("asked back");
        assertThat(run("2026-11-25", "quarters").out()).contains("510.80").doesNotContain("4,620");
    }

    /** The claims that a batch's workbook tells of as claimed before it. */
    private String receivedAndOverdue(String name, String rows) throws IOException {
        Files.writeString(office.root().resolve(name + ".csv"), rows);
        String register = name + ".csv";
        run("2026-11-25", "prepare", register, "--tables", "tables", "--out", "packs", "--csv");
        return Files.readString(
                office.packs()
                        .resolve("2026-11-25-" + name)
                        .resolve("summary-csv/received-and-overdue.csv"));
    }

    @Test
    void aWorkbookTellsOfEarlierClaimsThatItsBatchLeavesAsTheyAre() throws IOException {
        assertThat(receivedAndOverdue("b", Offices.register(2))).contains("J-1,STC");
        String booked = Offices.register(1).replace("J-1,installed", "J-1,booked");
        assertThat(receivedAndOverdue("c", booked)).contains("J-2,STC").doesNotContain("J-1,STC");
        String[] lines = Offices.register(7).split("\n");
        assertThat(receivedAndOverdue("d", lines[0] + ",Corrects\n" + lines[1] + ",J-2\n"))
                .doesNotContain("J-2,STC");
    }

    @Test
    void aWorkbookTellsOfWhatTheBuyerHas() throws IOException {
        run("2026-11-24", "lodged", "J-1");
        assertThat(receivedAndOverdue("b", Offices.register(1).replace(SERIAL, "2610040004512199")))
                .contains("J-1,STC,Kestrel Certificates,14,505.80")
                .contains("lodged");
    }

    /** Of two rows with one number nobody knows which is the job. */
    @Test
    void whatTwoRowsCallTheSameIsNotSoldTillItIsMended() throws IOException {
        String twins = twins(Offices.register(2), "J-2");
        drop("2026-11-25", "b", twins);
        assertAgreement("2026-11-25");
        assertThat(run("2026-11-25", "quarters").out()).contains("    1       $4,620.00");
        assertThat(Files.readString(office.root().resolve("week.html"))).contains("2026-11-25-b");
        drop("2026-11-26", "c", Offices.register(2));
        assertAgreement("2026-11-26");
        assertThat(run("2026-11-26", "quarters").out()).contains("    2       $9,240.00");
    }

    @Test
    void whatWasSoldAndClaimedBeforeTwoRowsHadItsNumberStays() throws IOException {
        Money before = owed("2026-11-24");
        drop("2026-11-25", "b", twins(Offices.register(1), "J-1"));
        assertAgreement("2026-11-25");
        assertThat(owed("2026-11-25")).isEqualTo(before);
        assertThat(run("2026-11-25", "quarters").out()).contains("    1       $4,620.00");
        assertThat(index("2026-11-25", "b"))
                .contains("The job number also stands in")
                .doesNotContain("Left out because");
        assertThat(receivedAndOverdue("c", twins(Offices.register(1), "J-1") + "\n"))
                .contains("J-1,STC,Kestrel Certificates,14,505.80");
    }

    @Test
    void whatWasWithdrawnStaysSoWhereTwoRowsHaveItsNumber() throws IOException {
        run("2026-11-24", "withdraw", "J-1", "--because", "returned to the maker");
        drop("2026-11-25", "b", twins(Offices.register(1, 2), "J-1"));
        assertAgreement("2026-11-25");
        assertThat(index("2026-11-25", "b")).contains("More than one row has its number now");
        drop("2026-11-26", "c", Offices.register(1, 3));
        assertAgreement("2026-11-26");
        assertThat(run("2026-11-26", "quarters").out()).contains("    2       $9,240.00");
    }

    /** A row may name what it corrects by the claim. */
    @Test
    void aJobThatTakesThePlaceOfAClaimTakesThatOfItsJob() throws IOException {
        String[] lines = Offices.register(7).split("\n");
        drop("2026-11-25", "b", lines[0] + ",Corrects\n" + lines[1] + ",J-1-STC\n");
        assertAgreement("2026-11-25");
        assertThat(run("2026-11-25", "quarters").out()).contains("    1       $4,620.00");
    }

    @Test
    void aClaimThatTheBuyerHasOutlivesAnotherFormOfTheBenefit() throws IOException {
        run("2026-11-24", "lodged", "J-1");
        Money before = owed("2026-11-24");
        drop(
                "2026-11-25",
                "b",
                Offices.register(1).replace("discount on the price", "payment to the owner"));
        assertAgreement("2026-11-25");
        assertThat(owed("2026-11-25")).isEqualTo(before);
        assertThat(index("2026-11-25", "b")).contains("The claim J-1-STC is with the buyer");
    }

    /** The register with a row once more that has another price and owner. */
    private static String twins(String rows, String job) {
        String row = rows.lines().filter(l -> l.startsWith(job + ",")).findFirst().orElseThrow();
        return rows + row.replace("4620.00", "4840.00").replace("Ada", "Eda") + "\n";
    }

    @Test
    void anotherFinancialYearIsChosenByTheYearInWhichItEnds() {
        assertThat(run("2026-11-25", "quarters", "--year", "2026").out())
                .contains("Jul to Sep 2025", "Apr to Jun 2026")
                .doesNotContain("4,620.00");
        assertThat(run("2026-11-25", "quarters", "--year", "26").exitCode()).isEqualTo(2);
    }
}
