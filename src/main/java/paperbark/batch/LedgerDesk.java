package paperbark.batch;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import paperbark.ledger.Export;
import paperbark.ledger.Ledger;
import paperbark.ledger.LedgerPlace;
import paperbark.output.table.SafeCsv;
import paperbark.settle.Owing;
import paperbark.settle.Quarter;

/** What an office asks of its ledger. */
public final class LedgerDesk {
    private static final int JUNE = 6;

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

    /** What is still to come on a day. */
    public static Owing owing(LedgerPlace place, LocalDate asOf) {
        try (Ledger ledger = Ledger.open(place)) {
            return Owing.of(ledger.claims(asOf), asOf);
        }
    }

    /** The quarters of the financial year that a day lies in. */
    public static List<Quarter> quarters(LedgerPlace place, LocalDate within) {
        int endingIn = within.getMonthValue() > JUNE ? within.getYear() + 1 : within.getYear();
        try (Ledger ledger = Ledger.open(place)) {
            return Quarter.ofYear(
                    endingIn,
                    ledger.sales(),
                    ledger.claims(LocalDate.of(9999, 12, 31)),
                    ledger.receipts());
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
