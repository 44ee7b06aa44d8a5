package paperbark.office;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import paperbark.cli.Program;
import paperbark.outside.Outside;

/** A sale that is booked anew takes the earlier entry back, whatever became of the job since. */
class CorrectedSalesTest {
    @TempDir private Path folder;

    private Office office;

    @BeforeEach
    void makeAnOffice() throws IOException {
        office = Offices.make(folder.resolve("office"));
    }

    private Path drop(String name, String content) throws IOException {
        Files.writeString(office.intake().resolve(name + ".csv"), content);
        Program.Run watch = Program.run(office.root(), "watch", ".", "--once", "--quiet-for", "0");
        assertThat(watch.exitCode()).as(watch.out() + watch.err()).isIn(0, 10);
        return office.packs().resolve("2026-11-23-" + name);
    }

    /** What was made by now for the books: of batches, and of withdrawals. */
    private List<Path> journals(String ofBatch, String ofWithdrawal) throws IOException {
        List<Path> all = new ArrayList<>();
        for (Path batch : Office.list(office.packs())) {
            all.add(batch.resolve(ofBatch));
        }
        Path advices = office.root().resolve("advices");
        if (Files.isDirectory(advices)) {
            for (Path file : Office.list(advices)) {
                if (file.toString().endsWith(ofWithdrawal)) {
                    all.add(file);
                }
            }
        }
        return all.stream().filter(Files::isRegularFile).toList();
    }

    /** Debits less credits of every account in journals that were made by now. */
    private Map<String, BigDecimal> balances() throws IOException {
        Map<String, BigDecimal> all = new TreeMap<>();
        for (Path journal : journals("journal.csv", "-journal.csv")) {
            for (String line : Files.readString(journal).lines().skip(1).toList()) {
                String[] cells = line.split(",", -1);
                all.merge(cells[3], amount(cells[4]).subtract(amount(cells[5])), BigDecimal::add);
            }
        }
        all.values().removeIf(sum -> sum.signum() == 0);
        return all;
    }

    private static BigDecimal amount(String cell) {
        return cell.isEmpty() ? BigDecimal.ZERO : new BigDecimal(cell);
    }

    private static String correcting(String row, String other) {
        String[] lines = row.split("\n");
        return lines[0] + ",Corrects\n" + lines[1] + "," + other + "\n";
    }

    /**
     * Four versions of one sale: booked, at another price, under another number, and only booked.
     */
    private void fourTimes() throws IOException {
        drop("a", Offices.register(1));
        Map<String, BigDecimal> once = balances();
        assertThat(once).containsEntry("income:heaters and installation", amount("-4200.00"));

        Path second = drop("b", Offices.register(1).replace("4620.00", "4840.00"));
        assertThat(second.resolve("accounts.journal"))
                .content()
                .contains(
                        "2026-11-16 J-1 taken back", "Takes back the entry in batch 2026-11-23-a");
        assertThat(balances())
                .containsEntry("income:heaters and installation", amount("-4400.00"))
                .containsEntry("liabilities:gst on sales", amount("-440.00"));

        String other = Offices.register(1).replace("J-1,", "J-9,");
        Path third = drop("c", correcting(other, "J-1"));
        assertThat(third.resolve("journal.csv"))
                .content()
                .contains("Takes back the entry in batch 2026-11-23-b")
                .doesNotContain("take back the earlier entry first");
        assertThat(balances()).isEqualTo(once);
        assertThat(Program.run(office.root(), "quarters").out())
                .contains("4,620.00", "420.00")
                .doesNotContain("9,460.00");

        // The one that took the other's place comes again: the other is taken back only once.
        drop("d", correcting(other.replace("4620.00", "4730.00"), "J-1"));
        assertThat(balances()).containsEntry("income:heaters and installation", amount("-4300.00"));
    }

    @Test
    void whatStandsInAllJournalsTogetherIsTheNewestVersion() throws IOException {
        fourTimes();
        // A job that is only booked again has no sale.
        Path last =
                drop(
                        "e",
                        Offices.register(1)
                                .replace("J-1,installed", "J-9,booked")
                                .replace("4620.00", "4730.00"));
        assertThat(last.resolve("journal.csv")).isRegularFile();
        assertThat(balances()).isEmpty();
    }

    @Test
    void whatIsCalledOffIsTakenBackByAJournalOfItsOwn() throws IOException {
        drop("a", Offices.register(1));
        Map<String, BigDecimal> one = balances();
        drop("b", Offices.register(2, 3).replace("J-3,installed", "J-3,booked"));

        assertThat(withdraw("J-2").out())
                .contains("Book advices/withdrawal-3-journal.csv too: it takes back the sale");
        assertThat(balances()).isEqualTo(one);
        assertThat(Files.readString(office.root().resolve("advices/withdrawal-3-accounts.journal")))
                .contains("; Sales called off by withdrawal-3", "2026-11-16 J-2 taken back");
        assertThat(withdraw("J-3").out()).contains("To do:").doesNotContain("ook");

        assertThat(prepare("c", Offices.register(1).replace("installed", "cancelled")).out())
                .contains(
                        "Where the journal of batch 2026-11-23-a books its sale, the journal of the"
                                + " withdrawal, in advices, takes that back: book it too.");
        assertThat(balances()).isEmpty();
        assertThat(Program.run(office.root(), "quarters").out()).doesNotContain("4,620.00");
        assertThat(prepare("d", Offices.register(1, 2).replace("installed", "cancelled")).out())
                .contains("2 job-cancelled")
                .doesNotContain("book it too");
        assertThat(balances()).isEmpty();
    }

    @Test
    void whatIsCalledOffAndComesAgainIsBookedOnce() throws IOException {
        drop("a", Offices.register(1));
        Map<String, BigDecimal> once = balances();
        withdraw("J-1");
        assertThat(balances()).isEmpty();

        drop("b", Offices.register(1).replace("4620.00", "4840.00"));
        assertThat(balances())
                .containsEntry("income:heaters and installation", amount("-4400.00"))
                .containsEntry("liabilities:gst on sales", amount("-440.00"));
        withdraw("J-1");
        assertThat(balances()).isEmpty();

        // The row as it was at first, which another job has meanwhile taken the place of.
        drop("c", correcting(Offices.register(1).replace("J-1,", "J-9,"), "J-1"));
        assertThat(balances()).isEqualTo(once);
        withdraw("J-9");
        assertThat(balances()).isEmpty();
    }

    @Test
    void aJournalThatACutKeptFromBeingWrittenComesWithTheNextStart() throws IOException {
        drop("a", Offices.register(1));
        withdraw("J-1");
        Path journal = office.root().resolve("advices/withdrawal-2-journal.csv");
        byte[] was = Files.readAllBytes(journal);
        Files.delete(journal);
        assertThat(balances()).isNotEmpty();
        Program.run(office.root(), "watch", ".", "--once", "--quiet-for", "0");
        assertThat(journal).hasBinaryContent(was);

        // One that is not needed any more is not written late.
        Files.delete(journal);
        drop("b", Offices.register(1).replace("4620.00", "4840.00"));
        Program.run(office.root(), "watch", ".", "--once", "--quiet-for", "0");
        assertThat(balances()).containsEntry("income:heaters and installation", amount("-4400.00"));
    }

    @Test
    void whatAnotherJobTookThePlaceOfIsTakenBackOnce() throws IOException {
        drop("a", Offices.register(1));
        String other = Offices.register(1).replace("J-1,", "J-9,");
        drop("b", correcting(other, "J-1"));
        Map<String, BigDecimal> once = balances();
        Program.Run gone = Program.run(office.root(), "withdraw", "J-1", "--because", "a slip");
        assertThat(gone.out()).contains("Job J-1 was withdrawn before");
        assertThat(balances()).isEqualTo(once);
        withdraw("J-9");
        assertThat(balances()).isEmpty();
    }

    @Test
    void aSaleThatNoJournalIsFoundOfIsNamedForTheBooks() throws IOException {
        Path batch = drop("a", Offices.register(1));
        Files.move(batch.resolve("journal.csv"), folder.resolve("journal.csv"));
        assertThat(withdraw("J-1").out())
                .contains(
                        "Where the journal of batch 2026-11-23-a books its sale, take that back in"
                                + " your books.");
    }

    /** It had taken back what the older journal booked. */
    @Test
    void whereTheNewestBatchIsNotHereNoOlderJournalIsTakenForIt() throws IOException {
        drop("a", Offices.register(1));
        Path second = drop("b", Offices.register(1).replace("4620.00", "4840.00"));
        Files.move(second, folder.resolve("elsewhere"));
        assertThat(withdraw("J-1").out())
                .contains("Where the journal of batch 2026-11-23-b books its sale, take that back");
        assertThat(journals("none", "-journal.csv")).isEmpty();

        prepare("c", Offices.register(1).replace("4620.00", "4730.00"));
        assertThat(office.packs().resolve("2026-11-23-c/journal.csv"))
                .content()
                .contains("Batch 2026-11-23-b, which had the job, is not here: take back")
                .doesNotContain("Takes back");
    }

    @Test
    void theQuartersCountWhatTheJournalsBook() throws IOException {
        drop("a", Offices.register(1, 2));
        drop("b", Offices.register(1).replace("J-1,installed", "J-1,booked"));
        assertThat(balances()).containsEntry("income:heaters and installation", amount("-4200.00"));
        assertThat(Program.run(office.root(), "quarters").out())
                .contains("    1       $4,620.00")
                .doesNotContain("9,240.00");
    }

    private Program.Run withdraw(String job) {
        Program.Run run =
                Program.run(office.root(), "withdraw", job, "--because", "returned to the maker");
        assertThat(run.exitCode()).as(run.out() + run.err()).isZero();
        return run;
    }

    private Program.Run prepare(String name, String rows) throws IOException {
        Path register = office.root().resolve(name + ".csv");
        Files.writeString(register, rows);
        return Program.run(
                office.root(),
                "prepare",
                register.toString(),
                "--tables",
                "tables",
                "--ledger",
                "paperbark.db",
                "--out",
                "packs");
    }

    @Test
    @Tag("outside")
    void anotherProgramFindsThemAllInBalance() throws IOException {
        fourTimes();
        drop("e", Offices.register(2));
        withdraw("J-2");
        StringBuilder all = new StringBuilder();
        List<Path> journals = journals("accounts.journal", "-accounts.journal");
        assertThat(journals).hasSize(6);
        for (Path journal : journals) {
            all.append(Files.readString(journal)).append('\n');
        }
        Files.writeString(folder.resolve("all.journal"), all);
        Outside.Result checked =
                Outside.run(folder, "hledger", "-f", "all.journal", "check", "--strict");
        assertThat(checked.exitCode()).as(checked.err()).isZero();
        Outside.Result sums =
                Outside.run(folder, "hledger", "-f", "all.journal", "bal", "-O", "csv", "--flat");
        assertThat(sums.out())
                .contains("\"income:heaters and installation\",\"$-4300.00\"")
                .containsIgnoringCase("\"total\",\"0\"");
    }
}
