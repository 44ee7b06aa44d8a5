package paperbark.office;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import paperbark.batch.OutputFolder;
import paperbark.cli.Program;
import paperbark.disk.Disk;

/** How far a batch has come is held against the folders, since no seal covers what changes. */
class BatchStatesTest {
    @TempDir private static Path shared;

    @TempDir private Path folder;

    private Office office;

    @BeforeAll
    static void workForADay() throws IOException {
        Office office = Offices.make(shared.resolve("office"));
        for (int n = 1; n <= 2; n++) {
            Files.writeString(office.intake().resolve("list-" + n + ".csv"), Offices.register(n));
        }
        assertThat(watch(office).exitCode()).isZero();
    }

    @BeforeEach
    void takeACopy() throws IOException {
        Offices.copy(shared.resolve("office"), folder.resolve("office"));
        office = Office.in(folder.resolve("office"));
        for (String command : List.of("owed", "doctor")) {
            Program.Run run = run(command);
            assertThat(run.exitCode()).as(run.out() + run.err()).isZero();
            assertThat(run.err()).isEmpty();
        }
    }

    private static Program.Run watch(Office office) {
        return Program.run(office.root(), "watch", ".", "--once", "--quiet-for", "0");
    }

    private Program.Run run(String command) {
        return command.equals("doctor")
                ? Program.run(office.root(), command, ".")
                : Program.run(office.root(), command);
    }

    private String states() throws IOException {
        return Invariants.query(
                office.root(), "SELECT group_concat(state) FROM progress ORDER BY entry");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "state = 'committed'|Batch 2026-11-23-list-1 is in packs/, and not published",
                "place = 'another'|Batch 2026-11-23-list-1 is here, and in the ledger of another office"
            })
    void whatSomebodyChangedIsNoticedAtEveryStart(String change, String said) throws Exception {
        Invariants.change(office.root(), "UPDATE progress SET " + change + " WHERE entry = 1");
        assertThat(run("owed").err()).contains("Look: " + said);
        Program.Run doctor = run("doctor");
        assertThat(doctor.exitCode()).isEqualTo(23);
        assertThat(doctor.out()).contains("MEND  packs", said);
        assertThat(watch(office).out()).contains("Look: " + said);
    }

    @Test
    void aBatchThatPeopleSeeIsNotedByTheNextStart() throws Exception {
        Invariants.change(office.root(), "UPDATE progress SET state = 'committed'");
        assertThat(run("owed").err())
                .contains("2 batches, the newest 2026-11-23-list-2, are in packs/");
        watch(office);
        assertThat(states()).isEqualTo("filed,filed");
        assertThat(run("owed").err()).isEmpty();
    }

    @Test
    void aBatchThatIsOnlySaidToBeFiledIsNoticed() throws Exception {
        Disk.delete(office.filed().resolve("2026/2026-11-23-list-2"));
        assertThat(run("owed").err())
                .contains(
                        "Batch 2026-11-23-list-2 is filed as the ledger has it, and not in filed/");
        Invariants.change(office.root(), "UPDATE progress SET state = 'published' WHERE entry = 2");
        assertThat(run("owed").err()).isEmpty();
    }

    /** Its ledger came along, so that the batches in it are those of the copy. */
    @Test
    void aCopyWithALedgerOfItsOwnKeepsItsBatches() throws Exception {
        Offices.copy(office.root(), folder.resolve("copy"));
        Office copy = Office.in(folder.resolve("copy"));
        Program.Run copied =
                Program.run(copy.root(), "watch", ".", "--once", "--quiet-for", "0", "--copied");
        assertThat(copied.exitCode()).isZero();
        assertThat(Files.readString(copy.status()))
                .contains("2026-11-23-list-2")
                .doesNotContain("None yet");
    }

    /** What lay in the office that it is a copy of lies here too, and nobody changed anything. */
    @Test
    void anOfficeThatIsACopyOfAnotherSaysNothingOfWhatCameWithIt() throws Exception {
        OutputFolder.renew(office.packs());
        Program.Run copied = watch(office);
        assertThat(copied.exitCode()).isZero();
        assertThat(copied.out()).doesNotContain("Look:");
        assertThat(run("owed").err()).isEmpty();
        assertThat(run("doctor").exitCode()).isZero();

        Invariants.change(office.root(), "UPDATE progress SET place = 'another' WHERE entry = 1");
        assertThat(run("owed").err()).contains("and in the ledger of another office");
    }
}
