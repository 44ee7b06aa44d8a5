package paperbark.ledger;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.util.function.Consumer;

/** What differs between the databases that a ledger may lie in; the statements are the same. */
interface Database {
    /** The database of a ledger. */
    static Database of(LedgerPlace place) {
        return place instanceof LedgerPlace.OnServer server
                ? new LedgerServer(server)
                : new LedgerFile((LedgerPlace.InFile) place);
    }

    /**
     * Makes a new ledger, whole or not at all.
     *
     * @param filling what is entered at once
     * @throws LedgerException when there is one already
     */
    void create(LedgerId office, Consumer<Sql> filling);

    /**
     * Opens a ledger that is there.
     *
     * @throws LedgerException when it is missing, not a ledger, damaged or of a newer program
     */
    Connection open();

    /** Makes the tables of this program's schema, within a transaction that the caller holds. */
    void tables(Sql sql, LedgerId office);

    /** Begins a transaction in which nobody else writes. */
    void begin(Sql sql);

    /**
     * The database's own check of itself, where it has one, and the proof of what lies in it. What
     * the check finds is told first.
     *
     * @param rows proves the rows, by these statements
     * @throws LedgerException when it is damaged
     */
    void prove(Sql sql, Runnable rows);

    /** Copies the ledger, whole, into a file that must not exist yet. */
    void copy(Ledger ledger, Sql sql, Path file);

    /** Whether several offices may have it together. */
    default boolean isShared() {
        return false;
    }

    /** What to do with a ledger that is missing or not as it was written. */
    String remedy();

    /**
     * What a failure means: the world's, which passes, or the ledger's own. The statement that
     * failed and its values, which are people's, stay out of the message.
     */
    RuntimeException failed(SQLException e);

    /** The same for a failure at the very end of a transaction. */
    RuntimeException failedToCommit(SQLException e);
}
