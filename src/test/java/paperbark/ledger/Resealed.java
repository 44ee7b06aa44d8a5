package paperbark.ledger;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;

/** Seals a ledger anew with the program's own code, as somebody could who changed it. */
public final class Resealed {
    private Resealed() {}

    /** Every entry of a ledger in a file. */
    public static void ledger(Path file) throws SQLException {
        Database database = Database.of(new LedgerPlace.InFile(file));
        try (Connection connection = database.open()) {
            Sql sql = new Sql(connection, database);
            for (long seq = 1; seq <= sql.number("SELECT max(seq) FROM entry"); seq++) {
                new Chain(sql).seal(seq);
            }
        }
    }
}
