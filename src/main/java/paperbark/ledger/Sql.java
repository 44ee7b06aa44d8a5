package paperbark.ledger;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.ResultSetMetaData;
import java.sql.SQLException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.apache.commons.dbutils.QueryRunner;

/** Statements on one connection; whatever fails is told as the ledger's failure. */
final class Sql {
    private final Connection connection;
    private final Database database;
    // The driver cannot say of which type a parameter is before the statement has run.
    private final QueryRunner runner = new QueryRunner(true);

    Sql(Connection connection, Database database) {
        this.connection = connection;
        this.database = database;
    }

    /** Turns a row into something. */
    interface Rows<T> {
        T read(ResultSet row) throws SQLException;
    }

    /** Does something with a row. */
    interface Each {
        void read(ResultSet row) throws SQLException;
    }

    /** Work that a transaction does whole or not at all. */
    interface Work<T> {
        T run();
    }

    <T> List<T> list(String query, Rows<T> rows, Object... parameters) {
        List<T> all = new ArrayList<>();
        each(query, row -> all.add(rows.read(row)), parameters);
        return all;
    }

    /** Reads row by row; what comes of each is the reader's own business. */
    void each(String query, Each rows, Object... parameters) {
        try {
            runner.query(
                    connection,
                    query,
                    result -> {
                        while (result.next()) {
                            rows.read(result);
                        }
                        return null;
                    },
                    parameters);
        } catch (SQLException e) {
            throw database.failed(e);
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
            throw database.failed(e);
        }
    }

    /** Runs the statement once for each list of parameters; a server is not waited for at each. */
    void runAll(String statement, List<Object[]> parameters) {
        if (!parameters.isEmpty()) {
            try {
                runner.batch(connection, statement, parameters.toArray(Object[][]::new));
            } catch (SQLException e) {
                throw database.failed(e);
            }
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
        try {
            database.begin(this);
            T result = work.run();
            if (lasting) {
                commit();
            } else {
                run("ROLLBACK");
            }
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

    private void commit() {
        try {
            runner.update(connection, "COMMIT");
        } catch (SQLException e) {
            throw database.failedToCommit(e);
        }
    }

    /** The columns of a table, in order. */
    List<String> columns(String table) {
        try {
            return runner.query(
                    connection,
                    "SELECT * FROM " + table + " WHERE 1 = 0",
                    result -> {
                        ResultSetMetaData about = result.getMetaData();
                        List<String> names = new ArrayList<>();
                        for (int i = 1; i <= about.getColumnCount(); i++) {
                            names.add(about.getColumnName(i));
                        }
                        return names;
                    });
        } catch (SQLException e) {
            throw database.failed(e);
        }
    }

    /** Whether several offices may have the ledger together. */
    boolean isShared() {
        return database.isShared();
    }

    /** What to do with a ledger that is not as it was written. */
    String remedy() {
        return database.remedy();
    }

    /** The failure of a ledger that is not as it was written. */
    LedgerException changed(String where) {
        return new LedgerException(
                "The ledger is not as it was written, at \"" + where + "\".", remedy());
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
}
