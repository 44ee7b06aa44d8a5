package paperbark.ledger;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.sql.Connection;
import java.sql.SQLException;
import java.util.List;
import java.util.Set;
import java.util.concurrent.Future;
import java.util.function.Consumer;
import org.sqlite.NativeLibraryNotFoundException;
import org.sqlite.SQLiteConfig;
import paperbark.disk.OtherThread;

/** Makes and opens the file that a ledger lies in. */
final class LedgerFile implements Database {
    // "PBRK", so that no other program's database is taken for a ledger.
    private static final int APPLICATION = 0x5042524b;
    private static final int WAIT_MILLISECONDS = 5000;

    // The database's own numbers of errors; what goes beyond a byte says it more exactly.
    private static final int BASIC = 0xff;
    private static final int BUSY = 5;
    private static final int CORRUPT = 11;
    private static final int NOT_A_DATABASE = 26;
    // Permission, read-only, input or output, full, cannot be opened.
    private static final Set<Integer> DISK = Set.of(3, 8, 10, 13, 14);

    private final LedgerPlace.InFile place;
    private final Path file;

    LedgerFile(LedgerPlace.InFile place) {
        this.place = place;
        this.file = place.path();
    }

    @Override
    public void create(LedgerId office, Consumer<Sql> filling) {
        if (Files.exists(file)) {
            throw new LedgerException(
                    "There is a file " + file.getFileName() + " already.",
                    "Use it, or choose another name for a new ledger.");
        }
        try {
            Files.createFile(file);
            keepPrivate(file);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        try (Connection connection = connect()) {
            Sql sql = new Sql(connection, this);
            sql.whole(
                    () -> {
                        sql.run("PRAGMA application_id = " + APPLICATION);
                        tables(sql, office);
                        filling.accept(sql);
                        return null;
                    });
        } catch (SQLException e) {
            throw failed(e);
        }
    }

    @Override
    public void tables(Sql sql, LedgerId office) {
        sql.run("PRAGMA user_version = " + Schema.VERSION);
        Schema.forFile().forEach(sql::run);
        Schema.enter(office, sql);
    }

    /**
     * A missing or empty file is never taken for a new ledger. One of an older schema is brought to
     * this program's; as it was, it stays beside it.
     */
    @Override
    public Connection open() {
        try {
            if (!Files.isRegularFile(file) || Files.size(file) == 0) {
                throw new LedgerException(
                        "There is no ledger " + file + ", or it is empty.",
                        "In an office folder, ledger-rebuild makes it anew from the published batches; elsewhere"
                                + " bring back a copy, or make a first one with ledger-new.");
            }
            Connection connection = connect();
            try {
                Sql sql = new Sql(connection, this);
                int schema = check(sql);
                if (schema < Schema.VERSION) {
                    migrate(sql, schema);
                }
                return connection;
            } catch (RuntimeException e) {
                connection.close();
                throw e;
            }
        } catch (SQLException e) {
            throw failed(e);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private int check(Sql sql) {
        if (sql.number("PRAGMA application_id") != APPLICATION) {
            throw new LedgerException(
                    file.getFileName() + " is not a ledger of this program.",
                    "Name the right file.");
        }
        int schema = (int) sql.number("PRAGMA user_version");
        if (schema > Schema.VERSION) {
            throw new LedgerException(
                    "The ledger was written by a newer version of the program.",
                    "Install that version, or bring back a copy from before.");
        }
        return schema;
    }

    private void migrate(Sql sql, int schema) throws IOException {
        Path copy = file.resolveSibling(file.getFileName() + ".schema-" + schema);
        Files.deleteIfExists(copy);
        sql.run("VACUUM INTO ?", copy.toString());
        keepPrivate(copy);
        sql.whole(
                () -> {
                    // Another program may have done it since.
                    if (sql.number("PRAGMA user_version") == schema) {
                        new Migration(this, sql, schema).run();
                    }
                    return null;
                });
    }

    private Connection connect() throws SQLException {
        NativeLibrary.prefer();
        SQLiteConfig config = new SQLiteConfig();
        // One writer, and whatever was committed is on the disk when the call returns.
        config.setJournalMode(SQLiteConfig.JournalMode.DELETE);
        config.setPragma(SQLiteConfig.Pragma.SYNCHRONOUS, "EXTRA");
        config.enforceForeignKeys(true);
        config.setBusyTimeout(WAIT_MILLISECONDS);
        Connection connection = config.createConnection("jdbc:sqlite:" + file);
        Sql sql = new Sql(connection, this);
        sql.run("PRAGMA fullfsync = ON");
        sql.run("PRAGMA trusted_schema = OFF");
        // What was forgotten must not stay readable in the file.
        sql.run("PRAGMA secure_delete = ON");
        return connection;
    }

    static void keepPrivate(Path file) throws IOException {
        if (file.getFileSystem().supportedFileAttributeViews().contains("posix")) {
            Files.setPosixFilePermissions(file, PosixFilePermissions.fromString("rw-------"));
        }
    }

    @Override
    public void begin(Sql sql) {
        sql.run("BEGIN IMMEDIATE");
    }

    /** Neither the pages nor the rows wait for the other; each has a processor of its own. */
    @Override
    public void prove(Sql sql, Runnable rows) {
        Future<Void> pages = OtherThread.begin("pages of the ledger", this::pages);
        try {
            rows.run();
        } finally {
            try {
                OtherThread.result(pages);
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
        }
    }

    private Void pages() {
        try (Connection connection = connect()) {
            Sql sql = new Sql(connection, this);
            String pages = sql.first("PRAGMA integrity_check", r -> r.getString(1)).orElse("");
            if (!pages.equals("ok")) {
                throw new LedgerException(
                        "The ledger's file is damaged (" + pages + ").", remedy());
            }
            // The database keeps each statement as it was written.
            List<String> made =
                    sql.list(
                            "SELECT sql FROM sqlite_master WHERE sql IS NOT NULL ORDER BY sql",
                            r -> r.getString(1));
            if (!made.equals(Schema.forFile().stream().sorted().toList())) {
                throw sql.changed("its tables and indices");
            }
            return null;
        } catch (SQLException e) {
            throw failed(e);
        }
    }

    @Override
    public void copy(Ledger ledger, Sql sql, Path copy) {
        sql.run("VACUUM INTO ?", copy.toString());
    }

    @Override
    public String remedy() {
        return place.remedy();
    }

    @Override
    public RuntimeException failed(SQLException e) {
        SQLException cause = e.getNextException() == null ? e : e.getNextException();
        String fact = "The ledger could not be read or written (" + cause.getMessage() + ").";
        int error = e.getErrorCode() & BASIC;
        if (DISK.contains(error)) {
            return new UncheckedIOException(new IOException(fact, cause));
        }
        if (error == BUSY) {
            return new LedgerBusyException(
                    "Another program is writing in the ledger.", "Wait until it has ended.", cause);
        }
        if (cause.getCause() instanceof NativeLibraryNotFoundException) {
            return new UncheckedIOException(
                    new IOException(
                            "No space left, or no permission, in the folder for temporary files.",
                            cause));
        }
        boolean damaged = error == CORRUPT || error == NOT_A_DATABASE;
        return new LedgerException(
                fact, damaged ? remedy() : "Try again, then report this.", cause);
    }

    @Override
    public RuntimeException failedToCommit(SQLException e) {
        return failed(e);
    }
}
