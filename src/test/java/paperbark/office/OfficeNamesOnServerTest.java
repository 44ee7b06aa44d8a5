package paperbark.office;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.Statement;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionException;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import paperbark.cli.Program;
import paperbark.ledger.Entries;
import paperbark.ledger.Ledger;
import paperbark.ledger.LedgerBusyException;
import paperbark.ledger.LedgerPlace;
import paperbark.outside.Postgres;
import paperbark.value.SchemeName;

/** Where offices share a ledger, a message says which office it speaks of. */
@Tag("outside")
class OfficeNamesOnServerTest {
    private static final String SERIAL = "2610040004512777";

    @TempDir private Path folder;

    private Postgres server;
    private Office ballan;
    private Office bungaree;

    @BeforeEach
    void makeTwoOffices() throws IOException {
        server = Postgres.schema();
        ballan = Offices.sharing(folder.resolve("ballan"), server.url());
        bungaree = Offices.sharing(folder.resolve("bungaree"), server.url());
        assertThat(Program.run(ballan.root(), "ledger-new").exitCode()).isZero();
        Files.copy(
                ballan.root().resolve("paperbark.key"), bungaree.root().resolve("paperbark.key"));
    }

    @AfterEach
    void tidy() {
        if (server != null) {
            server.close();
        }
    }

    private Program.Run drop(Office into, String name, String rows) throws IOException {
        Files.writeString(into.intake().resolve(name), Offices.register() + rows);
        return Program.run(into.root(), "watch", ".", "--once", "--quiet-for", "0");
    }

    @Test
    void theOfficeOfABatchIsNamed() throws IOException {
        drop(bungaree, "there.csv", Offices.row(1, SERIAL));
        Path here = ballan.root().resolve("here.csv");
        Files.writeString(here, Offices.register() + Offices.row(2, SERIAL));
        Program.Run prepared = Program.run(ballan.root(), "prepare", here.toString());
        assertThat(prepared.out().replaceAll("\\s+", " "))
                .contains("(batch 2026-11-23-there of office \"bungaree\", STC)");
        Program.Run withdrawn = Program.run(ballan.root(), "withdraw", "J-1", "--because", "twice");
        assertThat(withdrawn.out()).contains("of batch 2026-11-23-there of office \"bungaree\"");
    }

    @Test
    void theOfficeOfARunThatWasFasterIsNamed() {
        LedgerPlace place = ballan.ledger();
        try (Ledger ledger = Ledger.open(place)) {
            Entries.enter(
                    ledger,
                    Entries.batchAt(
                            "1-2-3 bungaree",
                            Entries.job("J-1", Entries.claim(SchemeName.STC, "T-100", "1.00"))));
            assertThatThrownBy(() -> Entries.enter(ledger, Entries.batchAt("4-5-6 ballan")))
                    .isInstanceOf(LedgerBusyException.class)
                    .hasMessageContaining("batch one of office \"bungaree\" meanwhile");
        }
    }

    @Test
    @Timeout(30)
    void theProcessThatWritesIsNamed() throws Exception {
        try (Connection holder =
                        DriverManager.getConnection(
                                server.url()
                                        + "&ApplicationName=paperbark process 77 of office bungaree");
                Statement hold = holder.createStatement()) {
            holder.setAutoCommit(false);
            hold.execute(
                    "SELECT pg_advisory_xact_lock(1346523723, hashtext('" + server.name() + "'))");
            CompletableFuture<Void> waiting =
                    CompletableFuture.runAsync(
                            () -> {
                                try (Ledger ledger = Ledger.open(ballan.ledger())) {
                                    Entries.enter(ledger, Entries.batch("one"));
                                }
                            });
            // Waiting for as long as an office does would take too long here.
            while (server.ask(
                            "SELECT count(pg_cancel_backend(pid)) FROM pg_stat_activity"
                                    + " WHERE wait_event = 'advisory' AND application_name LIKE"
                                    + " 'paperbark process % of office ballan'")
                    .equals("0")) {
                TimeUnit.MILLISECONDS.sleep(20);
            }
            assertThatThrownBy(waiting::join)
                    .isInstanceOf(CompletionException.class)
                    .cause()
                    .isInstanceOf(LedgerBusyException.class)
                    .hasMessage(
                            "paperbark process 77 of office bungaree is writing in the ledger."
                                    + " Wait until it has ended.");
        }
    }
}
