package paperbark.office;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.time.Instant;
import java.util.stream.Stream;
import paperbark.ledger.Ledger;

/** Office folders and small registers for tests. */
public final class Offices {
    private static final Path TABLES = Path.of("input-samples/tables");
    private static final String HEADINGS =
            "Job,Stage,Installed on,Owner,Site street,Site suburb,Site state,Site postcode,Maker,Model,Tank serial,"
                    + "Plumber,Electrician,Plumbing certificate,Plumbing certificate date,Electrical certificate,"
                    + "Electrical certificate date,Claim STCs,STC buyer,STC benefit,Benefit form,New,Complete system,"
                    + "Owner registered for GST,Full price,Old heater\n";

    private Offices() {}

    /** An office with the sample firm's tables and a new ledger. */
    public static Office make(Path folder) throws IOException {
        Files.createDirectories(folder);
        copy(TABLES, folder.resolve("tables"));
        Office office = Office.in(folder);
        Ledger.create(office.ledger(), Instant.EPOCH);
        return office;
    }

    /** The file that an office's own ledger lies in. */
    static Path ledgerFile(Office office) {
        return office.root().resolve("paperbark.db");
    }

    /** An office with the sample firm's tables whose ledger is on a server, made or not. */
    static Office sharing(Path folder, String url) throws IOException {
        Files.createDirectories(folder);
        copy(TABLES, folder.resolve("tables"));
        Files.writeString(folder.resolve("ledger.txt"), url + "\n");
        return Office.in(folder);
    }

    /** A register of installed jobs that claim STCs, one a number. */
    public static String register(int... numbers) {
        StringBuilder csv = new StringBuilder(HEADINGS);
        for (int n : numbers) {
            csv.append(row(n, "2610040004512" + (100 + n)));
        }
        return csv.toString();
    }

    /** The row of one job. */
    static String row(int n, String serial) {
        return ("J-%d,installed,16/11/2026,Ada Amberwood,%d Teaspoon Lane,Ballan,VIC,3342,Dunlin,D270-A,%s,"
                        + "Wanda Wattle,Tilly Teatree,DEMO-%d,17/11/2026,DEMO-E%d,16/11/2026,yes,Kestrel Certificates,"
                        + "504.00,discount on the price,yes,yes,no,4620.00,gas storage\n")
                .formatted(n, n, serial, n, n);
    }

    /** Copies a folder with all in it to where nothing is, or only an empty folder. */
    public static void copy(Path from, Path to) throws IOException {
        try (Stream<Path> all = Files.walk(from)) {
            all.forEach(
                    path -> {
                        try {
                            Path copy = to.resolve(from.relativize(path).toString());
                            Files.copy(path, copy, StandardCopyOption.REPLACE_EXISTING);
                        } catch (IOException e) {
                            throw new UncheckedIOException(e);
                        }
                    });
        }
    }
}
