package paperbark.output.index;

import java.util.List;

/**
 * What people should look at in a pile of scanned papers.
 *
 * @param day the day
 * @param program version of the program
 * @param file name of the pile
 * @param said what came of it, one line
 * @param lines the findings
 * @param boxes the empty boxes
 */
public record ScanView(
        String day, String program, String file, String said, List<Line> lines, List<Box> boxes) {

    /** Keeps the lists from being changed. */
    public ScanView {
        lines = List.copyOf(lines);
        boxes = List.copyOf(boxes);
    }

    /**
     * A finding.
     *
     * @param severity its word
     * @param job the job; empty text where there is none
     * @param fact what is so
     * @param remedy what to do; may be empty
     */
    public record Line(String severity, String job, String fact, String remedy) {}

    /**
     * An empty box.
     *
     * @param job the job
     * @param paper the paper
     * @param page which page of it
     * @param what who should have written what
     * @param picture a picture of it, as an address that holds it
     */
    public record Box(String job, String paper, int page, String what, String picture) {}
}
