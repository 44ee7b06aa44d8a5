package paperbark.ledger;

import java.util.Arrays;
import java.util.HashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * The JDBC address of a schema on a PostgreSQL server, such as {@code
 * jdbc:postgresql://host/database?currentSchema=ledger}.
 */
final class ServerUrl {
    /** How to write one. */
    static final String FORM =
            "Write it as jdbc:postgresql://HOST/DATABASE, where needed with ?user=NAME&currentSchema=SCHEMA.";

    // Everything else that the driver takes can weaken the ledger, load classes or carry secrets.
    private static final Set<String> PARAMETERS =
            Set.of("user", "currentSchema", "sslmode", "sslrootcert", "sslcert", "sslkey");

    private static final Pattern SHAPE =
            Pattern.compile(
                    "jdbc:postgresql://([\\w.-]+|\\[[0-9A-Fa-f:.]+])(:\\d{1,5})?/[\\w.%-]+(\\?(?<parameters>\\S+))?");
    // Small letters only: the server reads the name without regard to case.
    private static final Pattern SCHEMA = Pattern.compile("(?!pg_)[a-z_][a-z0-9_]{0,62}");

    private ServerUrl() {}

    /**
     * Looks whether an address can be used.
     *
     * @throws LedgerException that shows nothing of it: it may hold a password
     */
    static void check(String url) {
        if (url.contains("@") || url.toLowerCase(Locale.ROOT).contains("password")) {
            throw new LedgerException(
                    "The address of the ledger holds a password or an @, and is seen by others.",
                    "Take it out. Name the user as ?user=NAME and put the password into the file .pgpass in"
                            + " your home folder (on Windows %APPDATA%\\postgresql\\pgpass.conf).");
        }
        if (!SHAPE.matcher(url).matches()) {
            throw new LedgerException("That is no address of a ledger on a server.", FORM);
        }
        if (!SCHEMA.matcher(schema(url)).matches()) {
            throw new LedgerException(
                    "The schema in the address of the ledger cannot be used.",
                    "Name it with small letters, digits and _.");
        }
    }

    /** The schema that the tables of the ledger are in. */
    static String schema(String url) {
        return parameters(url).getOrDefault("currentSchema", "public");
    }

    private static Map<String, String> parameters(String url) {
        Map<String, String> all = new HashMap<>();
        Matcher shape = SHAPE.matcher(url);
        if (shape.matches() && shape.group("parameters") != null) {
            Arrays.stream(shape.group("parameters").split("&", -1))
                    .map(p -> p.split("=", 2))
                    .forEach(
                            p -> {
                                if (p.length < 2
                                        || !PARAMETERS.contains(p[0])
                                        || all.put(p[0], p[1]) != null) {
                                    throw new LedgerException(
                                            "The address of the ledger has a parameter that is not taken.",
                                            "Use each of user, currentSchema, sslmode, sslrootcert, sslcert and"
                                                    + " sslkey at most once.");
                                }
                            });
        }
        return all;
    }
}
