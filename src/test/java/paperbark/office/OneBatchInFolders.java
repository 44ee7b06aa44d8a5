package paperbark.office;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Instant;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.io.TempDir;
import paperbark.batch.EntryFile;
import paperbark.disk.Hashes;
import paperbark.ledger.BatchEntry;
import paperbark.ledger.Entries;
import paperbark.ledger.Ledger;
import paperbark.ledger.Proof;

/**
 * An office with one batch that ledger, packs and filed registers agree on; its folder holds
 * nothing but the entry and a manifest that vouches for it.
 */
abstract class OneBatchInFolders {
    @TempDir Path folder;

    Office office;
    Ledger ledger;

    @BeforeEach
    void aBatchThatIsInLedgerPacksAndFiled() throws IOException {
        office = Office.in(folder);
        Ledger.create(office.ledger(), Instant.EPOCH);
        ledger = Ledger.open(office.ledger());
        Files.writeString(office.packs().resolve(".paperbark-place"), "here\n");
        publish("2026-11-23-one", "SB-1");
        filed("2026-11-23-one");
    }

    @AfterEach
    void close() {
        ledger.close();
    }

    /** Enters a batch whose manifest is that of the folder, and makes the folder. */
    void publish(String name, String job) throws IOException {
        BatchEntry entry = Entries.batch(name, Entries.job(job));
        String json =
                new String(
                        new EntryFile(ledger.id(), ledger.rehearse(entry).withDetail("")).toJson(),
                        StandardCharsets.UTF_8);
        Path batch = Files.createDirectories(office.packs().resolve(name));
        Path file = Files.writeString(batch.resolve(EntryFile.NAME), json);
        Path manifest =
                Files.writeString(
                        batch.resolve("manifest.json"),
                        "{\"outputs\": {\"ledger.json\": {\"sha256\": \""
                                + Hashes.sha256(file)
                                + "\"}}}");
        Entries.enter(
                ledger,
                new BatchEntry(
                        entry.name(),
                        entry.register(),
                        entry.registerSha256(),
                        entry.day(),
                        entry.at(),
                        entry.program(),
                        Hashes.sha256(manifest),
                        entry.place(),
                        entry.staged(),
                        entry.salt(),
                        entry.jobs()));
        ledger.batches().notePublished(name);
    }

    void filed(String batch) throws IOException {
        Path year = office.filed().resolve("2026").resolve(batch);
        Files.createDirectories(year);
        Files.writeString(year.resolve("week.csv"), "Job\n");
        ledger.batches().noteFiled(batch);
    }

    List<String> noticed() throws IOException {
        return LedgerProof.before(office.ledger(), new Proof());
    }

    void copyOf(String batch, String name) throws IOException {
        Offices.copy(office.packs().resolve(batch), office.packs().resolve(name));
    }

    static void change(Path database, String statement) throws SQLException {
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + database);
                Statement run = connection.createStatement()) {
            run.execute(statement);
        }
    }

    void change(String batch, String state) {
        try {
            change(
                    office.ledgerFile(),
                    "UPDATE progress SET state = '%s' WHERE entry = (SELECT seq FROM entry WHERE name = '%s')"
                            .formatted(state, batch));
        } catch (SQLException e) {
            throw new IllegalStateException(e);
        }
    }

    void place(String batch) {
        try {
            change(
                    office.ledgerFile(),
                    "UPDATE progress SET place = 'elsewhere' WHERE entry = (SELECT seq FROM entry WHERE name = '%s')"
                            .formatted(batch));
        } catch (SQLException e) {
            throw new IllegalStateException(e);
        }
    }
}
