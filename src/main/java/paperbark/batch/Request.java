package paperbark.batch;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.Optional;

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
        String version) {

    /** A request without CSV files. */
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
        this(register, sheet, tables, templates, rules, out, today, siteSheets, false, version);
    }

    /** The same request, with or without CSV files. */
    public Request withCsv(boolean wanted) {
        return new Request(
                register, sheet, tables, templates, rules, out, today, siteSheets, wanted, version);
    }
}
