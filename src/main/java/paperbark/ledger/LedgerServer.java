package paperbark.ledger;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Properties;
import java.util.Set;
import java.util.function.Consumer;

/** Makes and opens a ledger on a PostgreSQL server. */
final class LedgerServer implements Database {
    // A batch holds the others up for as long as its rows take to travel.
    private static final int WAIT_MILLISECONDS = 20_000;
    private static final int CONNECT_SECONDS = 10;
    private static final int ANSWER_SECONDS = 120;
    private static final String MEMORY = "32MB";
    // Marks our locks among those that other programs ask this server for.
    private static final int LOCK = 0x5042524b;
    private static final String APPLICATION = "paperbark process ";
    // The server's own limit.
    private static final int LONGEST_NAME = 63;

    // The server's states for a table or schema that is there already; the last one when two make
    // it at once.
    private static final Set<String> EXISTS = Set.of("42P07", "42710", "42P06", "23505");

    private final LedgerPlace.OnServer place;
    private final ServerFailures failures;

    LedgerServer(LedgerPlace.OnServer place) {
        this.place = place;
        this.failures = new ServerFailures(place);
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
                        count(sql);
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
            tables(sql, office);
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
    }

    /** The server plans questions by what it last counted, and counts by itself only in a while. */
    private void count(Sql sql) {
        sql.list(
                        "SELECT quote_ident(tablename) FROM pg_tables WHERE schemaname = current_schema()",
                        r -> r.getString(1))
                .forEach(table -> sql.run("ANALYZE " + table));
    }

    @Override
    public void tables(Sql sql, LedgerId office) {
        Schema.forServer().forEach(sql::run);
        Schema.enter(office, sql);
    }

    /** One of an older schema is brought to this program's, whole or not at all. */
    @Override
    public Connection open() {
        try {
            Connection connection = connect();
            try {
                Sql sql = new Sql(connection, this);
                int schema = check(sql);
                if (schema < Schema.VERSION) {
                    sql.whole(() -> lift(sql));
                }
                return connection;
            } catch (RuntimeException e) {
                connection.close();
                throw e;
            }
        } catch (SQLException e) {
            throw failed(e);
        }
    }

    private Void lift(Sql sql) {
        // Another office may have done it since.
        int schema = check(sql);
        if (schema < Schema.VERSION) {
            new Migration(this, sql, schema).run();
        }
        return null;
    }

    private int check(Sql sql) {
        int schema = (int) sql.number("SELECT max(schema_version) FROM office");
        if (schema == 0) {
            throw failures.missing(null);
        }
        if (schema > Schema.VERSION) {
            throw new LedgerException(
                    "The ledger was written by a newer version of the program.",
                    "Install that version in this office too.");
        }
        return schema;
    }

    private Connection connect() throws SQLException {
        Properties how = new Properties();
        how.setProperty("currentSchema", ServerUrl.schema(place.url()));
        how.setProperty("ApplicationName", application());
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
        // Compiling a question takes the server longer than answering it, and 100,000 claims are
        // sorted in memory; a server that does not know the setting has nothing to switch off.
        new Sql(connection, this)
                .list(
                        "SELECT set_config(name, CASE name WHEN 'jit' THEN 'off' ELSE ? END, false)"
                                + " FROM pg_settings WHERE name IN ('jit', 'work_mem')",
                        r -> r.getString(1),
                        MEMORY);
        return connection;
    }

    /** What the server tells others of this process: the program, its number, the office. */
    private String application() {
        String said =
                APPLICATION
                        + ProcessHandle.current().pid()
                        + " of office "
                        + place.folder().getFileName();
        // The server cuts what is longer, and shows question marks for other letters.
        return said.replaceAll("[^ -~]", "?").substring(0, Math.min(LONGEST_NAME, said.length()));
    }

    @Override
    public void begin(Sql sql) {
        sql.run("BEGIN");
        try {
            sql.list(
                    "SELECT pg_advisory_xact_lock(?, hashtext(?))",
                    r -> "",
                    LOCK,
                    ServerUrl.schema(place.url()));
        } catch (LedgerBusyException busy) {
            sql.run("ROLLBACK");
            throw holder(sql).map(who -> ServerFailures.busy(who, busy)).orElse(busy);
        }
    }

    /** Which process writes, where its own user may see that. */
    private Optional<String> holder(Sql sql) {
        return sql.first(
                        "SELECT a.application_name FROM pg_locks l JOIN pg_stat_activity a ON a.pid = l.pid"
                                + " WHERE l.locktype = 'advisory' AND l.granted AND l.objsubid = 2"
                                + " AND l.classid::bigint = ?"
                                + " AND l.objid::bigint = hashtext(?)::bigint & 4294967295",
                        r -> Objects.requireNonNullElse(r.getString(1), ""),
                        LOCK,
                        ServerUrl.schema(place.url()))
                .filter(name -> name.startsWith(APPLICATION));
    }

    /**
     * Torn pages are the server's business; what it reads back is proved by the seals. What keeps a
     * claim from being there twice has to be in force.
     */
    @Override
    public void prove(Sql sql, Runnable rows) {
        String schema = ServerUrl.schema(place.url());
        List<String> unique =
                sql.list(
                        "SELECT c.relname FROM pg_index i JOIN pg_class c ON c.oid = i.indexrelid"
                                + " JOIN pg_namespace n ON n.oid = c.relnamespace"
                                + " WHERE n.nspname = ? AND i.indisunique AND i.indisvalid"
                                + " AND i.indpred IS NOT NULL",
                        r -> r.getString(1),
                        schema);
        long keys =
                sql.number(
                        "SELECT count(*) FROM pg_constraint c JOIN pg_namespace n"
                                + " ON n.oid = c.connamespace WHERE n.nspname = ?"
                                + " AND c.contype IN ('p', 'u')",
                        schema);
        if (!unique.containsAll(Schema.uniqueIndices()) || keys < Schema.keys()) {
            throw sql.changed("its tables and indices");
        }
        rows.run();
    }

    @Override
    public void copy(Ledger ledger, Sql sql, Path file) {
        ledger.copyWholeTo(new LedgerPlace.InFile(file));
    }

    @Override
    public boolean isShared() {
        return true;
    }

    @Override
    public String remedy() {
        return place.remedy();
    }

    @Override
    public RuntimeException failed(SQLException e) {
        return failures.of(e);
    }

    @Override
    public RuntimeException failedToCommit(SQLException e) {
        return failures.ofCommit(e);
    }
}
