package paperbark.ledger;

import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.util.Objects;
import java.util.Properties;
import java.util.Set;
import java.util.function.Consumer;

/** Makes and opens a ledger on a PostgreSQL server. */
final class LedgerServer implements Database {
    // A batch holds the others up for as long as its rows take to travel.
    private static final int WAIT_MILLISECONDS = 20_000;
    private static final int CONNECT_SECONDS = 10;
    private static final int ANSWER_SECONDS = 120;
    // Marks our locks among those that other programs ask this server for.
    private static final int LOCK = 0x5042524b;

    // What the server's own five-letter states mean; the driver's messages may hold values.
    private static final Set<String> EXISTS = Set.of("42P07", "42710", "42P06", "23505");
    private static final Set<String> NO_LEDGER = Set.of("42P01", "42703", "3F000");
    private static final Set<String> BUSY = Set.of("55P03", "40001", "40P01", "57014");
    private static final Set<String> DAMAGED = Set.of("XX001", "XX002");
    private static final String NO_DATABASE = "3D000";
    private static final String REJECTED = "08004";
    private static final String NO_ANSWER = "40003";
    private static final String READ_ONLY = "25006";
    private static final String NO_RIGHT = "42501";

    private final LedgerPlace.OnServer place;

    LedgerServer(LedgerPlace.OnServer place) {
        this.place = place;
    }

    @Override
    public void create(LedgerId office, Consumer<Sql> filling) {
        try (Connection connection = connect()) {
            Sql sql = new Sql(connection, this);
            String encoding = sql.first("SHOW server_encoding", r -> r.getString(1)).orElse("");
            if (!encoding.equals("UTF8")) {
                throw new LedgerException(
                        "The database " + place + " cannot hold every letter (" + encoding + ").",
                        "Let whoever looks after the server make one with the encoding UTF8.");
            }
            sql.whole(
                    () -> {
                        make(sql, office);
                        filling.accept(sql);
                        return null;
                    });
        } catch (SQLException e) {
            throw failed(e);
        }
    }

    private void make(Sql sql, LedgerId office) {
        String schema = ServerUrl.schema(place.url());
        if (sql.number("SELECT count(*) FROM pg_namespace WHERE nspname = ?", schema) == 0) {
            sql.run("CREATE SCHEMA " + schema);
        }
        try {
            Schema.forServer().forEach(sql::run);
        } catch (LedgerException e) {
            if (e.getCause() instanceof SQLException sqlState
                    && EXISTS.contains(sqlState.getSQLState())) {
                throw new LedgerException(
                        "There is a ledger, or a table named like one of its tables, at "
                                + place
                                + " already.",
                        "Use it, or name another schema with currentSchema=NAME for a new ledger.");
            }
            throw e;
        }
        sql.run(
                "INSERT INTO office VALUES (?, ?, ?)",
                office.id(),
                office.madeAt(),
                Schema.VERSION);
    }

    @Override
    public Connection open() {
        try {
            Connection connection = connect();
            try {
                check(new Sql(connection, this));
                return connection;
            } catch (RuntimeException e) {
                connection.close();
                throw e;
            }
        } catch (SQLException e) {
            throw failed(e);
        }
    }

    private void check(Sql sql) {
        long schema = sql.number("SELECT max(schema_version) FROM office");
        if (schema == 0) {
            throw missing(null);
        }
        if (schema > Schema.VERSION) {
            throw new LedgerException(
                    "The ledger was written by a newer version of the program.",
                    "Install that version in this office too.");
        }
    }

    private Connection connect() throws SQLException {
        Properties how = new Properties();
        how.setProperty("currentSchema", ServerUrl.schema(place.url()));
        how.setProperty("ApplicationName", "paperbark");
        how.setProperty("connectTimeout", String.valueOf(CONNECT_SECONDS));
        how.setProperty("socketTimeout", String.valueOf(ANSWER_SECONDS));
        how.setProperty("tcpKeepAlive", "true");
        // The server decides what a text stands for, as a file does.
        how.setProperty("stringtype", "unspecified");
        how.setProperty("logServerErrorDetail", "false");
        Connection connection = DriverManager.getConnection(place.url(), how);
        // Whatever was committed is on the server's disk when the call returns.
        new Sql(connection, this)
                .list(
                        "SELECT set_config('lock_timeout', ?, false),"
                                + " CASE WHEN current_setting('synchronous_commit') = 'off'"
                                + " THEN set_config('synchronous_commit', 'on', false) END",
                        r -> r.getString(1),
                        String.valueOf(WAIT_MILLISECONDS));
        return connection;
    }

    @Override
    public void begin(Sql sql) {
        sql.run("BEGIN");
        sql.list(
                "SELECT pg_advisory_xact_lock(?, hashtext(?))",
                r -> "",
                LOCK,
                ServerUrl.schema(place.url()));
    }

    /** Torn pages are the server's business; what it reads back is proved by the seals. */
    @Override
    public void prove(Sql sql) {}

    @Override
    public void copy(Ledger ledger, Sql sql, Path file) {
        Ledger.rebuild(new LedgerPlace.InFile(file), ledger.id(), ledger.records());
    }

    @Override
    public String remedy() {
        return place.remedy();
    }

    @Override
    public RuntimeException failed(SQLException failure) {
        SQLException e = ofTheDriver(failure);
        String state = Objects.requireNonNullElse(e.getSQLState(), "");
        if (state.equals(REJECTED) || state.startsWith("28")) {
            return new LedgerException(
                    "The server " + place + " did not let this program in.",
                    "Name the user with ?user=NAME and put the password into the file .pgpass in your home"
                            + " folder (on Windows %APPDATA%\\postgresql\\pgpass.conf).",
                    e);
        }
        if (isOfTheWorld(state)) {
            return new UncheckedIOException(
                    new ServerAwayException(
                            "The ledger's server "
                                    + place
                                    + " cannot be reached, or cannot write (PostgreSQL "
                                    + state
                                    + ").",
                            e));
        }
        if (BUSY.contains(state)) {
            return new LedgerBusyException(
                    "Another program is writing in the ledger.", "Wait until it has ended.", e);
        }
        if (NO_LEDGER.contains(state)) {
            return missing(e);
        }
        if (state.equals(NO_DATABASE)) {
            return new LedgerException(
                    "There is no database " + place + ".",
                    "Let whoever looks after the server make it, or correct the address.",
                    e);
        }
        if (state.equals(NO_RIGHT)) {
            return new LedgerException(
                    "The server " + place + " does not let this user write in the ledger.",
                    "Let whoever looks after the server give the user every right on its schema.",
                    e);
        }
        return new LedgerException(
                "The ledger could not be read or written (PostgreSQL " + state + ").",
                DAMAGED.contains(state) ? remedy() : "Try again, then report this.",
                e);
    }

    @Override
    public RuntimeException failedToCommit(SQLException failure) {
        SQLException e = ofTheDriver(failure);
        String state = Objects.requireNonNullElse(e.getSQLState(), "");
        return state.isEmpty() || state.equals(NO_ANSWER) || isOfTheWorld(state)
                ? new CommitUnknown(
                        "The connection to "
                                + place
                                + " broke at the moment of taking in. The next run finds out whether it was.",
                        e)
                : failed(e);
    }

    /** Whatever ran the statement has wrapped the failure with the statement's values. */
    private static SQLException ofTheDriver(SQLException e) {
        return e.getNextException() == null ? e : e.getNextException();
    }

    /** No connection, no resources, shut down, a failing disk, or a server that only answers. */
    private static boolean isOfTheWorld(String state) {
        return state.startsWith("08")
                || state.startsWith("53")
                || state.startsWith("57P")
                || state.startsWith("58")
                || state.equals(READ_ONLY);
    }

    private LedgerException missing(SQLException cause) {
        return new LedgerException(
                "There is no ledger at " + place + ".",
                "Correct the address or make a first one with ledger-new. One that was there before: "
                        + remedy(),
                cause);
    }
}
