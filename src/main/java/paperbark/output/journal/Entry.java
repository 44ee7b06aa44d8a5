package paperbark.output.journal;

import java.time.LocalDate;
import java.util.List;

/**
 * One entry, whose postings add up to nothing.
 *
 * @param day on which the heater was installed
 * @param job the firm's job number
 * @param postings debits and credits
 * @param remarks what a bookkeeper must know
 */
record Entry(LocalDate day, String job, List<Posting> postings, List<String> remarks) {

    /** Keeps the lists from being changed. */
    Entry {
        postings = List.copyOf(postings);
        remarks = List.copyOf(remarks);
    }
}
