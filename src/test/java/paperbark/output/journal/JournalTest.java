package paperbark.output.journal;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import paperbark.batch.Assembled;
import paperbark.batch.SampleWeek;
import paperbark.finding.Finding;
import paperbark.finding.FindingCode;
import paperbark.firm.AccountRole;
import paperbark.firm.FirmTables;
import paperbark.job.Register;
import paperbark.output.BatchView;
import paperbark.output.CaseFile;
import paperbark.output.table.GstTable;
import paperbark.output.table.Table;
import paperbark.output.table.TableCell;
import paperbark.outside.Outside;
import paperbark.value.Money;

/** What is booked for a heat pump that earns 14 STCs and costs $5,500; redone by hand. */
class JournalTest {
    private static final FirmTables FORTY_EACH = Assembled.payingForStcs("40");

    // 14 x 40 = 560, of which 60 is beyond the discount: 60 / 11 = 5.45 is GST once it is paid.
    @Test
    void aDiscountIsWhatTheBuyerOwesInTheOwnersPlace() throws IOException {
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
    void aBuyerWhoPaysLessLeavesTheFirmShort() throws IOException {
        assertThat(booked("600,discount,no,no"))
                .containsExactly(
                        "OWNERS $4,900.00",
                        "SALES -$5,000.00",
                        "GST_ON_SALES -$500.00",
                        "BUYERS $560.00",
                        "SHORT $40.00");
    }

    @Test
    void anOwnerWhoIsPaidOwesTheWholePriceAndTheFirmHasTheRest() throws IOException {
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
    void whatAnOwnerWasPromisedBeyondTheOfferIsTheFirmsToPay() throws IOException {
        assertThat(booked("600,payment,no,no"))
                .containsExactly(
                        "OWNERS $5,500.00",
                        "SALES -$5,000.00",
                        "GST_ON_SALES -$500.00",
                        "OWNERS -$40.00",
                        "SHORT $40.00");
    }

    @Test
    void theTenthOnTopIsBookedToNobodyAndSaid() throws IOException {
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
    void aHeldClaimIsNeitherTakenOffNorOwed() throws IOException {
        Finding stop = Assembled.finding(FindingCode.SERIAL_TWICE);
        Entry entry = entry(caseFile("500,discount,no,no", stop));

        assertThat(lines(entry))
                .containsExactly("OWNERS $5,500.00", "SALES -$5,000.00", "GST_ON_SALES -$500.00");
        assertThat(entry.remarks()).hasSize(1);
        assertThat(entry.remarks().get(0)).startsWith("The claim for STCs is held and not booked");
    }

    @Test
    void aClaimIsNotBookedBeforeItIsKnownWhatItTakesOffThePrice() throws IOException {
        CaseFile unsaid = caseFile("500,,no,no");
        Entry entry = entry(unsaid);

        assertThat(lines(entry))
                .containsExactly(
                        "OWNERS $5,000.00",
                        "OWNERS $500.00",
                        "SALES -$5,000.00",
                        "GST_ON_SALES -$500.00");
        assertThat(entry.postings().get(1).remark()).isEqualTo("not known who pays it");
        assertThat(entry.remarks())
                .singleElement()
                .asString()
                .startsWith("Nobody said what the STCs take off the price");
        assertThat(unsaid.ownerPays()).isEmpty();
        assertThat(caseFile("500,discount,no,no").ownerPays()).contains(Money.of("5000.00"));

        // The GST sheet says no more than the paper and the journal.
        Table gst = GstTable.of(Assembled.view(List.of(unsaid)));
        List<TableCell> row = gst.rows().get(0);
        assertThat(gst.value(row, "assigned").shown()).isEmpty();
        assertThat(gst.value(row, "payable").shown()).isEmpty();
        assertThat(gst.value(row, "gst").shown()).isEqualTo("$500.00");
        assertThat(String.join(" ", gst.notes())).contains("of 1 job nobody said");
    }

    @Test
    void everyEntryOfTheSampleWeekBalancesAndNamesNoOwner() throws IOException {
        BatchView week = Assembled.view(Assembled.week());
        Journal journal = new Journal(week, Register.TABLES.accounts(), Map.of());

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
        BatchView week = Assembled.view(Assembled.week());
        Journal journal = new Journal(week, Register.TABLES.accounts(), Map.of());
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

    private static List<String> booked(String cells) throws IOException {
        return lines(entry(caseFile(cells)));
    }

    private static List<String> lines(Entry entry) {
        return entry.postings().stream().map(p -> p.account() + " " + p.amount()).toList();
    }

    private static Entry entry(CaseFile file) {
        return new Journal(Assembled.view(List.of(file)), FORTY_EACH.accounts(), Map.of())
                .entries()
                .get(0);
    }

    /** Job SB-1101 of the sample week with 14 STCs, no VEECs and another deal. */
    private static CaseFile caseFile(String deal, Finding... more) throws IOException {
        String[] cells = deal.split(",");
        String register =
                SampleWeek.only("SB-1101")
                        .replace(
                                "Kestrel Certificates,4,14,504.00,yes,Kestrel Certificates,7,462.00,4620.00,3654.00,discount on the price",
                                "Pipit and Wren,4,14," + cells[0] + ",no,,,,5500.00,," + cells[1])
                        .replace(",,no,03 5550 0111,", ",," + cells[2] + ",03 5550 0111,")
                        .replace("laundry\",no,", "laundry\"," + cells[3] + ",");
        return Assembled.job(register, FORTY_EACH, more);
    }

    private static String text(byte[] bytes) {
        return new String(bytes, StandardCharsets.UTF_8);
    }
}
