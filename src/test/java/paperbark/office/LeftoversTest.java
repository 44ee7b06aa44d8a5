package paperbark.office;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import org.junit.jupiter.api.Test;
import paperbark.disk.FolderLock;
import paperbark.ledger.Entries;

/** What runs that were cut short left behind, and whose it is. */
class LeftoversTest extends OneBatchInFolders {
    @Test
    void aHiddenFolderIsNobodysUnlessTheLedgerHasItsManifest() throws IOException {
        HalfMade half = new HalfMade(office, ledger);
        Path made = Files.createDirectories(office.packs().resolve(".2026-11-23-two-1"));
        copyOf("2026-11-23-one", ".2026-11-23-one-1");
        Files.writeString(office.packs().resolve(".note"), "x");
        Instant now = Instant.now().plus(Duration.ofDays(1));
        assertThat(half.found(now)).containsExactly(made);
        Files.writeString(made.resolve("manifest.json"), "{}");
        assertThat(half.found(now)).containsExactly(made);
        assertThat(half.clear(now)).isOne();
        assertThat(made).doesNotExist();
        assertThat(office.packs().resolve(".2026-11-23-one-1")).exists();
        assertThat(half.clear(now)).isZero();
    }

    @Test
    void whatIsLeftOverIsToldWithWhatBecomesOfIt() throws IOException {
        Leftovers left = new Leftovers(office, Instant.now());
        assertThat(left.look()).extracting(CheckResult::said).containsExactly("nothing");
        Files.createDirectories(office.work().resolve("0001"));
        Files.createDirectories(office.work().resolve(".temporary"));
        Files.createDirectories(office.packs().resolve(".2026-11-23-two-1"));
        copyOf("2026-11-23-one", ".2026-11-23-one-1");
        Files.createFile(office.root().resolve("paperbark.db.schema-3"));
        assertThat(left.look())
                .extracting(c -> c.said().replaceFirst("(:.*?)[;,].*", "$1"))
                .containsExactly(
                        "work/0001: the next watch finishes it",
                        "packs/.2026-11-23-one-1: it may be the only copy of a batch",
                        "packs/.2026-11-23-two-1: half-made and in no ledger",
                        "paperbark.db.schema-3: the ledger as an earlier version wrote it");
        Files.writeString(office.ledgerFile(), "no database at all");
        assertThat(left.look())
                .extracting(CheckResult::said)
                .contains("packs/.2026-11-23-two-1: leave it until the ledger is well");
    }

    @Test
    void aHiddenFolderIsLeftToTheRunThatMakesItOrPublishesIt() throws IOException {
        Files.createDirectories(office.packs().resolve(".hidden"));
        Files.createDirectories(office.packs().resolve(".2026-11-23-two-1"));
        change("2026-11-23-one", "committed");
        Leftovers left = new Leftovers(office, Instant.now());
        FolderLock lock = FolderLock.tryTake(office.packs()).orElseThrow();
        try (lock) {
            assertThat(left.look())
                    .extracting(CheckResult::said)
                    .containsExactly(
                            "packs/.2026-11-23-two-1: another run is at work here; leave it",
                            "packs/.hidden: the next run publishes it");
        }
        assertThat(left.look().get(0).said()).contains("half-made");
        FolderLock.tryTake(office.packs()).orElseThrow().close();
    }

    @Test
    void papersOfAForgottenJobAreToldUntilTheyAreGone() throws IOException {
        ledger.forget("SB-1", Entries.DAY, Instant.EPOCH, "test");
        assertThat(new Leftovers(office, Instant.now()).look())
                .extracting(CheckResult::said)
                .containsExactly("papers of a job that is forgotten: the next watch finishes it");
    }
}
