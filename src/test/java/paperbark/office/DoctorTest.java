package paperbark.office;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.Instant;
import java.time.LocalDate;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import paperbark.cli.Program;
import paperbark.disk.Disk;
import paperbark.ledger.Entries;
import paperbark.ledger.Ledger;

class DoctorTest {
    @TempDir private Path folder;

    private Office office;

    @BeforeEach
    void makeAnOffice() throws IOException {
        office = Offices.make(folder.resolve("office"));
    }

    private Program.Run doctor() {
        return Program.run(folder, "doctor", "office");
    }

    private void says(int exitCode, String line) {
        Program.Run run = doctor();
        assertThat(run.out().lines().filter(l -> l.startsWith("MEND")))
                .as(run.out() + run.err())
                .singleElement()
                .asString()
                .contains(line);
        assertThat(run.exitCode()).isEqualTo(exitCode);
    }

    @Test
    void anOfficeInOrderIsWellAndStaysAsItIs() throws IOException {
        Files.writeString(office.packs().resolve(".paperbark-place"), "its own\n");
        var before = Invariants.files(office.root());
        Program.Run run = doctor();
        assertThat(run.exitCode()).as(run.out()).isZero();
        assertThat(run.out())
                .doesNotContain("MEND")
                .contains("intake/", "MB free", "by a rename", "ledger", "23 Nov 2026", "is free")
                .containsPattern("left over +nothing");
        assertThat(Invariants.files(office.root()))
                .filteredOn(f -> !f.getFileName().toString().startsWith("office.lock"))
                .isEqualTo(before);
    }

    @Test
    void aMissingFolderNamesSetup() throws IOException {
        Disk.delete(office.returned());
        says(23, "returned/    is missing. setup makes it.");
    }

    @Test
    void aBrokenTableIsNamed() throws IOException {
        Files.writeString(office.tables().resolve("firm.csv"), "nothing\n");
        Program.Run run = doctor();
        assertThat(run.exitCode()).isEqualTo(23);
        assertThat(run.out()).containsPattern("MEND  tables +firm.csv");
    }

    @Test
    void rowsThatARunWouldLeaveOutAreNamed() throws IOException {
        Files.writeString(
                office.tables().resolve("products.csv"),
                "Dunlin,D999,not a kind\n",
                StandardOpenOption.APPEND);
        Program.Run run = doctor();
        assertThat(run.exitCode()).isEqualTo(23);
        assertThat(run.out()).containsPattern("MEND  tables +products.csv > row");
    }

    @Test
    void aTemplateWhoseMistakeShowsOnlyWhenItIsFilledIsNamed() throws IOException {
        Path own = Files.createDirectories(office.root().resolve("templates/stc"));
        Files.writeString(own.resolve("gull.ftlh"), "<p>${job.owner.shoeSize}</p>");
        Program.Run run = doctor();
        assertThat(run.exitCode()).isEqualTo(23);
        assertThat(run.out()).containsPattern("MEND  papers +stc/gull.ftlh");
    }

    @Test
    void aBrokenRuleTableIsNamed() throws IOException {
        Files.writeString(
                office.rules().orElseThrow().resolve("veec/factors.csv"),
                "x\n",
                StandardOpenOption.APPEND);
        Program.Run run = doctor();
        assertThat(run.exitCode()).isEqualTo(23);
        assertThat(run.out()).containsPattern("MEND  rule tables +veec/factors");
    }

    @Test
    void anyTemplateThatCannotBeReadIsNamedEvenOneThatNoJobUsedYet() throws IOException {
        Path variant = office.root().resolve("templates/stc/odd.ftlh");
        Files.createDirectories(variant.getParent());
        Files.writeString(variant, "<p>\n<#if x>no end");
        says(23, "stc/odd.ftlh");
        Files.writeString(variant, "${\"x\"?new()}");
        says(23, "stc/odd.ftlh");
    }

    @Test
    void aLedgerThatIsNotAsItWasWrittenNamesTheRebuild() throws IOException {
        Files.writeString(office.ledgerFile(), "not a ledger at all, but long enough to be one");
        says(21, "ledger-rebuild");
        Files.delete(office.ledgerFile());
        says(21, "ledger-rebuild");
        assertThat(office.ledgerFile()).doesNotExist();
    }

    @Test
    void aClockThatRunsBehindTheNewestBatchIsNamed() throws IOException {
        try (Ledger ledger = Ledger.open(office.ledger())) {
            Entries.enter(ledger, Entries.batch("one", Entries.job("SB-1")));
        }
        assertThat(doctor().exitCode()).isZero();
        assertThat(Doctor.examine(office, Instant.EPOCH, LocalDate.of(2026, 11, 22), false))
                .filteredOn(c -> !c.isWell())
                .singleElement()
                .satisfies(c -> assertThat(c.said()).contains("22 Nov 2026", "23 Nov 2026"));
    }

    @Test
    void aFolderThatAnotherProgramAttendsIsNoFault() throws Exception {
        try (OfficeLock lock = OfficeLock.take(office, Instant.EPOCH)) {
            Program.Run run = doctor();
            assertThat(run.exitCode()).isZero();
            assertThat(run.out()).contains("Another program attends");
            assertThat(lock.office()).isEqualTo(office);
        }
    }

    @Test
    void whatACutRunLeftIsNamed() throws IOException {
        Files.createDirectories(office.packs().resolve(".2026-11-20-week-123"));
        Files.createDirectories(office.work().resolve("0001"));
        assertThat(doctor().out())
                .contains("packs/.2026-11-20-week-123: half-made", "work/0001: the next watch");
    }

    @Test
    void aFolderThatIsNotThereIsADiskFault() {
        assertThat(Program.run(folder, "doctor", "nowhere").exitCode()).isEqualTo(22);
    }
}
