package paperbark.output;

import java.util.List;
import java.util.Optional;
import paperbark.value.Phone;

/**
 * What an office looks at on a Monday. It tells of jobs by their numbers, and of owners by the
 * telephone alone.
 *
 * @param firm name of the firm; empty text where its tables cannot be read
 * @param day the day
 * @param week first and last day of the week
 * @param program version of the program
 * @param lodge the first claims to be lodged this week
 * @param soon the first claims that close within the next weeks
 * @param failed the first claims that failed and bring nothing until they are lodged again
 * @param further how many more of each there are
 * @param tooLate claims that are not lodged and can be no longer
 * @param signed assignments that are not back; empty where no papers are scanned
 * @param files what is to be said of the files of jobs; empty where none are put by
 * @param visits booked jobs whose visit should be over, by its day
 * @param papers compliance papers not on file, by their last day
 * @param held batches with jobs that are still held
 * @param overdue money overdue by buyer
 * @param total all money overdue, in words
 * @param ending licences, offers and rules that end within the next weeks
 * @param machine how disk and copies of the ledger stand
 */
public record WeekView(
        String firm,
        String day,
        String week,
        String program,
        List<Closing> lodge,
        List<Closing> soon,
        List<Closing> failed,
        Further further,
        TooLate tooLate,
        Optional<Signed> signed,
        Optional<Files> files,
        List<Line> visits,
        List<Line> papers,
        List<Held> held,
        List<Overdue> overdue,
        String total,
        List<Line> ending,
        List<Line> machine) {

    /** Keeps the lists from being changed. */
    public WeekView {
        lodge = List.copyOf(lodge);
        soon = List.copyOf(soon);
        failed = List.copyOf(failed);
        visits = List.copyOf(visits);
        papers = List.copyOf(papers);
        held = List.copyOf(held);
        overdue = List.copyOf(overdue);
        ending = List.copyOf(ending);
        machine = List.copyOf(machine);
    }

    /**
     * A claim and its last day.
     *
     * @param claim its name
     * @param what such as {@code 14 STCs}
     * @param buyer who takes them; empty text where none is chosen
     * @param phone the buyer's number
     * @param day its last day
     * @param left in words, such as {@code 3 days left}
     * @param more what else is to be said; may be empty
     */
    public record Closing(
            String claim,
            String what,
            String buyer,
            Optional<Phone> phone,
            String day,
            String left,
            String more) {}

    /**
     * How many more claims there are than are listed.
     *
     * @param lodge to be lodged this week
     * @param soon that close within the next weeks
     * @param failed that failed
     */
    public record Further(int lodge, int soon, int failed) {}

    /**
     * Claims that are not lodged and can be no longer.
     *
     * @param count how many
     * @param newest those whose last day was over last
     * @param remedy what is to be done
     */
    public record TooLate(int count, List<Closing> newest, String remedy) {
        /** Keeps the list from being changed. */
        public TooLate {
            newest = List.copyOf(newest);
        }
    }

    /**
     * How the assignments stand of claims that are to be lodged.
     *
     * @param ready how many are back with all their pages
     * @param waiting how many are not
     * @param first the first of those, the earliest last day first
     */
    public record Signed(int ready, int waiting, List<NotBack> first) {
        /** Keeps the list from being changed. */
        public Signed {
            first = List.copyOf(first);
        }
    }

    /**
     * An assignment that is not back, or not all of it.
     *
     * @param claim name of the claim
     * @param paper the paper
     * @param came how far it has come, in words
     * @param batch the batch that it was printed with
     * @param phone the owner's number, where its register is at hand and tells one
     * @param day last day of the claim; empty text where there is none
     * @param left in words, such as {@code 3 days left}
     */
    public record NotBack(
            String claim,
            String paper,
            String came,
            String batch,
            Optional<Phone> phone,
            String day,
            String left) {
        private NotBack withoutNumber() {
            return new NotBack(claim, paper, came, batch, Optional.empty(), day, left);
        }
    }

    /**
     * The files that people put by for jobs.
     *
     * @param looks what somebody should look at, in a sentence each
     * @param lacking jobs with a claim to be lodged for which something is not there
     * @param more how many further ones there are
     */
    public record Files(List<String> looks, List<Lacking> lacking, int more) {
        /** Keeps the lists from being changed. */
        public Files {
            looks = List.copyOf(looks);
            lacking = List.copyOf(lacking);
        }
    }

    /**
     * A job for which files are not there.
     *
     * @param job its number
     * @param what the files, in words
     */
    public record Lacking(String job, String what) {}

    /**
     * Something with a day.
     *
     * @param what in words
     * @param day the day; empty text where there is none
     * @param left in words, such as {@code 3 days left}
     */
    public record Line(String what, String day, String left) {}

    /**
     * A batch with held jobs.
     *
     * @param batch its name
     * @param page the page in it that says why, with the numbers to ring; empty text where it is
     *     gone
     * @param jobs how many
     */
    public record Held(String batch, String page, int jobs) {}

    /**
     * Money that a buyer should have paid.
     *
     * @param buyer who
     * @param phone the number to ring
     * @param amount how much
     * @param oldest the longest overdue claim and since when
     * @param claims how many claims
     */
    public record Overdue(
            String buyer, Optional<Phone> phone, String amount, String oldest, int claims) {}

    /** The same without the numbers of owners. */
    public WeekView withoutOwnersNumbers() {
        return new WeekView(
                firm,
                day,
                week,
                program,
                lodge,
                soon,
                failed,
                further,
                tooLate,
                signed.map(
                        s ->
                                new Signed(
                                        s.ready(),
                                        s.waiting(),
                                        s.first().stream().map(NotBack::withoutNumber).toList())),
                files,
                visits,
                papers,
                held,
                overdue,
                total,
                ending,
                machine);
    }

    /** In one line what matters most. */
    public String inShort() {
        return lodge.size()
                + further.lodge()
                + " to lodge, "
                + (failed.size() + further.failed())
                + " failed, "
                + (tooLate.count() == 0 ? "" : tooLate.count() + " past their last day, ")
                + signed.map(s -> s.waiting() + " assignments not back, ").orElse("")
                + papers.size()
                + " papers not on file, "
                + total
                + " overdue";
    }
}
