package paperbark.ledger;

import static org.assertj.core.api.Assertions.assertThat;

import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.Proxy;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.time.Instant;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** How people are told of a batch, where one office has the ledger and where several share it. */
class BatchWordsTest {
    @TempDir private Path folder;

    /** A ledger in a file that says of itself that offices share it. */
    private static Database shared(LedgerFile file) {
        return (Database)
                Proxy.newProxyInstance(
                        Database.class.getClassLoader(),
                        new Class<?>[] {Database.class},
                        (self, method, words) -> {
                            if (method.getName().equals("isShared")) {
                                return true;
                            }
                            try {
                                return method.invoke(file, words);
                            } catch (InvocationTargetException e) {
                                throw e.getCause();
                            }
                        });
    }

    @Test
    void theOfficeIsNamedWhereSeveralShareTheLedgerAndItsNameIsKnown() throws SQLException {
        Path path = folder.resolve("paperbark.db");
        Entries.create(path, Instant.EPOCH);
        try (Ledger ledger = Ledger.open(path)) {
            Entries.enter(ledger, Entries.batchAt("7f3a north", Entries.job("SB-1")));
        }
        LedgerFile file = new LedgerFile(new LedgerPlace.InFile(path));
        try (Connection connection = file.open()) {
            BatchWords alone = new BatchWords(new Sql(connection, file));
            assertThat(alone.of("one")).isEqualTo("one");
            assertThat(alone.of("one", "7f3a north")).isEqualTo("one");

            BatchWords words = new BatchWords(new Sql(connection, shared(file)));
            assertThat(words.of("one")).isEqualTo("one of office \"north\"");
            assertThat(words.of("one", "7f3a south side"))
                    .isEqualTo("one of office \"south side\"");
            assertThat(words.of("one", "7f3a")).isEqualTo("one");
            assertThat(words.of("one", " north")).isEqualTo("one");
            assertThat(words.of("two")).isEqualTo("two");
        }
    }
}
