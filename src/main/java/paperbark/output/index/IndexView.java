package paperbark.output.index;

import java.util.List;
import java.util.Optional;
import paperbark.output.RunFile;
import paperbark.value.Phone;

/**
 * What the page's template sees; every text is ready to be shown.
 *
 * @param firm the firm's name
 * @param batch name of the batch
 * @param register file name of the register
 * @param preparedOn day of the run
 * @param program version
 * @param printRuns what there is to print
 * @param workbooks the workbooks beside them
 * @param totals counts and amounts at the top
 * @param glance the batch at a glance
 * @param severities findings by severity, the gravest first
 * @param closing the nearest closing dates
 * @param jobs one a job, those that are held first, else in the order of the register
 * @param firstProblem the first job that somebody must look at
 * @param crews the jobs by crew and day
 * @param choices what jobs can be chosen by
 * @param general findings that belong to no job of the list or to several
 * @param demo whether invented figures went into any count
 */
public record IndexView(
        String firm,
        String batch,
        String register,
        String preparedOn,
        String program,
        List<RunFile> printRuns,
        List<Workbook> workbooks,
        List<Figure> totals,
        List<Chart> glance,
        List<SeverityCount> severities,
        List<Closing> closing,
        List<JobLine> jobs,
        Optional<Step> firstProblem,
        List<CrewDay> crews,
        Choices choices,
        List<FindingLine> general,
        boolean demo) {

    /**
     * A file beside the print runs: a workbook, table or page.
     *
     * @param file where it lies, from the batch folder
     * @param label what it is, in words
     */
    public record Workbook(String file, String label) {}

    /**
     * One figure.
     *
     * @param label what it is
     * @param value the figure
     * @param note a few words below it; may be empty
     */
    public record Figure(String label, String value, String note) {}

    /**
     * How many findings of a severity.
     *
     * @param severity its word
     * @param count how many
     */
    public record SeverityCount(String severity, long count) {}

    /**
     * One closing date.
     *
     * @param what what is too late afterwards
     * @param day the last day
     * @param left days left in words
     * @param near whether it is past or within a month
     * @param anchor the job's anchor
     * @param reference the job
     */
    public record Closing(
            String what, String day, String left, boolean near, String anchor, String reference) {}

    /**
     * The way to a job on the page.
     *
     * @param anchor where to
     * @param reference the job
     */
    public record Step(String anchor, String reference) {}

    /**
     * A crew's day.
     *
     * @param crew who goes
     * @param day when; empty where it is not known
     * @param jobs in the order of the route
     */
    public record CrewDay(String crew, String day, List<Step> jobs) {}

    /**
     * What the jobs of the page can be chosen by, where there is more than one of it.
     *
     * @param statuses statuses of its jobs, the held ones first
     * @param crews crews in the order of the route
     * @param days days of the visits, the earliest first
     */
    public record Choices(List<Status> statuses, List<String> crews, List<String> days) {}

    /**
     * A status of jobs.
     *
     * @param name of its shape
     * @param word the status in words
     */
    public record Status(String name, String word) {}

    /**
     * One job.
     *
     * @param anchor its anchor in the page
     * @param reference job number
     * @param owner owner's name
     * @param contact the person to speak to, where it is another
     * @param phone owner's telephone number
     * @param suburb suburb of the site
     * @param when stage with its day
     * @param crew who goes; empty where it is not known
     * @param crewChoice the crew as it can be chosen
     * @param dayChoice the day of the visit as it can be chosen
     * @param status name of the status, for its shape
     * @param statusWord the status in words
     * @param heldPapers the papers that a stop holds
     * @param certificates one text a scheme
     * @param stops what must be mended before the held papers are made
     * @param checks what is to be done where no stop holds a paper and a check asks for a look
     * @param missing what is still missing
     * @param closing every closing date, the nearest first
     * @param noClosing what is said where there is none
     * @param pack file name of the pack
     * @param typing pages to type from
     * @param fillable the site sheet to fill in on a tablet
     * @param findings what was noticed
     * @param standing papers of earlier batches that count still
     * @param counts findings by severity, the gravest first, without zeros
     * @param next the next job that somebody must look at; empty after the last
     */
    public record JobLine(
            String anchor,
            String reference,
            String owner,
            String contact,
            Optional<Phone> phone,
            String suburb,
            String when,
            String crew,
            String crewChoice,
            String dayChoice,
            String status,
            String statusWord,
            List<String> heldPapers,
            List<String> certificates,
            List<String> stops,
            List<String> checks,
            List<String> missing,
            List<Closing> closing,
            String noClosing,
            String pack,
            List<Workbook> typing,
            Optional<String> fillable,
            List<FindingLine> findings,
            List<String> standing,
            List<SeverityCount> counts,
            Optional<Step> next) {}

    /**
     * One finding.
     *
     * @param severity its word
     * @param code its name
     * @param where the place in words
     * @param seen the value; empty where there is none or it is private
     * @param jobs the jobs, where one cause shows in several; else empty
     * @param fact what is wrong
     * @param remedy what to do; may be empty
     * @param why why it matters
     * @param rule the rule that spoke; may be empty
     */
    public record FindingLine(
            String severity,
            String code,
            String where,
            String seen,
            String jobs,
            String fact,
            String remedy,
            String why,
            String rule) {}
}
