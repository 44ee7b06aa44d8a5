package paperbark.batch;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import paperbark.ledger.Export;
import paperbark.ledger.Ledger;
import paperbark.output.table.SafeCsv;
import paperbark.settle.Owing;
import paperbark.settle.Quarter;

/** What an office asks of its ledger. */
public final class LedgerDesk {
    private static final int JUNE = 6;

    private LedgerDesk() {}

    /** Makes a new, empty ledger. */
    public static void create(Path file, Instant at) {
        Ledger.create(file, at);
    }

    /** What is still to come on a day. */
    public static Owing owing(Path file, LocalDate asOf) {
        try (Ledger ledger = Ledger.open(file)) {
            return Owing.of(ledger.claims(asOf), asOf);
        }
    }

    /** The quarters of the financial year that a day lies in. */
    public static List<Quarter> quarters(Path file, LocalDate within) {
        int endingIn = within.getMonthValue() > JUNE ? within.getYear() + 1 : within.getYear();
        try (Ledger ledger = Ledger.open(file)) {
            return Quarter.ofYear(
                    endingIn,
                    ledger.sales(),
                    ledger.claims(LocalDate.of(9999, 12, 31)),
                    ledger.payments());
        }
    }

    /**
     * Writes every table of a ledger as a CSV file into a folder that must not exist yet.
     *
     * @return the files
     * @throws IOException when a file cannot be written; the folder is not there then
     */
    public static List<Path> export(Path file, Path folder) throws IOException {
        List<Path> written = new ArrayList<>();
        try (Ledger ledger = Ledger.open(file);
                Staging staging = Staging.of(folder)) {
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
