package paperbark.ledger;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.stream.Collectors;
import java.util.stream.LongStream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import paperbark.outside.Postgres;
import paperbark.value.SchemeName;

/** The same promises on a PostgreSQL server, and what only a server can do. */
@Tag("outside")
class LedgerOnServerTest extends LedgerTest {
    private static final String DROP_EVERY_RULE =
            """
            DO $$ DECLARE r record; BEGIN
              FOR r IN SELECT conrelid::regclass AS t, conname AS c FROM pg_constraint
                WHERE connamespace = current_schema()::regnamespace LOOP
                  EXECUTE format('ALTER TABLE %s DROP CONSTRAINT IF EXISTS %I CASCADE', r.t, r.c);
              END LOOP; END $$""";

    @TempDir private Path copies;

    private Postgres server;
    private LedgerPlace place;

    @Override
    LedgerPlace place(Path folder) {
        server = Postgres.schema();
        place = new LedgerPlace.OnServer(server.url(), folder);
        return place;
    }

    @AfterEach
    void tidy() {
        if (server != null) {
            server.close();
        }
    }

    @Override
    void change(String statement) {
        server.run(statement);
    }

    @Override
    List<String> columns() {
        return Arrays.asList(
                server.ask(
                                "SELECT string_agg(table_name || '.' || column_name, ' ') FROM information_schema.columns"
                                        + " WHERE table_schema = current_schema()")
                        .split(" "));
    }

    private List<String> tables() {
        return columns().stream().map(c -> c.replaceAll("\\..*", "")).distinct().toList();
    }

    private void ofEachTable(String statement) {
        server.run(
                tables().stream()
                        .map(t -> statement.replace("EACH", t).replace("KEPT", server.kept()))
                        .collect(Collectors.joining("; ")));
    }

    @Override
    void keep() {
        server.run("CREATE SCHEMA " + server.kept());
        ofEachTable("CREATE TABLE KEPT.EACH AS SELECT * FROM EACH");
        server.run(DROP_EVERY_RULE);
    }

    @Override
    void bringBack(String table) {
        ofEachTable("DELETE FROM EACH; INSERT INTO EACH SELECT * FROM KEPT.EACH");
    }

    @Override
    void changeUnchecked(String table, String column) {
        boolean isText =
                server.ask("SELECT pg_typeof(" + column + ") FROM " + table + " LIMIT 1")
                        .equals("text");
        server.run(
                "UPDATE %1$s SET %2$s = %2$s %3$s WHERE ctid = (SELECT max(ctid) FROM %1$s)"
                        .formatted(table, column, isText ? "|| 'x'" : "+ 7"));
    }

    private static BatchEntry week(String name) {
        // An order of letters that people like has these the other way round.
        return Entries.batch(
                name,
                Entries.job("SB_1", Entries.claim(SchemeName.STC, "T-100", "504.00")),
                Entries.job("SBA", Entries.claim(SchemeName.STC, "T-200", "648.00")));
    }

    private List<EntryRecord> records(LedgerPlace of) {
        try (Ledger ledger = Ledger.open(of)) {
            ledger.verify();
            return ledger.records().all();
        }
    }

    @Test
    void aCopyOfTheDayIsAFileWithTheSameEntriesAndSeals() {
        Path copy = copies.resolve("copy.db");
        try (Ledger ledger = Ledger.open(place)) {
            Entries.enter(ledger, week("one"));
            Entries.enter(
                    ledger,
                    Entries.batch(
                            "two",
                            Entries.job("SB_1", Entries.claim(SchemeName.STC, "T-101", "504.00"))));
            ledger.forget("sba", Entries.DAY, Instant.EPOCH, "test");
            ledger.copyTo(copy);
        }
        LedgerPlace file = new LedgerPlace.InFile(copy);
        assertThat(records(file)).hasSize(3).isEqualTo(records(place));
        assertThat(records(file).get(0).rows().get("job"))
                .extracting(row -> row.get(0))
                .containsExactly("SBA", "SB_1");
    }

    @Test
    void aLedgerIsTakenOverToAServerWholeAndOnlyOnce() {
        LedgerPlace file = new LedgerPlace.InFile(copies.resolve("old.db"));
        Ledger.create(file, Instant.EPOCH);
        LedgerId id;
        try (Ledger ledger = Ledger.open(file)) {
            Entries.enter(ledger, week("one"));
            id = ledger.id();
        }
        List<EntryRecord> all = records(file);
        assertThatThrownBy(() -> Ledger.rebuild(place, id, all))
                .isInstanceOf(LedgerException.class)
                .hasMessageContaining("already");
        assertThat(records(place)).isEmpty();
        try (Postgres other = Postgres.schema()) {
            LedgerPlace target = new LedgerPlace.OnServer(other.url(), copies);
            List<EntryRecord> gap = List.of(all.get(0), all.get(0));
            assertThatThrownBy(() -> Ledger.rebuild(target, id, gap))
                    .isInstanceOf(LedgerException.class);
            assertThatThrownBy(() -> Ledger.open(target))
                    .isInstanceOf(LedgerException.class)
                    .hasMessageContaining("There is no ledger at jdbc:postgresql://");
            Ledger.rebuild(target, id, all);
            assertThat(records(target)).isEqualTo(all);
        }
    }

    @Test
    void manyWritersWaitForEachOther() throws Exception {
        ExecutorService offices = Executors.newFixedThreadPool(4);
        try {
            List<Future<?>> all = new ArrayList<>();
            for (int n = 0; n < 24; n++) {
                String name = "batch-" + n;
                String serial = "T-" + (100 + n);
                all.add(
                        offices.submit(
                                () -> {
                                    try (Ledger ledger = Ledger.open(place)) {
                                        enterAtLast(
                                                ledger,
                                                Entries.batch(
                                                        name,
                                                        Entries.job(
                                                                "J" + serial,
                                                                Entries.claim(
                                                                        SchemeName.STC,
                                                                        serial,
                                                                        "1.00"))));
                                    }
                                }));
            }
            for (Future<?> one : all) {
                one.get();
            }
        } finally {
            offices.shutdownNow();
        }
        assertThat(records(place))
                .extracting(EntryRecord::seq)
                .containsExactlyElementsOf(LongStream.rangeClosed(1, 24).boxed().toList());
    }

    /** As offices do: who was overtaken between rehearsal and entry begins again. */
    private static void enterAtLast(Ledger ledger, BatchEntry batch) {
        for (int overtaken = 0; ; overtaken++) {
            try {
                Entries.enter(ledger, batch);
                return;
            } catch (LedgerBusyException busy) {
                if (overtaken == 100) {
                    throw busy;
                }
            }
        }
    }

    @Test
    void noValueOfAnybodysComesIntoWhatAFailureSays() {
        try (Ledger ledger = Ledger.open(place)) {
            ClaimEntry one = Entries.claim(SchemeName.STC, "SOMEBODYS-1", "504.00");
            ClaimEntry twice =
                    new ClaimEntry(
                            one.scheme(),
                            one.buyer(),
                            one.certificates(),
                            one.installedOn(),
                            one.lodgeBy(),
                            List.of(one.serials().get(0), one.serials().get(0)),
                            one.promise());
            assertThatThrownBy(
                            () ->
                                    Entries.enter(
                                            ledger,
                                            Entries.batch("one", Entries.job("SB-1", twice))))
                    .isInstanceOf(LedgerException.class)
                    .hasMessageContaining("PostgreSQL 23505")
                    .extracting(LedgerOnServerTest::everythingSaid)
                    .asString()
                    .doesNotContainIgnoringCase("somebodys");
        }
    }

    private static String everythingSaid(Throwable e) {
        StringWriter said = new StringWriter();
        e.printStackTrace(new PrintWriter(said));
        return said.toString();
    }

    @Test
    void aServerThatStoppedTheProgramOrIsNotThereIsTheWorldsTrouble() {
        try (Ledger ledger = Ledger.open(place)) {
            server.run(
                    "SELECT pg_terminate_backend(pid) FROM pg_stat_activity"
                            + " WHERE application_name LIKE 'paperbark %' ORDER BY backend_start DESC LIMIT 1");
            assertThatThrownBy(() -> Entries.enter(ledger, week("one")))
                    .isInstanceOf(UncheckedIOException.class)
                    .hasMessageContaining("cannot be reached");
        }
        String nobody = server.url().replaceFirst(":\\d+/", ":1/");
        assertThatThrownBy(() -> Ledger.open(new LedgerPlace.OnServer(nobody, copies)))
                .isInstanceOf(UncheckedIOException.class)
                .hasMessageContaining("jdbc:postgresql://localhost:1/postgres cannot be reached")
                .hasMessageNotContaining("user=");
    }

    @Test
    void aLedgerThatIsGoneOrNewerIsRefused() {
        server.run("UPDATE office SET schema_version = 99");
        assertThatThrownBy(() -> Ledger.open(place))
                .isInstanceOf(LedgerException.class)
                .hasMessageContaining("newer version");
        server.run("DROP TABLE office CASCADE");
        assertThatThrownBy(() -> Ledger.open(place))
                .isInstanceOf(LedgerException.class)
                .hasMessageContaining("There is no ledger at");
        assertThatThrownBy(() -> Ledger.create(place, Instant.EPOCH))
                .isInstanceOf(LedgerException.class)
                .hasMessageContaining("already");
        String database = server.url().replaceFirst("/postgres\\?", "/not-there?");
        assertThatThrownBy(() -> Ledger.open(new LedgerPlace.OnServer(database, copies)))
                .isInstanceOf(LedgerException.class)
                .hasMessageContaining("There is no database");
    }

    @Test
    void aUserWithoutRightsIsTold() {
        server.run("CREATE ROLE " + server.kept() + " LOGIN");
        try {
            String other = server.url().replaceFirst("user=\\w+", "user=" + server.kept());
            assertThatThrownBy(() -> Ledger.open(new LedgerPlace.OnServer(other, copies)))
                    .isInstanceOf(LedgerException.class);
            server.run("GRANT USAGE ON SCHEMA " + server.name() + " TO " + server.kept());
            assertThatThrownBy(() -> Ledger.open(new LedgerPlace.OnServer(other, copies)))
                    .isInstanceOf(LedgerException.class)
                    .hasMessageContaining("does not let this user");
        } finally {
            server.run("DROP OWNED BY " + server.kept() + "; DROP ROLE " + server.kept());
        }
    }

    /** The tables and rows of a ledger of the second schema, put on the server as they are. */
    private void second(Path file) throws SQLException {
        server.run("DROP SCHEMA IF EXISTS " + server.name() + " CASCADE");
        server.run("CREATE SCHEMA " + server.name());
        try (Connection from = DriverManager.getConnection("jdbc:sqlite:" + file);
                Connection to =
                        DriverManager.getConnection(server.url() + "&stringtype=unspecified");
                Statement ask = from.createStatement();
                Statement put = to.createStatement()) {
            List<String> tables = new ArrayList<>();
            try (ResultSet made =
                    ask.executeQuery(
                            "SELECT name, type, sql FROM sqlite_master WHERE sql <> '' ORDER BY rowid")) {
                while (made.next()) {
                    put.execute(
                            made.getString(3)
                                    .replaceAll("\\bSTRICT\\b", "")
                                    .replaceAll("\\bINTEGER\\b", "BIGINT")
                                    .replaceAll("\\bTEXT\\b", "TEXT COLLATE \"C\""));
                    if (made.getString(2).equals("table")) {
                        tables.add(made.getString(1));
                    }
                }
            }
            for (String table : tables) {
                try (ResultSet rows = ask.executeQuery("SELECT * FROM " + table)) {
                    int columns = rows.getMetaData().getColumnCount();
                    String marks = "?" + ", ?".repeat(columns - 1);
                    try (PreparedStatement insert =
                            to.prepareStatement(
                                    "INSERT INTO " + table + " VALUES (" + marks + ")")) {
                        while (rows.next()) {
                            for (int i = 1; i <= columns; i++) {
                                insert.setString(i, rows.getString(i));
                            }
                            insert.executeUpdate();
                        }
                    }
                }
            }
        }
    }

    private static List<String> everything(LedgerPlace of) {
        try (Ledger ledger = Ledger.open(of)) {
            ledger.verify();
            return Export.of(ledger).stream()
                    .flatMap(table -> table.rows().stream().map(row -> table.name() + row))
                    .toList();
        }
    }

    @Test
    void theServerJoinsTheCellsOfARowAsTheSealsDoAndLeavesNoneOut() {
        try (Ledger ledger = Ledger.open(place)) {
            Entries.enter(ledger, Entries.batch("one", Entries.job("A\u001f'\u00e9\\2")));
            ledger.verify();
            assertThat(ledger.records().rowDigests(1, 1).get(1L))
                    .isEqualTo(Seals.rows(ledger.records().newest()));
            server.run("ALTER TABLE withdrawn ALTER COLUMN reason DROP NOT NULL");
            server.run("INSERT INTO withdrawn VALUES (1, 'A-1', 1, NULL)");
            assertThatThrownBy(ledger::verify).hasMessageContaining("at \"one\"");
        }
    }

    @Test
    void oneOfTheSchemaBeforeIsLiftedAsAFileIs() throws IOException, SQLException {
        Path file = copies.resolve("paperbark.db");
        Files.copy(Path.of("src/test/resources/ledger/version-2/paperbark.db"), file);
        second(file);
        assertThat(server.ask("SELECT schema_version FROM office")).isEqualTo("2");
        assertThat(everything(place)).isEqualTo(everything(new LedgerPlace.InFile(file)));
        assertThat(server.ask("SELECT schema_version FROM office")).isEqualTo("4");
    }

    @Test
    void oneOfTheSchemaBeforeThatSomebodyChangedStaysAsItIs() throws IOException, SQLException {
        second(Path.of("src/test/resources/ledger/version-2/paperbark.db"));
        server.run("UPDATE claim SET certificates = 99 WHERE id = 1");
        assertThatThrownBy(() -> Ledger.open(place))
                .isInstanceOf(LedgerException.class)
                .hasMessageContaining("not as it was written");
        assertThat(server.ask("SELECT count(facts) FROM personal")).isEqualTo("5");
    }
}
