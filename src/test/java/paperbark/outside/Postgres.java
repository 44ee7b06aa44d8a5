package paperbark.outside;

import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.UUID;
import org.junit.jupiter.api.Assumptions;

/**
 * A schema of a test's own on the PostgreSQL server that {@code .ci/with-postgres} starts. Without
 * one the test is skipped with a message, unless the environment says {@code CI=true}.
 *
 * @param url its address, as people would name it
 */
public record Postgres(String url) implements AutoCloseable {
    /** Names the server in the environment. */
    public static final String SERVER = "PAPERBARK_TEST_POSTGRES";

    /** A name that no other test has; the schema itself is still to be made. */
    public static Postgres schema() {
        String server = System.getenv(SERVER);
        if (server == null && "true".equals(System.getenv("CI"))) {
            throw new AssertionError(SERVER + " names no PostgreSQL; one is needed in CI");
        }
        Assumptions.assumeTrue(
                server != null,
                SERVER + " names no PostgreSQL; run the tests through .ci/with-postgres");
        String name = "t" + UUID.randomUUID().toString().replace("-", "");
        return new Postgres(server + "&currentSchema=" + name);
    }

    /** The name of the schema. */
    public String name() {
        return url.substring(url.lastIndexOf('=') + 1);
    }

    /** A name for what the test keeps beside it. */
    public String kept() {
        return name() + "_kept";
    }

    /** Runs a statement behind the program's back. */
    public void run(String statement) {
        try (Connection connection = DriverManager.getConnection(url);
                Statement run = connection.createStatement()) {
            run.execute(statement);
        } catch (SQLException e) {
            throw new IllegalStateException(statement, e);
        }
    }

    /** Asks for one value behind the program's back. */
    public String ask(String query) {
        try (Connection connection = DriverManager.getConnection(url);
                Statement run = connection.createStatement();
                var rows = run.executeQuery(query)) {
            rows.next();
            return rows.getString(1);
        } catch (SQLException e) {
            throw new IllegalStateException(query, e);
        }
    }

    @Override
    public void close() {
        run("DROP SCHEMA IF EXISTS " + name() + ", " + kept() + " CASCADE");
    }
}
