package paperbark.office;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import paperbark.batch.EntryFile;
import paperbark.disk.Disk;
import paperbark.ledger.Entries;
import paperbark.ledger.Ledger;
import paperbark.ledger.LedgerException;
import paperbark.ledger.LedgerId;
import paperbark.ledger.LedgerPlace;
import paperbark.ledger.Proof;

/** What folders tell of batches, held against a ledger. */
class FoldersProofTest extends OneBatchInFolders {
    @Test
    void whatAgreesIsNothingToSay() throws IOException {
        assertThat(noticed()).isEmpty();
        assertThat(LedgerProof.trouble(office, new ArrayList<>())).isEmpty();
    }

    @Test
    void aCopyIsToBeDeletedAndARenamedFolderToGetItsNameBack() throws IOException {
        copyOf("2026-11-23-one", "2026-11-23-one - Copy");
        assertThat(noticed())
                .containsExactly(
                        "packs/2026-11-23-one - Copy is a copy of batch 2026-11-23-one. Delete it.");
        Disk.delete(office.packs().resolve("2026-11-23-one"));
        assertThat(noticed())
                .containsExactly(
                        "packs/2026-11-23-one - Copy is batch 2026-11-23-one. Give it its name back.");
    }

    @Test
    void anEntryThatItsManifestDoesNotVouchForIsNamed() throws IOException {
        Files.writeString(office.packs().resolve("2026-11-23-one/ledger.json"), "{}");
        assertThat(noticed())
                .singleElement()
                .asString()
                .startsWith(
                        "packs/2026-11-23-one/ledger.json is not as the batch's manifest says.");
    }

    @Test
    void aFolderThatIsGoneIsMadeAgainWhereItsRegisterIsFiled() throws IOException {
        Disk.delete(office.packs().resolve("2026-11-23-one"));
        assertThat(noticed())
                .containsExactly(
                        "The papers of batch 2026-11-23-one are not in packs/ any more. The next start"
                                + " of watch makes them again from filed/.");
        Files.delete(office.filed().resolve("2026/2026-11-23-one/week.csv"));
        assertThat(noticed())
                .singleElement()
                .asString()
                .endsWith("bring the folder back from a backup.");
    }

    @Test
    void aBatchOfAnOlderLedgerIsUnknown() throws IOException {
        Path older = folder.resolve("older.db");
        ledger.copyTo(older);
        publish("2026-11-24-two", "SB-2");
        ledger.close();
        Files.move(older, office.ledgerFile(), StandardCopyOption.REPLACE_EXISTING);
        ledger = Ledger.open(office.ledger());
        assertThatThrownBy(this::noticed)
                .isInstanceOf(LedgerException.class)
                .hasMessageContaining("does not know packs/2026-11-24-two: it is an older copy");
    }

    @Test
    void aFiledRegisterAloneTellsOfItsBatch() throws IOException {
        Path year = office.filed().resolve("2026");
        Files.createDirectories(year.resolve("2026-11-24-two"));
        assertThatThrownBy(this::noticed)
                .isInstanceOf(LedgerException.class)
                .hasMessageContaining("does not know batch 2026-11-24-two")
                .hasMessageContaining("filed/2026/2026-11-24-two");
        Disk.delete(year.resolve("2026-11-24-two"));
        Files.createDirectories(year.resolve("2026-11-24-nothing-new"));
        Files.createDirectories(year.resolve("notes"));
        Files.createDirectories(office.filed().resolve("old/2026-11-24-two"));
        assertThat(noticed()).isEmpty();
    }

    @Test
    void anEntryOfAnotherLedgerIsUnknown() throws IOException {
        Path advices = Files.createDirectories(office.root().resolve("advices"));
        EntryFile other =
                new EntryFile(
                        new LedgerId("another", "then"),
                        ledger.records().named("2026-11-23-one").orElseThrow());
        Files.write(advices.resolve("advice-2.json"), other.toJson());
        assertThatThrownBy(this::noticed)
                .isInstanceOf(LedgerException.class)
                .hasMessageContaining("advices/advice-2.json, which went into another one");
        Files.writeString(advices.resolve("advice-2.json"), "cut");
        assertThat(noticed())
                .containsExactly(
                        "advices/advice-2.json cannot be read. Bring it back from a backup, or delete"
                                + " it.");
        Files.move(advices.resolve("advice-2.json"), advices.resolve(".advice-2.json"));
        Files.writeString(advices.resolve("notes.txt"), "cut");
        assertThat(noticed()).isEmpty();
    }

    @Test
    void aCopyThatEndsOtherwiseOrLaterSpeaksAgainstTheLedger() throws IOException {
        Files.createDirectories(office.backups());
        Path copy = office.backups().resolve("paperbark-2026-11-23.db");
        ledger.copyTo(copy);
        assertThat(noticed()).isEmpty();
        try (Ledger later = Ledger.open(copy)) {
            Entries.enter(later, Entries.batch("later", Entries.job("SB-9")));
        }
        assertThatThrownBy(this::noticed)
                .isInstanceOf(LedgerException.class)
                .hasMessageContaining("ends before backups/paperbark-2026-11-23.db");
        publish("2026-11-24-two", "SB-2");
        assertThatThrownBy(this::noticed)
                .isInstanceOf(LedgerException.class)
                .hasMessageContaining("backups/paperbark-2026-11-23.db ends otherwise");
        Files.writeString(copy, "no database at all");
        assertThat(noticed())
                .containsExactly(
                        "backups/paperbark-2026-11-23.db is no sound copy of the ledger. Delete it.");
    }

    @Test
    void aRowThatSomebodyChangedIsNoticedBeforeAnythingElse() throws Exception {
        ledger.close();
        change(office.ledgerFile(), "UPDATE job SET pack = 'elsewhere'");
        assertThatThrownBy(this::noticed)
                .isInstanceOf(LedgerException.class)
                .hasMessageContaining("not as it was written");
        assertThat(LedgerProof.trouble(office, new ArrayList<>()).orElseThrow())
                .contains("not as it was written");
        change(office.ledgerFile(), "UPDATE job SET pack = 'packs/SB-1.pdf'");
        ledger = Ledger.open(office.ledger());
        assertThat(noticed()).isEmpty();
    }

    @Test
    void aCopyThatSomebodyChangedSpeaksForNothingAndTheNextIsAsked() throws Exception {
        Files.createDirectories(office.backups());
        for (int day = 20; day <= 24; day++) {
            ledger.copyTo(office.backups().resolve("paperbark-2026-11-" + day + ".db"));
        }
        Path newest = office.backups().resolve("paperbark-2026-11-24.db");
        change(newest, "UPDATE entry SET chain_sha256 = 'x'");
        assertThat(noticed())
                .containsExactly(
                        "backups/paperbark-2026-11-24.db is no sound copy of the ledger. Delete it.");
        // Three sound ones are enough.
        change(
                office.backups().resolve("paperbark-2026-11-20.db"),
                "UPDATE entry SET chain_sha256 = 'x'");
        assertThat(noticed()).hasSize(1);
    }

    @Test
    void aStateThatSomebodyChangedIsToldByNumber() throws IOException {
        publish("2026-11-24-two", "SB-2");
        ledger.batches().noteFiled("2026-11-24-two");
        assertThat(noticed())
                .singleElement()
                .asString()
                .startsWith(
                        "Batch 2026-11-24-two is filed as the ledger has it, and not in filed/.");
        publish("2026-11-25-three", "SB-3");
        ledger.batches().noteFiled("2026-11-25-three");
        assertThat(noticed())
                .singleElement()
                .asString()
                .startsWith("2 batches, the newest 2026-11-25-three, are filed");
    }

    @Test
    void aBatchThatPeopleSeeIsNotedAsPublishedAndNoOther() throws IOException {
        Entries.enter(ledger, Entries.batch("2026-11-24-two", Entries.job("SB-2")));
        publish("2026-11-25-three", "SB-3");
        change("2026-11-25-three", "committed");
        assertThat(noticed()).anyMatch(l -> l.startsWith("Batch 2026-11-25-three is in packs/"));
        new BatchStates(office, ledger, Witnesses.of(office)).note();
        assertThat(ledger.batches().publishedIn("here"))
                .containsExactly("2026-11-23-one", "2026-11-25-three");
    }

    @Test
    void aLedgerThatIsMissingIsMissedOnlyWhereSomethingTellsOfOne() throws IOException {
        ledger.close();
        Files.delete(office.ledgerFile());
        assertThatThrownBy(this::noticed)
                .isInstanceOf(LedgerException.class)
                .hasMessageContaining("packs/2026-11-23-one tells of one");
        Disk.delete(office.packs());
        assertThatThrownBy(this::noticed)
                .isInstanceOf(LedgerException.class)
                .hasMessageContaining("filed/2026/2026-11-23-one tells of one");
        Disk.delete(office.filed());
        assertThatThrownBy(this::noticed)
                .isInstanceOf(LedgerException.class)
                .hasMessageContaining("paperbark.key tells of one");
        Files.delete(office.ledger().key());
        assertThat(noticed()).isEmpty();
        Ledger.create(office.ledger(), Instant.EPOCH);
        ledger = Ledger.open(office.ledger());
    }

    @Test
    void aLedgerOfAnotherNameOrBesideNoOfficeIsLeftToItsOwner() throws IOException {
        Path elsewhere = Files.createDirectories(folder.resolve("elsewhere"));
        assertThat(
                        LedgerProof.before(
                                new LedgerPlace.InFile(elsewhere.resolve("paperbark.db")),
                                new Proof()))
                .isEmpty();
        assertThat(
                        LedgerProof.before(
                                new LedgerPlace.InFile(office.root().resolve("other.db")),
                                new Proof()))
                .isEmpty();
    }

    @Test
    void aBatchOfAnotherOfficeThatLiesHereIsToldOnlyWhereItLiesHere() throws IOException {
        Entries.enter(ledger, Entries.batch("2026-11-24-two", Entries.job("SB-2")));
        place("2026-11-24-two");
        assertThat(noticed()).isEmpty();
        place("2026-11-23-one");
        assertThat(noticed())
                .singleElement()
                .asString()
                .startsWith("Batch 2026-11-23-one is here, and in the ledger of another office.");
        Disk.delete(office.packs().resolve("2026-11-23-one"));
        assertThat(noticed()).anyMatch(l -> l.startsWith("Batch 2026-11-23-one is here"));
    }

    @Test
    void theRegisterOfABatchIsTheFileInItsFolder() throws IOException {
        Path filed = office.filed().resolve("2026/2026-11-23-one");
        Files.writeString(filed.resolve(".note"), "x");
        Files.createDirectories(filed.resolve("answers"));
        Witnesses witnesses = Witnesses.of(office);
        assertThat(witnesses.registerOf("2026-11-23-one"))
                .contains(office.filed().resolve("2026/2026-11-23-one/week.csv"));
        assertThat(witnesses.registerOf("2026-11-24-two")).isEqualTo(Optional.empty());
        assertThat(witnesses.batches().names()).containsExactly("2026-11-23-one");
        assertThat(witnesses.batches().of(office, "2026-11-23-one"))
                .containsExactly(office.packs().resolve("2026-11-23-one"));
        assertThat(witnesses.batches().of(office, "2026-11-24-two")).isEmpty();
    }
}
