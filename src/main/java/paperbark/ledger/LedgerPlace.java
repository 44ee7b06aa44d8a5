package paperbark.ledger;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;

/** Where a ledger is: a file, or a schema on a PostgreSQL server that several offices share. */
public sealed interface LedgerPlace {
    /** Name of the file in an office folder. */
    String FILE = "paperbark.db";

    /** Name of the file that takes its place where the ledger is on a server; it says where. */
    String NOTE = "ledger.txt";

    /**
     * A file.
     *
     * @param path the file
     */
    record InFile(Path path) implements LedgerPlace {
        @Override
        public boolean isExpected() {
            return Files.exists(path);
        }

        @Override
        public Path beside(String name) {
            return path.resolveSibling(name);
        }

        @Override
        public Path key() {
            String name = path.getFileName().toString();
            return path.resolveSibling(name.replaceFirst("\\.db$", "") + ".key");
        }

        @Override
        public String remedy() {
            return "In an office folder, ledger-rebuild makes it anew from the published batches; elsewhere"
                    + " bring back a copy. Do not delete the damaged file.";
        }

        @Override
        public String toString() {
            return path.toString();
        }
    }

    /**
     * A server.
     *
     * @param url JDBC address, which holds no password
     * @param folder the folder of the office that uses it
     */
    record OnServer(String url, Path folder) implements LedgerPlace {
        /**
         * Refuses an address that cannot be used.
         *
         * @throws LedgerException that shows nothing of the address
         */
        public OnServer {
            ServerUrl.check(url);
        }

        @Override
        public boolean isExpected() {
            return true;
        }

        @Override
        public Path beside(String name) {
            return folder.resolve(name);
        }

        @Override
        public Path key() {
            return folder.resolve("paperbark.key");
        }

        @Override
        public String remedy() {
            return "Bring back the server's own backup; or make the ledger anew in an empty schema from the"
                    + " newest copy in an office's backups, with ledger-new and --from.";
        }

        /** The address as people may see it. */
        @Override
        public String toString() {
            return url.replaceFirst("\\?.*", "");
        }
    }

    /** Whether a ledger must be there: the file exists, or somebody named a server. */
    boolean isExpected();

    /** A file or folder of that name that belongs to the ledger. */
    Path beside(String name);

    /** The file of the secret that the ledger's prints are made with, see {@link PrintKey}. */
    Path key();

    /** What to do with the ledger when it is missing or not as it was written. */
    String remedy();

    /**
     * The ledger that belongs to a folder: on the server that {@code ledger.txt} there names, or
     * else the file {@code paperbark.db}, which may still be missing.
     *
     * @throws LedgerException when it is not clear which ledger that is
     */
    static LedgerPlace in(Path folder) {
        Path note = folder.resolve(NOTE);
        Path file = folder.resolve(FILE);
        if (!Files.exists(note)) {
            return new InFile(file);
        }
        if (Files.exists(file)) {
            throw new LedgerException(
                    "There are two ledgers: " + FILE + " and the one that " + NOTE + " names.",
                    "Move the one that is not in use out of " + folder + ".");
        }
        List<String> lines;
        try {
            lines =
                    Files.readAllLines(note).stream()
                            .map(line -> line.replace("\uFEFF", "").strip())
                            .filter(line -> !line.isEmpty())
                            .toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        if (lines.size() != 1) {
            throw new LedgerException(
                    NOTE + " must hold one line, the address of the ledger.", ServerUrl.FORM);
        }
        return new OnServer(lines.get(0), folder);
    }

    /**
     * The ledger that a word of the command names: the address of a server, or a file.
     *
     * @param directory folder that the name of a file begins in
     * @throws LedgerException when it is an address that cannot be used
     */
    static LedgerPlace named(String word, Path directory) {
        return word.toLowerCase(Locale.ROOT).startsWith("jdbc:")
                ? new OnServer(word, directory)
                : new InFile(directory.resolve(word).normalize());
    }
}
