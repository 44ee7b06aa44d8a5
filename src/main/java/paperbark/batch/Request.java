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
 * @param firm where what belongs to the firm lies
 * @param out folder in which the batch folder appears, or the marked-up register when only checking
 * @param run when and with which program
 * @param extras what is wanted besides
 * @param ledger what of it goes into a ledger
 */
public record Request(
        Register register, FirmFiles firm, Path out, Run run, Extras extras, LedgerUse ledger) {

    /**
     * A list of jobs.
     *
     * @param file the file
     * @param sheet the sheet wanted; empty takes the one whose headings match best
     */
    public record Register(Path file, Optional<String> sheet) {

        /** Name of the file without folders. */
        public String name() {
            return file.getFileName().toString();
        }
    }

    /**
     * What belongs to the firm.
     *
     * @param tables folder or workbook of its tables
     * @param templates folder of its own templates; empty takes the shipped ones
     * @param rules folder of its newer rule tables
     */
    public record FirmFiles(Path tables, Optional<Path> templates, Optional<Path> rules) {}

    /**
     * The run.
     *
     * @param today its day
     * @param at its moment, for people only
     * @param version version of the program
     */
    public record Run(LocalDate today, Instant at, String version) {}

    /**
     * What not everybody wants.
     *
     * @param siteSheets whether installed jobs get a site sheet too
     * @param csv whether the workbook's sheets are wanted as CSV files too
     * @param byCrew whether each crew gets a print run of its own for each day
     * @param fillable whether booked jobs get their site sheet with live fields too
     * @param officeLinks whether the index leads to the pages of the office folder that the batch
     *     lies in
     */
    public record Extras(
            boolean siteSheets,
            boolean csv,
            boolean byCrew,
            boolean fillable,
            boolean officeLinks) {
        /** None of them. */
        public static final Extras NONE = new Extras(false, false, false, false, false);

        /** Those of a batch in an office folder. */
        public static final Extras OFFICE = new Extras(false, false, false, false, true);
    }

    /**
     * What of a run goes into a ledger.
     *
     * @param place the ledger; empty where the firm keeps none
     * @param again whether jobs that are done are prepared once more
     */
    public record LedgerUse(Optional<LedgerPlace> place, boolean again) {
        /** No ledger is kept. */
        public static final LedgerUse NONE = new LedgerUse(Optional.empty(), false);
    }
}
