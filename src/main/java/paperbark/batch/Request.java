package paperbark.batch;

import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.util.Optional;
import paperbark.ledger.LedgerPlace;

/**
 * What is to be done.
 *
 * @param register the firm's list of jobs
 * @param sheet the sheet wanted; empty takes the one whose headings match best
 * @param tables folder or workbook of the firm's tables
 * @param templates folder of the firm's own templates; empty takes the shipped ones
 * @param rules folder of the firm's newer rule tables
 * @param out folder in which the batch folder appears, or the marked-up register when only checking
 * @param today the day of the run
 * @param siteSheets whether installed jobs get a site sheet too
 * @param csv whether the workbook's sheets are wanted as CSV files too
 * @param version version of the program
 * @param books what of it goes into a ledger
 */
public record Request(
        Path register,
        Optional<String> sheet,
        Path tables,
        Optional<Path> templates,
        Optional<Path> rules,
        Path out,
        LocalDate today,
        boolean siteSheets,
        boolean csv,
        String version,
        Books books) {

    /**
     * What of a run goes into a ledger.
     *
     * @param ledger the ledger; empty where the firm keeps none
     * @param at moment of the run, for people only
     * @param again whether jobs that are done are prepared once more
     */
    public record Books(Optional<LedgerPlace> ledger, Instant at, boolean again) {
        /** No ledger is kept. */
        public static final Books NONE = new Books(Optional.empty(), Instant.EPOCH, false);
    }

    /** A request without CSV files and without a ledger. */
    public Request(
            Path register,
            Optional<String> sheet,
            Path tables,
            Optional<Path> templates,
            Optional<Path> rules,
            Path out,
            LocalDate today,
            boolean siteSheets,
            String version) {
        this(
                register,
                sheet,
                tables,
                templates,
                rules,
                out,
                today,
                siteSheets,
                false,
                version,
                Books.NONE);
    }

    /** The same request, with or without CSV files. */
    public Request withCsv(boolean wanted) {
        return new Request(
                register,
                sheet,
                tables,
                templates,
                rules,
                out,
                today,
                siteSheets,
                wanted,
                version,
                books);
    }

    /** The same request with a ledger. */
    public Request with(Books others) {
        return new Request(
                register,
                sheet,
                tables,
                templates,
                rules,
                out,
                today,
                siteSheets,
                csv,
                version,
                others);
    }
}
