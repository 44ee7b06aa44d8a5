package paperbark.output.form;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import paperbark.finding.Finding;
import paperbark.finding.FindingCode;
import paperbark.firm.Buyer;
import paperbark.firm.Maker;
import paperbark.job.HeaterBuilder;
import paperbark.job.Job;
import paperbark.job.JobBuilder;
import paperbark.offer.Expected;
import paperbark.output.CaseFile;
import paperbark.output.CaseFileBuilder;
import paperbark.output.CaseFiles;
import paperbark.value.SchemeName;

/** What makers and buyers take as entries, by a list of the firm's. */
class EntriesTest {
    @TempDir private Path folder;

    private Entries entries(String... list) throws IOException {
        Path lists = Files.createDirectories(folder.resolve("entries"));
        Files.write(lists.resolve("theirs.csv"), List.of(list));
        return new Entries(Optional.of(folder));
    }

    private static CaseFile taking() {
        return taking("theirs");
    }

    /** A job whose maker and whose buyers name that list. */
    private static CaseFile taking(String list) {
        CaseFile c = CaseFiles.installedSolar();
        Job job = c.job();
        Maker m = job.heater().maker().orElseThrow();
        Maker maker =
                new Maker(
                        m.name(),
                        m.address(),
                        m.phone(),
                        m.email(),
                        m.claimCosts(),
                        m.warrantyVariant(),
                        Optional.of(list));
        return CaseFileBuilder.builder(c)
                .job(
                        JobBuilder.builder(job)
                                .heater(
                                        HeaterBuilder.builder(job.heater())
                                                .maker(Optional.of(maker))
                                                .build())
                                .build())
                .expected(c.expected().stream().map(e -> taking(e, list)).toList())
                .build();
    }

    private static Expected taking(Expected e, String list) {
        Buyer b = e.buyer();
        Buyer buyer =
                new Buyer(
                        b.name(),
                        b.abn(),
                        b.registrations(),
                        b.address(),
                        b.phone(),
                        b.email(),
                        b.forms(),
                        Optional.of(list),
                        b.own());
        return new Expected(
                e.scheme(),
                buyer,
                e.offer(),
                e.certificates(),
                e.gross(),
                e.fee(),
                e.gst(),
                e.net(),
                e.split(),
                e.due(),
                e.runnerUp(),
                e.runnerUpNet());
    }

    private static List<String> told(Optional<Entries.Filled> filled) {
        return filled.orElseThrow().all().stream()
                .map(e -> e.heading() + ": " + e.value())
                .toList();
    }

    private static List<String> codes(Entries entries) {
        return entries.findings().stream()
                .map(f -> f.code() + " " + f.place().rowNumber() + " " + f.fact())
                .toList();
    }

    @Test
    void theOrderAndTheHeadingsAreTheListsOwn() throws IOException {
        Entries entries =
                entries(
                        "heading,value,form",
                        "# a remark,,",
                        "Ref,${job.reference},",
                        "Fitted,${job.installedOn},yyyy-mm-dd",
                        "Short,${job.installedOn},d.m.yy",
                        "As it is,${job.installedOn},",
                        "How many,${claim.certificates} ${claim.scheme},",
                        "Site,${job.site.address.street}\\n${job.site.address.locality},",
                        "Nothing,${job.corrects},dd/mm/yyyy");
        CaseFile file = taking();
        String day = file.job().installedOn().orElseThrow().toString();
        Optional<Entries.Filled> filled = entries.ofClaim(file, SchemeName.STC);

        assertThat(told(filled))
                .startsWith("Ref: " + file.job().reference(), "Fitted: " + day)
                .contains("Nothing: ")
                .anyMatch(line -> line.matches("Short: \\d{1,2}\\.\\d{1,2}\\.\\d\\d"))
                .anyMatch(line -> line.matches("As it is: \\d{1,2} \\w{3} \\d{4}"))
                .anyMatch(line -> line.matches("How many: \\d+ STC"))
                .anyMatch(line -> line.matches("(?s)Site: [^\\n]+\\n[^\\n]+"));
        assertThat(filled.orElseThrow().page()).isTrue();
        assertThat(filled.orElseThrow().table()).isTrue();
        assertThat(entries.findings()).isEmpty();
        assertThat(entries.used()).containsKey("entries/theirs.csv");
    }

    /** A maker has nothing to do with accounts; the buyer pays into them. */
    @Test
    void aMakersListSeesNoAccount() throws IOException {
        String[] list = {
            "heading,value",
            "Name,${job.payment.accountName}${firm.accountName}",
            "Bank,${job.payment.bsb}",
            "Account,${job.payment.account}",
            "Ours,${firm.account}",
            "Ref,${job.reference}"
        };
        CaseFile file = taking();
        assertThat(told(entries(list).ofWarranty(file)))
                .containsExactly(
                        "Name: ",
                        "Bank: ",
                        "Account: ",
                        "Ours: ",
                        "Ref: " + file.job().reference());
        assertThat(told(entries(list).ofClaim(file, SchemeName.STC)))
                .contains("Bank: " + file.job().payment().bsb().orElseThrow().full());
    }

    @Test
    void onlyAPageOrOnlyATable() throws IOException {
        Entries.Filled noPage =
                entries("heading,value", "#page,no", "Ref,${job.reference}")
                        .ofClaim(taking(), SchemeName.STC)
                        .orElseThrow();
        assertThat(noPage.page()).isFalse();
        assertThat(noPage.table()).isTrue();
        Entries.Filled noTable =
                entries("heading,value", "#table,no", "Ref,${job.reference}")
                        .ofClaim(taking(), SchemeName.STC)
                        .orElseThrow();
        assertThat(noTable.page()).isTrue();
        assertThat(noTable.table()).isFalse();
    }

    @Test
    void whatIsWrongInTheListIsToldOnceAndHoldsNothing() throws IOException {
        Entries entries =
                entries(
                        "heading,value,form",
                        "Good,${job.reference},",
                        "Unknown,${job.refrence},",
                        "Broken,${job.,",
                        "Form,${job.installedOn},soon");
        for (int i = 0; i < 3; i++) {
            assertThat(told(entries.ofClaim(taking(), SchemeName.STC)))
                    .containsExactly(
                            "Good: " + taking().job().reference(), "Unknown: ", "Broken: ");
        }
        assertThat(codes(entries))
                .hasSize(3)
                .anyMatch(c -> c.startsWith("SIDE_FILE_LACKING 3 ") && c.contains("refrence"))
                .anyMatch(c -> c.startsWith("SIDE_FILE_LACKING 4 "))
                .anyMatch(c -> c.startsWith("TABLE_ROW_WRONG 5 "));
        assertThat(entries.findings().stream().flatMap(f -> f.holds().stream())).isEmpty();
    }

    @Test
    void aListThatIsNotThereIsToldOnce() throws IOException {
        for (String name : List.of("nobodys", "../theirs", "x".repeat(60))) {
            Entries entries = entries("heading,value", "Ref,${job.reference}");
            CaseFile file = taking(name);
            assertThat(entries.ofClaim(file, SchemeName.STC)).isEmpty();
            assertThat(entries.ofWarranty(file)).isEmpty();
            assertThat(entries.findings())
                    .extracting(Finding::code)
                    .containsExactly(FindingCode.SIDE_FILE_LACKING);
        }
        Entries empty = entries("heading,value");
        assertThat(empty.ofClaim(taking(), SchemeName.STC)).isEmpty();
        assertThat(codes(empty)).singleElement().asString().contains("no entry that can be used");
    }

    @Test
    void whoNamesNoListTakesNoEntries() throws IOException {
        Entries entries = entries("heading,value", "Ref,${job.reference}");
        assertThat(
                        Stream.of(
                                entries.ofWarranty(CaseFiles.installedSolar()),
                                entries.ofClaim(CaseFiles.installedSolar(), SchemeName.STC)))
                .containsOnly(Optional.empty());
        assertThat(entries.findings()).isEmpty();
    }
}
