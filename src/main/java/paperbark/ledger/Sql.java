package paperbark.ledger;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.apache.commons.dbutils.QueryRunner;
import paperbark.value.Money;

/** Statements on one connection; whatever fails is told as the ledger's failure. */
final class Sql {
    // The database's own numbers of errors; what goes beyond a byte says it more exactly.
    private static final int BASIC = 0xff;
    private static final int BUSY = 5;
    private static final int CORRUPT = 11;
    private static final int NOT_A_DATABASE = 26;
    // Permission, read-only, input or output, full, cannot be opened.
    private static final Set<Integer> DISK = Set.of(3, 8, 10, 13, 14);

    private final Connection connection;
    // The driver cannot say of which type a parameter is before the statement has run.
    private final QueryRunner runner = new QueryRunner(true);

    Sql(Connection connection) {
        this.connection = connection;
    }

    /** Turns a row into something. */
    interface Rows<T> {
        T read(ResultSet row) throws SQLException;
    }

    /** Work that a transaction does whole or not at all. */
    interface Work<T> {
        T run();
    }

    <T> List<T> list(String query, Rows<T> rows, Object... parameters) {
        try {
            return runner.query(
                    connection,
                    query,
                    result -> {
                        List<T> all = new ArrayList<>();
                        while (result.next()) {
                            all.add(rows.read(result));
                        }
                        return all;
                    },
                    parameters);
        } catch (SQLException e) {
            throw failed(e);
        }
    }

    <T> Optional<T> first(String query, Rows<T> rows, Object... parameters) {
        return list(query, rows, parameters).stream().findFirst();
    }

    long number(String query, Object... parameters) {
        return first(query, row -> row.getLong(1), parameters).orElse(0L);
    }

    void run(String statement, Object... parameters) {
        try {
            runner.update(connection, statement, parameters);
        } catch (SQLException e) {
            throw failed(e);
        }
    }

    /** Runs the work in one transaction; any failure leaves everything as it was. */
    <T> T whole(Work<T> work) {
        return transaction(work, true);
    }

    /** Runs the work and leaves everything as it was. */
    <T> T rehearse(Work<T> work) {
        return transaction(work, false);
    }

    // The driver's own commit begins the next transaction at once; should that fail, a batch that
    // is in the ledger would be taken for one that is not.
    private <T> T transaction(Work<T> work, boolean lasting) {
        run("BEGIN IMMEDIATE");
        try {
            T result = work.run();
            run(lasting ? "COMMIT" : "ROLLBACK");
            return result;
        } catch (RuntimeException | Error e) {
            try {
                run("ROLLBACK");
            } catch (RuntimeException over) {
                // A full disk has ended the transaction already; what filled it is what counts.
                e.addSuppressed(over);
            }
            throw e;
        }
    }

    static Money money(ResultSet row, String column) throws SQLException {
        return Money.ofCents(row.getLong(column));
    }

    static Optional<LocalDate> day(ResultSet row, String column) throws SQLException {
        String text = row.getString(column);
        return text == null || text.isEmpty()
                ? Optional.empty()
                : Optional.of(LocalDate.parse(text));
    }

    static String text(Optional<LocalDate> day) {
        return day.map(LocalDate::toString).orElse("");
    }

    /**
     * What a failure of the database means: the disk's, which passes, or the ledger's own. The
     * statement that failed and its values, which are people's, stay out of the message.
     */
    static RuntimeException failed(SQLException e) {
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
        boolean damaged = error == CORRUPT || error == NOT_A_DATABASE;
        return new LedgerException(
                fact, damaged ? LedgerFile.REMEDY : "Try again, then report this.", cause);
    }
}
