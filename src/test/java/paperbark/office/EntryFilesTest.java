package paperbark.office;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import paperbark.batch.Ending;
import paperbark.batch.EntryFile;
import paperbark.ledger.Entries;
import paperbark.ledger.EntryRecord;
import paperbark.ledger.Ledger;
import paperbark.ledger.LedgerException;
import paperbark.ledger.LedgerId;

/** Entries from several places become one ledger, or it is said why not. */
class EntryFilesTest {
    private static final LocalDate DAY = Entries.DAY;

    @TempDir private Path folder;

    private Office office;
    private Ledger ledger;

    @BeforeEach
    void aLedgerOfThree() throws IOException {
        office = Office.in(folder);
        Ledger.create(office.ledger(), Instant.EPOCH);
        ledger = Ledger.open(office.ledger());
        for (String name : List.of("one", "two", "three")) {
            Entries.enter(ledger, Entries.batch(name, Entries.job("SB-" + name)));
        }
    }

    @AfterEach
    void close() {
        ledger.close();
    }

    private EntryFile file(String name) {
        return new EntryFile(ledger.id(), ledger.records().named(name).orElseThrow());
    }

    @Test
    void theyComeInTheOrderOfWorkWhateverTheOrderInWhichTheyAreFound() {
        EntryFiles files = new EntryFiles();
        for (String name : List.of("three", "one", "two", "one")) {
            files.add(file(name), "packs/" + name);
        }
        assertThat(files.inOrder())
                .extracting(EntryRecord::name)
                .containsExactly("one", "two", "three");
        assertThat(files.id()).isEqualTo(ledger.id());
    }

    @Test
    void oneThatIsMissingIsNamedByTheOneBehindIt() {
        EntryFiles files = new EntryFiles();
        files.add(file("one"), "packs/one");
        files.add(file("three"), "packs/three");
        assertThatThrownBy(files::inOrder)
                .isInstanceOf(LedgerException.class)
                .hasMessageContaining("Entry 2 of the ledger is neither")
                .hasMessageContaining("just before three");
    }

    @Test
    void twoThatSayOtherwiseAreNamedWithTheirPlaces() {
        EntryFiles files = new EntryFiles();
        files.add(file("one"), "packs/one");
        EntryFile other =
                new EntryFile(ledger.id(), file("one").entry().withDetail("another manifest"));
        assertThatThrownBy(() -> files.add(other, "packs/copy"))
                .isInstanceOf(LedgerException.class)
                .hasMessageContaining("Entry 1", "packs/one", "packs/copy");
    }

    @Test
    void anotherLedgersEntryIsNotTaken() {
        EntryFiles files = new EntryFiles();
        files.add(file("one"), "packs/one");
        EntryFile other = new EntryFile(new LedgerId("another", "then"), file("two").entry());
        assertThatThrownBy(() -> files.add(other, "packs/two"))
                .isInstanceOf(LedgerException.class)
                .hasMessageContaining("packs/two belongs to another ledger");
    }

    @Test
    void withoutAnyThereIsNothingToMakeALedgerFrom() {
        EntryFiles files = new EntryFiles();
        assertThat(files.inOrder()).isEmpty();
        assertThatThrownBy(files::id)
                .isInstanceOf(LedgerException.class)
                .hasMessageContaining("nothing to make a ledger from");
    }

    @Test
    void aCopyFillsInWhatItHoldsAndADamagedOneDoesNot() throws IOException {
        Path copy = folder.resolve("copy.db");
        ledger.copyTo(copy);
        EntryFiles files = new EntryFiles();
        assertThat(files.addCopy(copy)).isTrue();
        assertThat(files.inOrder()).hasSize(3);

        Path damaged = Files.writeString(folder.resolve("damaged.db"), "no database at all");
        assertThat(new EntryFiles().addCopy(damaged)).isFalse();
    }

    @Test
    void theLedgerItselfFillsGapsOnlyWhereItIsTheSame() throws IOException {
        Path own = folder.resolve("own.db");
        ledger.copyTo(own);
        EntryFiles files = new EntryFiles();
        files.add(file("two"), "packs/two");
        files.fillFrom(own);
        assertThat(files.inOrder()).hasSize(3);

        Path other = folder.resolve("other.db");
        Entries.create(other, Instant.EPOCH);
        EntryFiles alone = new EntryFiles();
        alone.add(file("one"), "packs/one");
        alone.fillFrom(other);
        assertThat(alone.id()).isEqualTo(ledger.id());
        assertThat(alone.inOrder()).hasSize(1);
    }

    @Test
    void aBatchOfADayToComeIsToldUntilAPersonSaysThatTheClockIsRight() throws IOException {
        FutureBatches future = new FutureBatches(office, ledger);
        assertThat(future.check(DAY, false).isWell()).isTrue();
        CheckResult early = future.check(DAY.minusDays(1), false);
        assertThat(early.ending()).isEqualTo(Ending.SETUP);
        assertThat(early.said()).contains("22 Nov 2026", "batch three is of 23 Nov 2026");
        assertThat(future.check(DAY.minusDays(1), true).said()).contains("right as you say");
        assertThat(future.check(DAY.minusDays(1), false).isWell()).isTrue();

        Entries.enter(ledger, Entries.batch("four", Entries.job("SB-4")));
        assertThat(future.check(DAY.minusDays(1), false).said()).contains("batch four");
        assertThat(future.check(DAY.minusDays(1), true).isWell()).isTrue();
        assertThat(Files.readAllLines(office.packs().resolve(".paperbark-future")))
                .containsExactly("four", "one", "three", "two");
    }
}
