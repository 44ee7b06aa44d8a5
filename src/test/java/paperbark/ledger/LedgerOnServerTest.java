package paperbark.ledger;

import java.nio.file.Path;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Tag;
import paperbark.outside.Postgres;

/** The same promises on a PostgreSQL server, and what only a server can do. */
@Tag("outside")
class LedgerOnServerTest extends LedgerTest {
    private Postgres server;

    @Override
    LedgerPlace place(Path folder) {
        server = Postgres.schema();
        return new LedgerPlace.OnServer(server.url(), folder);
    }

    @AfterEach
    void tidy() {
        if (server != null) {
            server.close();
        }
    }

    @Override
    void change(String statement) {
        server.run(statement);
    }
}
