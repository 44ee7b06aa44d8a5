package paperbark.settle;

import java.nio.file.Path;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Tag;
import paperbark.ledger.LedgerPlace;
import paperbark.outside.Postgres;

/** Settling on a PostgreSQL server. */
@Tag("outside")
class SettleOnServerTest extends SettleTest {
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
}
