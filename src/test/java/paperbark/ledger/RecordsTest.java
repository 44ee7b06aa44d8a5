package paperbark.ledger;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import paperbark.value.SchemeName;

/** What the ledger says of its entries, and of entries and copies that lie elsewhere. */
class RecordsTest {
    @TempDir private Path folder;

    private Ledger ledger;

    @BeforeEach
    void aLedgerOfTwoEntries() {
        Path file = folder.resolve("paperbark.db");
        Entries.create(file, Instant.EPOCH);
        ledger = Ledger.open(file);
        enter(ledger, "one", "SB-1");
        enter(ledger, "two", "SB-2");
    }

    @AfterEach
    void close() {
        ledger.close();
    }

    private static void enter(Ledger ledger, String batch, String job) {
        ClaimEntry claim = Entries.claim(SchemeName.STC, "T-" + job, "504.00");
        Entries.enter(ledger, Entries.batch(batch, Entries.job(job, claim)));
    }

    private Ledger copy(String name) {
        ledger.copyTo(folder.resolve(name));
        return Ledger.open(folder.resolve(name));
    }

    @Test
    void anEntryIsKnownByItsRowsAndItsSeal() {
        EntryRecord two = ledger.records().named("two").orElseThrow();
        assertThat(ledger.records().knows(two)).isEqualTo(Records.Knows.SAME);

        EntryRecord otherDay = EntryRecordBuilder.builder(two).day("2026-11-24").build();
        assertThat(ledger.records().knows(otherDay)).isEqualTo(Records.Knows.OTHERWISE);

        EntryRecord withoutRows = EntryRecordBuilder.builder(two).rows(Map.of()).build();
        assertThat(ledger.records().knows(withoutRows)).isEqualTo(Records.Knows.OTHERWISE);
    }

    @Test
    void anEntryBehindTheEndIsNotKnown() {
        try (Ledger copy = copy("copy.db")) {
            enter(copy, "three", "SB-3");
            EntryRecord three = copy.records().named("three").orElseThrow();
            assertThat(ledger.records().knows(three)).isEqualTo(Records.Knows.NOTHING);
        }
    }

    @Test
    void aCopyIsTheBeginningOfTheLedgerOrTellsSomethingElseOrMore() {
        try (Ledger copy = copy("copy.db")) {
            assertThat(ledger.records().knows(copy.records())).isEqualTo(Records.Knows.SAME);

            enter(copy, "three", "SB-3");
            assertThat(ledger.records().knows(copy.records())).isEqualTo(Records.Knows.NOTHING);
            assertThat(copy.records().knows(ledger.records())).isEqualTo(Records.Knows.SAME);

            enter(ledger, "other", "SB-4");
            assertThat(ledger.records().knows(copy.records())).isEqualTo(Records.Knows.OTHERWISE);
        }
    }

    @Test
    void theNewestEntryIsToldByNumberDayAndMoment() {
        assertThat(ledger.records().newestNumber()).isEqualTo(2);
        assertThat(ledger.records().newestDay()).contains(Entries.DAY);
        assertThat(ledger.records().newestAt()).contains("2026-11-23T01:00:00Z");
    }

    @Test
    void aLedgerWithoutEntriesHasNoNewest() {
        Path file = folder.resolve("empty.db");
        Entries.create(file, Instant.EPOCH);
        try (Ledger empty = Ledger.open(file)) {
            assertThat(empty.records().newestNumber()).isZero();
            assertThat(empty.records().newestDay()).isEmpty();
            assertThat(empty.records().newestAt()).isEmpty();
            assertThat(empty.records().all()).isEmpty();
        }
    }

    @Test
    void onPaperTheSealIsFourGroupsOfFour() {
        String seal = ledger.records().seals().get(2L);
        assertThat(ledger.records().lastSeal())
                .matches("entry 2, seal [0-9a-f]{4} [0-9a-f]{4} [0-9a-f]{4} [0-9a-f]{4}")
                .endsWith(seal.substring(12, 16));
    }

    @Test
    void whatTheWorkOfAnAdviceFindsIsHandedOn() {
        assertThat(ledger.<String>settle(Entries.advice("33"), book -> "found")).isEqualTo("found");
        assertThat(ledger.allClaims())
                .extracting(ClaimState::reference)
                .containsExactly("SB-1-STC", "SB-2-STC");
        assertThat(ledger.remedy()).contains("ledger-rebuild");
    }

    @Test
    void whatWasBeforeAnEntryLeavesItOut() {
        assertThat(ledger.records().before(2)).extracting(EntryRecord::name).containsExactly("one");
        assertThat(ledger.records().before(1)).isEmpty();
    }

    @Test
    void onlyBatchesHaveFoldersOfTheirOwn() {
        ledger.forget("SB-1", Entries.DAY, Instant.EPOCH, "test");
        assertThat(ledger.records().withoutFolder())
                .extracting(EntryRecord::name)
                .containsExactly("forgetting-3");
    }

    @Test
    void moreEntriesThanAreReadAtOnceAreSealedUponEachOther() {
        List<String> names = new ArrayList<>(List.of("one", "two"));
        for (int i = 3; i <= Records.AT_ONCE + 3; i++) {
            enter(ledger, "batch-" + i, "SB-" + i);
            names.add("batch-" + i);
        }
        List<EntryRecord> all = ledger.records().all();
        assertThat(all).extracting(EntryRecord::name).containsExactlyElementsOf(names);
        String before = Seals.beginning(ledger.id());
        for (EntryRecord entry : all) {
            assertThat(entry.before()).isEqualTo(before);
            before = ledger.records().seals().get(entry.seq());
        }
        ledger.verify();
    }

    @Test
    void entriesThatDoNotFollowEachOtherMakeNoLedger() {
        List<EntryRecord> all = ledger.records().all();
        LedgerPlace anew = new LedgerPlace.InFile(folder.resolve("anew.db"));
        EntryRecord moved = EntryRecordBuilder.builder(all.get(1)).before("00").build();
        assertThatThrownBy(() -> Ledger.rebuild(anew, ledger.id(), List.of(all.get(0), moved)))
                .isInstanceOf(LedgerException.class)
                .hasMessageContaining("Entry 2", "\"two\"");
    }
}
