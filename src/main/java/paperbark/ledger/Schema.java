package paperbark.ledger;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;

/** The tables of a ledger, written once for both databases. */
final class Schema {
    /** Version that this program writes. */
    static final int VERSION = 4;

    private Schema() {}

    /** The statements that make the tables in a file. */
    static List<String> forFile() {
        String name = "/ledger/version-" + VERSION + ".sql";
        try (InputStream in = Schema.class.getResourceAsStream(name)) {
            String all = new String(in.readAllBytes(), StandardCharsets.UTF_8);
            return Arrays.stream(all.replaceAll("(?m)^--.*$", "").split(";"))
                    .map(String::strip)
                    .filter(s -> !s.isEmpty())
                    .toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** The indices that keep a row from being there twice, by the statements that make them. */
    static List<String> uniqueIndices() {
        return forFile().stream()
                .filter(s -> s.startsWith("CREATE UNIQUE INDEX "))
                .map(s -> s.split(" ")[3])
                .sorted()
                .toList();
    }

    /** How many primary keys and unique columns the tables have. */
    static long keys() {
        return forFile().stream()
                .filter(s -> s.startsWith("CREATE TABLE "))
                .mapToLong(s -> s.split("PRIMARY KEY|UNIQUE", -1).length - 1L)
                .sum();
    }

    /** The same statements for a server. */
    static List<String> forServer() {
        return forFile().stream().map(Schema::forServer).toList();
    }

    // Text is ordered by its bytes in a file, and seals are made over rows in order: a ledger on a
    // server must have the same seals.
    private static String forServer(String statement) {
        return statement
                .replaceAll("\\bSTRICT\\b", "")
                .replaceAll("\\bINTEGER\\b", "BIGINT")
                .replaceAll("\\bTEXT\\b", "TEXT COLLATE \"C\"");
    }

    /** Writes down who the ledger is, and which schema it has. */
    static void enter(LedgerId office, Sql sql) {
        sql.run("INSERT INTO office VALUES (?, ?, ?)", office.id(), office.madeAt(), VERSION);
    }
}
