package paperbark.output.journal;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import paperbark.batch.Assembled;
import paperbark.finding.Finding;
import paperbark.finding.FindingCode;
import paperbark.finding.Place;
import paperbark.firm.AccountRole;
import paperbark.firm.FirmTables;
import paperbark.job.Job;
import paperbark.job.Register;
import paperbark.output.BatchView;
import paperbark.output.CaseFile;
import paperbark.outside.Outside;
import paperbark.value.Money;

/** What is booked for a heat pump that earns 14 STCs and costs $5,500; redone by hand. */
class JournalTest {
    private static final FirmTables FORTY_EACH = Assembled.payingForStcs("40");

    // 14 x 40 = 560, of which 60 is beyond the discount: 60 / 11 = 5.45 is GST once it is paid.
    @Test
    void aDiscountIsWhatTheBuyerOwesInTheOwnersPlace() {
        assertThat(booked("500,discount,no,no"))
                .containsExactly(
                        "OWNERS $5,000.00",
                        "SALES -$5,000.00",
                        "GST_ON_SALES -$500.00",
                        "BUYERS $560.00",
                        "BEYOND -$54.55",
                        "GST_LATER -$5.45");
    }

    @Test
    void aBuyerWhoPaysLessLeavesTheFirmShort() {
        assertThat(booked("600,discount,no,no"))
                .containsExactly(
                        "OWNERS $4,900.00",
                        "SALES -$5,000.00",
                        "GST_ON_SALES -$500.00",
                        "BUYERS $560.00",
                        "SHORT $40.00");
    }

    @Test
    void anOwnerWhoIsPaidOwesTheWholePriceAndTheFirmHasTheRest() {
        assertThat(booked("500,payment,no,no"))
                .containsExactly(
                        "OWNERS $5,500.00",
                        "SALES -$5,000.00",
                        "GST_ON_SALES -$500.00",
                        "BUYERS $60.00",
                        "BEYOND -$54.55",
                        "GST_LATER -$5.45");
    }

    @Test
    void whatAnOwnerWasPromisedBeyondTheOfferIsTheFirmsToPay() {
        assertThat(booked("600,payment,no,no"))
                .containsExactly(
                        "OWNERS $5,500.00",
                        "SALES -$5,000.00",
                        "GST_ON_SALES -$500.00",
                        "OWNERS -$40.00",
                        "SHORT $40.00");
    }

    @Test
    void theTenthOnTopIsBookedToNobodyAndSaid() {
        Entry entry = entry(caseFile("560,discount,yes,yes"));

        assertThat(lines(entry))
                .containsExactly(
                        "OWNERS $4,940.00",
                        "SALES -$5,000.00",
                        "GST_ON_SALES -$500.00",
                        "BUYERS $560.00");
        assertThat(entry.remarks())
                .containsExactly(
                        "$56.00 of GST on top for the STCs is booked to nobody: ask your tax adviser.");
    }

    @Test
    void aHeldClaimIsNeitherTakenOffNorOwed() {
        Finding stop =
                Finding.of(
                        FindingCode.SERIAL_TWICE,
                        new Place.InFile("week.csv"),
                        "Two rows name this serial.",
                        "Read it again.");
        Entry entry = entry(caseFile("500,discount,no,no", stop));

        assertThat(lines(entry))
                .containsExactly("OWNERS $5,500.00", "SALES -$5,000.00", "GST_ON_SALES -$500.00");
        assertThat(entry.remarks()).hasSize(1);
        assertThat(entry.remarks().get(0)).startsWith("The claim for STCs is held and not booked");
    }

    @Test
    void everyEntryOfTheSampleWeekBalancesAndNamesNoOwner() throws IOException {
        BatchView week = Assembled.week(job -> true);
        Journal journal = new Journal(week, Register.TABLES.accounts());

        assertThat(journal.entries()).hasSizeGreaterThan(20);
        assertThat(journal.entries())
                .allSatisfy(
                        entry ->
                                assertThat(
                                                entry.postings().stream()
                                                        .map(Posting::amount)
                                                        .reduce(Money.ZERO, Money::plus))
                                        .isEqualTo(Money.ZERO));
        String all = text(journal.csv()) + text(journal.plainText());
        week.cases().stream()
                .flatMap(c -> c.job().owner().name().stream())
                .forEach(owner -> assertThat(all).doesNotContain(owner));
    }

    @Test
    @Tag("outside")
    void anotherProgramReadsThePlainTextAndFindsItInBalance(@TempDir Path folder)
            throws IOException {
        BatchView week = Assembled.week(job -> true);
        Journal journal = new Journal(week, Register.TABLES.accounts());
        Files.write(folder.resolve("accounts.journal"), journal.plainText());

        // Strict: every account and commodity declared, every entry in balance.
        Outside.Result checked =
                Outside.run(folder, "hledger", "-f", "accounts.journal", "check", "--strict");
        assertThat(checked.exitCode()).as(checked.err()).isZero();
        Outside.Result sums =
                Outside.run(
                        folder, "hledger", "-f", "accounts.journal", "bal", "-O", "csv", "--flat");
        Money gst =
                journal.entries().stream()
                        .flatMap(e -> e.postings().stream())
                        .filter(p -> p.account() == AccountRole.GST_ON_SALES)
                        .map(Posting::amount)
                        .reduce(Money.ZERO, Money::plus);
        assertThat(sums.out())
                .contains("\"liabilities:gst on sales\",\"$" + gst.amount().toPlainString() + "\"")
                .containsIgnoringCase("\"total\",\"0\"");
    }

    private static List<String> booked(String cells) {
        return lines(entry(caseFile(cells)));
    }

    private static List<String> lines(Entry entry) {
        return entry.postings().stream().map(p -> p.account() + " " + p.amount()).toList();
    }

    private static Entry entry(CaseFile file) {
        return new Journal(Assembled.view(List.of(file)), FORTY_EACH.accounts()).entries().get(0);
    }

    private static CaseFile caseFile(String cells, Finding... more) {
        Job job =
                Register.job(
                        "Stage,Installed on,Claim STCs,Full price,STC benefit,Benefit form,Owner registered for GST,Business premises\n"
                                + "installed,16/11/2026,yes,5500,"
                                + cells);
        return Assembled.job(job, FORTY_EACH, more);
    }

    private static String text(byte[] bytes) {
        return new String(bytes, StandardCharsets.UTF_8);
    }
}
