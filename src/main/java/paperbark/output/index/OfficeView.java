package paperbark.output.index;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * How things stand in an office folder.
 *
 * @param day the day
 * @param program version of the program
 * @param attended whether a program goes on attending the folder
 * @param beside what else lies in the folder
 * @param troubles what keeps work from being done, and what to do
 * @param looks what somebody should look at
 * @param seal the ledger's last seal; empty while it cannot be asked
 * @param working the register being worked on
 * @param progress how far it is, in words; empty while that is not known
 * @param waiting files in the intake that wait
 * @param returned folders of registers that went back, newest first
 * @param batches the newest batches, newest first
 * @param lodging which claims that are not lodged are ready to be; empty while the ledger cannot be
 *     asked, and where no papers are scanned
 */
public record OfficeView(
        String day,
        String program,
        boolean attended,
        Beside beside,
        List<String> troubles,
        List<String> looks,
        Optional<String> seal,
        Optional<String> working,
        Optional<String> progress,
        List<Waiting> waiting,
        List<String> returned,
        List<Line> batches,
        Optional<Lodging> lodging) {

    /** Page of the manual to begin with, from the office folder. */
    public static final String MANUAL = "manual/index.html";

    /** Keeps the lists from being changed. */
    public OfficeView {
        troubles = List.copyOf(troubles);
        looks = List.copyOf(looks);
        waiting = List.copyOf(waiting);
        returned = List.copyOf(returned);
        batches = List.copyOf(batches);
    }

    /**
     * What the page leads to, where it is there.
     *
     * @param week whether the page of the week is
     * @param send whether the page of drafts is
     * @param calendar whether the calendar is
     * @param papers whether the list of papers is
     * @param manual whether the manual is
     */
    public record Beside(
            boolean week, boolean send, boolean calendar, boolean papers, boolean manual) {
        /** The places, each with what it is called, in the order of the page. */
        public List<Place> all() {
            List<Place> all = new ArrayList<>();
            add(all, week, "week.html", "the week");
            add(all, send, "send/index.html", "what leaves the house");
            add(all, calendar, "calendar.ics", "the calendar");
            add(all, papers, PapersPage.FILE, "papers to be signed");
            add(all, manual, MANUAL, "the manual");
            return List.copyOf(all);
        }

        private static void add(List<Place> all, boolean there, String file, String words) {
            if (there) {
                all.add(new Place(file, words));
            }
        }
    }

    /**
     * Where a link leads.
     *
     * @param file the file, from the office folder
     * @param words what it is called
     */
    public record Place(String file, String words) {}

    /** The same while the work is as far as these words say. */
    public OfficeView at(String words) {
        return new OfficeView(
                day,
                program,
                attended,
                beside,
                troubles,
                looks,
                seal,
                working,
                Optional.of(words),
                waiting,
                returned,
                batches,
                lodging);
    }

    /**
     * Claims that are to be lodged, the earliest last day first.
     *
     * @param ready how many have their assignment back, with all its pages
     * @param waiting how many have not
     * @param first the first of those
     * @param tooLate how many claims are not lodged and can be no longer
     * @param toPlace how many scanned pages a person has to place
     */
    public record Lodging(int ready, int waiting, List<Awaited> first, int tooLate, int toPlace) {
        /** Keeps the list from being changed. */
        public Lodging {
            first = List.copyOf(first);
        }

        /** The same with so many scanned pages to place. */
        public Lodging with(int pages) {
            return new Lodging(ready, waiting, first, tooLate, pages);
        }
    }

    /**
     * An assignment that is not back.
     *
     * @param job the job
     * @param paper the paper
     * @param came how far it has come, in words
     * @param batch the batch that it was printed with
     */
    public record Awaited(String job, String paper, String came, String batch) {}

    /**
     * A file that waits.
     *
     * @param file its name
     * @param reason why
     */
    public record Waiting(String file, String reason) {}

    /**
     * A batch.
     *
     * @param name of it and its folder
     * @param page name of the page in it to begin with; empty text where there is none
     * @param register file name of its register
     * @param day day of the run
     * @param jobs how many jobs
     * @param held how many are held
     */
    public record Line(String name, String page, String register, String day, int jobs, int held) {}
}
