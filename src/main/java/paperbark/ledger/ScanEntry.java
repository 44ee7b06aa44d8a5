package paperbark.ledger;

import java.time.Instant;
import java.time.LocalDate;
import java.util.List;

/**
 * Pages of papers that came back, as they go into the ledger.
 *
 * @param file file name of the pile
 * @param sha256 its hash
 * @param pages the pages that were placed
 * @param day day of the run
 * @param at moment of the run, for people only
 * @param program version of the program
 */
public record ScanEntry(
        String file, String sha256, List<Page> pages, LocalDate day, Instant at, String program) {

    /** Keeps the list from being changed. */
    public ScanEntry {
        pages = List.copyOf(pages);
    }

    /**
     * One page.
     *
     * @param place its place in the pile, from 1
     * @param job the job number
     * @param version which version of the job the paper was printed for, from 1
     * @param kind name of the paper's kind
     * @param page which page of the paper, from 1
     * @param pages how many pages the paper has
     * @param blank boxes on it for a signature, name or day that are empty; -1 where nobody looked
     */
    public record Page(
            int place, String job, int version, String kind, int page, int pages, int blank) {}
}
