package paperbark.ledger;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.sql.Connection;
import java.sql.SQLException;
import java.time.Instant;
import java.util.Arrays;
import java.util.UUID;
import org.sqlite.SQLiteConfig;

/** Makes and opens the file that a ledger lies in. */
final class LedgerFile {
    /** Schema that this program writes. */
    static final int SCHEMA = 2;

    /** What to do with a ledger that is missing or not as it was written. */
    static final String REMEDY =
            "In an office folder, ledger-rebuild makes it anew from the published batches; elsewhere"
                    + " bring back a copy. Do not delete the damaged file.";

    // "PBRK", so that no other program's database is taken for a ledger.
    private static final int APPLICATION = 0x5042524b;
    private static final int WAIT_MILLISECONDS = 5000;

    private LedgerFile() {}

    /**
     * Makes a new ledger.
     *
     * @throws LedgerException when something of that name is there already
     */
    static void create(Path file, Instant at) {
        create(file, new LedgerId(UUID.randomUUID().toString(), at.toString()));
    }

    /**
     * Makes a new ledger that goes by a given identity, so that another's seals fit.
     *
     * @throws LedgerException when something of that name is there already
     */
    static void create(Path file, LedgerId office) {
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
        try (Connection connection = connect(file)) {
            Sql sql = new Sql(connection);
            sql.whole(
                    () -> {
                        sql.run("PRAGMA application_id = " + APPLICATION);
                        tables(sql, office);
                        return null;
                    });
        } catch (SQLException e) {
            throw Sql.failed(e);
        }
    }

    /** Makes the tables of this program's schema, within a transaction that the caller holds. */
    static void tables(Sql sql, LedgerId office) {
        sql.run("PRAGMA user_version = " + SCHEMA);
        statements().forEach(sql::run);
        sql.run("INSERT INTO office VALUES (?, ?, ?)", office.id(), office.madeAt(), SCHEMA);
    }

    /**
     * Opens a ledger that is there, and brings one of an older schema to this program's; a copy of
     * it as it was is kept beside it. A missing or empty file is never taken for a new ledger.
     *
     * @throws LedgerException when it is missing, not a ledger, damaged or of a newer program
     */
    static Connection open(Path file) {
        try {
            if (!Files.isRegularFile(file) || Files.size(file) == 0) {
                throw new LedgerException(
                        "There is no ledger " + file + ", or it is empty.",
                        "In an office folder, ledger-rebuild makes it anew from the published batches; elsewhere"
                                + " bring back a copy, or make a first one with ledger-new.");
            }
            Connection connection = connect(file);
            try {
                Sql sql = new Sql(connection);
                long schema = check(sql, file);
                if (schema < SCHEMA) {
                    migrate(sql, file, (int) schema);
                }
                return connection;
            } catch (RuntimeException e) {
                connection.close();
                throw e;
            }
        } catch (SQLException e) {
            throw Sql.failed(e);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static long check(Sql sql, Path file) {
        if (sql.number("PRAGMA application_id") != APPLICATION) {
            throw new LedgerException(
                    file.getFileName() + " is not a ledger of this program.",
                    "Name the right file.");
        }
        long schema = sql.number("PRAGMA user_version");
        if (schema > SCHEMA) {
            throw new LedgerException(
                    "The ledger was written by a newer version of the program.",
                    "Install that version, or bring back a copy from before.");
        }
        return schema;
    }

    private static void migrate(Sql sql, Path file, int schema) throws IOException {
        Path copy = file.resolveSibling(file.getFileName() + ".schema-" + schema);
        Files.deleteIfExists(copy);
        sql.run("VACUUM INTO ?", copy.toString());
        keepPrivate(copy);
        sql.whole(
                () -> {
                    // Another program may have done it since.
                    if (sql.number("PRAGMA user_version") == schema) {
                        new Migration(sql, schema).run();
                    }
                    return null;
                });
    }

    private static Connection connect(Path file) throws SQLException {
        SQLiteConfig config = new SQLiteConfig();
        // One writer, and whatever was committed is on the disk when the call returns.
        config.setJournalMode(SQLiteConfig.JournalMode.DELETE);
        config.setPragma(SQLiteConfig.Pragma.SYNCHRONOUS, "EXTRA");
        config.enforceForeignKeys(true);
        config.setBusyTimeout(WAIT_MILLISECONDS);
        Connection connection = config.createConnection("jdbc:sqlite:" + file.toAbsolutePath());
        Sql sql = new Sql(connection);
        sql.run("PRAGMA fullfsync = ON");
        sql.run("PRAGMA trusted_schema = OFF");
        // What was forgotten must not stay readable in the file.
        sql.run("PRAGMA secure_delete = ON");
        return connection;
    }

    private static void keepPrivate(Path file) throws IOException {
        if (file.getFileSystem().supportedFileAttributeViews().contains("posix")) {
            Files.setPosixFilePermissions(file, PosixFilePermissions.fromString("rw-------"));
        }
    }

    private static Iterable<String> statements() {
        String name = "/ledger/version-" + SCHEMA + ".sql";
        try (InputStream in = LedgerFile.class.getResourceAsStream(name)) {
            String all = new String(in.readAllBytes(), StandardCharsets.UTF_8);
            return Arrays.stream(all.replaceAll("(?m)^--.*$", "").split(";"))
                    .map(String::strip)
                    .filter(s -> !s.isEmpty())
                    .toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
