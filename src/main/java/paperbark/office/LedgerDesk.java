package paperbark.office;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import paperbark.disk.Staging;
import paperbark.ledger.Export;
import paperbark.ledger.Ledger;
import paperbark.ledger.LedgerPlace;
import paperbark.output.table.SafeCsv;

/** Makes ledgers and writes them out. */
public final class LedgerDesk {
    private LedgerDesk() {}

    /** Makes a new, empty ledger. */
    public static void create(LedgerPlace place, Instant at) {
        Ledger.create(place, at);
    }

    /**
     * Makes a new ledger with everything that another holds, with its identity and its key.
     *
     * @throws paperbark.ledger.LedgerException when the other is not as it was written
     */
    public static void takeOver(LedgerPlace from, LedgerPlace place) {
        try (Ledger ledger = Ledger.open(from)) {
            ledger.verify();
            ledger.takenOverBy(place);
        }
    }

    /**
     * Writes every table of a ledger as a CSV file into a folder that must not exist yet.
     *
     * @return the files
     * @throws IOException when a file cannot be written; the folder is not there then
     */
    public static List<Path> export(LedgerPlace place, Path folder) throws IOException {
        List<Path> written = new ArrayList<>();
        try (Ledger ledger = Ledger.open(place);
                Staging staging = Staging.of(folder)) {
            ledger.verify();
            for (Export.ExportedTable table : Export.of(ledger)) {
                String name = table.name() + ".csv";
                staging.write(
                        name,
                        SafeCsv.of(
                                table.headings(),
                                table.rows().stream().map(SafeCsv::cells).toList()));
                written.add(folder.resolve(name));
            }
            staging.publish();
        }
        return written;
    }
}
