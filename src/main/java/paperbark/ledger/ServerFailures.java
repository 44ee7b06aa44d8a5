package paperbark.ledger;

import java.io.UncheckedIOException;
import java.sql.SQLException;
import java.util.Objects;

/**
 * What a failure of a PostgreSQL server means, by the five letters of its state. Nothing else of it
 * is shown: the server's and the driver's messages may hold values.
 */
final class ServerFailures {
    private final LedgerPlace.OnServer place;

    ServerFailures(LedgerPlace.OnServer place) {
        this.place = place;
    }

    /** What a failure means. */
    RuntimeException of(SQLException failure) {
        SQLException e = ofTheDriver(failure);
        String state = state(e);
        // Rejected, or a wrong user or password.
        if (state.equals("08004") || state.startsWith("28")) {
            return new LedgerException(
                    "The server " + place + " did not let this program in.",
                    "Name the user with ?user=NAME and put the password into the file .pgpass in your home"
                            + " folder (on Windows %APPDATA%\\postgresql\\pgpass.conf).",
                    e);
        }
        return isOfTheWorld(state)
                ? new UncheckedIOException(
                        new ServerAwayException(
                                "The ledger's server "
                                        + place
                                        + " cannot be reached, or cannot write (PostgreSQL "
                                        + state
                                        + ").",
                                e))
                : ofTheLedger(state, e);
    }

    /** What a failure at the very end of a transaction means. */
    RuntimeException ofCommit(SQLException failure) {
        SQLException e = ofTheDriver(failure);
        String state = state(e);
        // No answer at all, or one that completion is unknown.
        return state.isEmpty() || state.equals("40003") || isOfTheWorld(state)
                ? new CommitUnknown(
                        "The connection to "
                                + place
                                + " broke at the moment of taking in. The next run finds out whether it was.",
                        e)
                : of(e);
    }

    /** There is no ledger where one should be. */
    LedgerException missing(SQLException cause) {
        return new LedgerException(
                "There is no ledger at " + place + ".",
                "Correct the address or make a first one with ledger-new. One that was there before: "
                        + place.remedy(),
                cause);
    }

    /** Somebody else writes. */
    static LedgerBusyException busy(String who, Throwable cause) {
        return new LedgerBusyException(
                who + " is writing in the ledger.", "Wait until it has ended.", cause);
    }

    private RuntimeException ofTheLedger(String state, SQLException e) {
        return switch (state) {
            case "42P01", "42703", "3F000" -> missing(e);
            case "3D000" ->
                    new LedgerException(
                            "There is no database " + place + ".",
                            "Let whoever looks after the server make it, or correct the address.",
                            e);
            case "42501" ->
                    new LedgerException(
                            "The server " + place + " does not let this user write in the ledger.",
                            "Let whoever looks after the server give the user every right on its schema.",
                            e);
            // A lock waited for in vain, a transaction that has to be begun again, a timeout.
            case "55P03", "40001", "40P01", "57014" -> busy("Another program", e);
            default ->
                    new LedgerException(
                            "The ledger could not be read or written (PostgreSQL " + state + ").",
                            // What the server itself calls corrupted begins so.
                            state.startsWith("XX00") && !state.equals("XX000")
                                    ? place.remedy()
                                    : "Try again, then report this.",
                            e);
        };
    }

    /** No connection, no resources, shut down, a failing disk, or a server that only answers. */
    private static boolean isOfTheWorld(String state) {
        return state.startsWith("08")
                || state.startsWith("53")
                || state.startsWith("57P")
                || state.startsWith("58")
                || state.equals("25006");
    }

    /** Whatever ran the statement has wrapped the failure with the statement's values. */
    private static SQLException ofTheDriver(SQLException e) {
        return e.getNextException() == null ? e : e.getNextException();
    }

    private static String state(SQLException e) {
        return Objects.requireNonNullElse(e.getSQLState(), "");
    }
}
