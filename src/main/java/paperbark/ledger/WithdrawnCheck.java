package paperbark.ledger;

import java.util.List;
import java.util.stream.Collectors;
import paperbark.finding.Finding;
import paperbark.finding.FindingCode;
import paperbark.finding.Place;
import paperbark.finding.Severity;
import paperbark.job.Field;
import paperbark.job.Job;
import paperbark.value.Days;

/** What is to be said of jobs that are cancelled, booked out, or gone from their list. */
public final class WithdrawnCheck {
    private WithdrawnCheck() {}

    /**
     * A job for which nothing is done because it is cancelled; what it claimed falls away.
     *
     * @param sold whether an earlier batch sold it
     */
    public static Finding cancelled(Job job, JobHistory history, boolean sold) {
        String fact =
                "Job " + job.reference() + " is cancelled; nothing is prepared or claimed for it";
        if (history.earlier().isEmpty()) {
            return cancelled(job, fact + ".", "");
        }
        Earlier earlier = history.earlier().get();
        if (earlier.withdrawn().isPresent()) {
            return cancelled(
                    job,
                    fact
                            + ", and it was withdrawn on "
                            + Days.show(earlier.withdrawn().get().day())
                            + ".",
                    "");
        }
        List<ClaimState> claims = history.standing(job.reference());
        String what =
                claims.isEmpty()
                        ? ", but its papers went out with batch " + earlier.batchInWords() + "."
                        : ", and what was claimed for it is withdrawn: "
                                + claims.stream()
                                        .map(ClaimState::reference)
                                        .collect(Collectors.joining(", "))
                                + ".";
        return cancelled(
                        job,
                        fact + what,
                        "Take back its papers, the newest in "
                                + earlier.pack()
                                + " of batch "
                                + earlier.batchInWords()
                                + buyers(claims)
                                + "."
                                + (sold ? inTheBooks(earlier.batchInWords()) : ""))
                .as(Severity.CHECK);
    }

    private static Finding cancelled(Job job, String fact, String remedy) {
        return Finding.of(FindingCode.JOB_CANCELLED, job.origin().cell(Field.STAGE), fact, remedy);
    }

    private static String inTheBooks(String batch) {
        return " Where the journal of batch "
                + batch
                + " books its sale, the journal of the withdrawal, in advices, takes that back: book it"
                + " too.";
    }

    /** What is to be agreed on with the buyers of claims that fall away. */
    public static String buyers(List<ClaimState> claims) {
        return claims.stream()
                .filter(c -> c.isWithBuyer() || !c.received().isZero())
                .map(
                        c ->
                                "; agree with "
                                        + (c.buyer().isEmpty() ? "the buyer" : c.buyer())
                                        + " on "
                                        + c.reference()
                                        + (c.received().isZero()
                                                ? ", which they have"
                                                : ", for which they paid " + c.received()))
                .collect(Collectors.joining());
    }

    /** A job that a person booked out, or another replaces, and whose row says what it said. */
    public static Finding leftOut(Job job, Earlier earlier) {
        boolean replaced =
                earlier.withdrawn()
                        .filter(then -> then.reason().startsWith(Withdrawing.CORRECTED_BY))
                        .isPresent();
        return withdrawn(
                job,
                earlier,
                " Its row says what it said then, so nothing is prepared or claimed for it.",
                "Take the row out or mark it as cancelled"
                        + (replaced ? "." : "; prepare with --again to claim it after all."));
    }

    /** A job that was booked out, and whose number two rows have now. */
    public static Finding twice(Job job, Earlier earlier) {
        return withdrawn(
                job,
                earlier,
                " More than one row has its number now, so nothing is prepared for this one.",
                "Give each job a number of its own.");
    }

    /** A job that was booked out and comes again. */
    public static Finding takenBack(Job job, Earlier earlier) {
        return withdrawn(
                        job,
                        earlier,
                        " It is prepared anew, and claimed where it is installed.",
                        "Mark the row as cancelled if it should have stayed so.")
                .forJob(job.reference());
    }

    private static Finding withdrawn(Job job, Earlier earlier, String fact, String remedy) {
        Withdrawn then = earlier.withdrawn().orElseThrow();
        return Finding.of(
                FindingCode.JOB_WITHDRAWN,
                job.origin().cell(Field.JOB),
                "Job "
                        + job.reference()
                        + " was withdrawn on "
                        + Days.show(then.day())
                        + ": "
                        + then.reason()
                        + "."
                        + fact,
                remedy);
    }

    /** Jobs that stand in the ledger but no longer in their list. */
    public static Finding gone(String file, GoneJobs gone) {
        boolean one = gone.jobs().size() == 1;
        String jobs = String.join(", ", gone.jobs());
        return Finding.of(
                FindingCode.JOB_GONE,
                new Place.InFile(file),
                (one ? "Job " + jobs + " stands" : "These jobs stand")
                        + " in the ledger since batch "
                        + gone.batch()
                        + " but no longer in this list"
                        + (one ? "." : ": " + jobs + "."),
                "Put back "
                        + (one ? "its row" : "their rows")
                        + ", or book "
                        + (one ? "it" : "each")
                        + " out: withdraw "
                        + argument(gone.jobs().get(0))
                        + " --because \"...\".");
    }

    private static String argument(String job) {
        return job.matches("[\\p{L}\\p{Nd}._/-]+") ? job : "\"" + job + "\"";
    }
}
