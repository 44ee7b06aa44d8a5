package paperbark.batch;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import paperbark.entitlement.Schemes;
import paperbark.finding.Finding;
import paperbark.finding.FindingCode;
import paperbark.finding.Place;
import paperbark.job.Job;
import paperbark.job.Stage;
import paperbark.ledger.Earlier;
import paperbark.ledger.HistoryCheck;
import paperbark.ledger.JobHistory;
import paperbark.ledger.Keys;
import paperbark.ledger.Ledger;
import paperbark.ledger.WithdrawalEntry;
import paperbark.ledger.WithdrawnCheck;
import paperbark.output.journal.Booked;

/**
 * What of a register is to be prepared, once the ledger was asked.
 *
 * @param inputs without the jobs that are cancelled or done, and with what the ledger says
 * @param histories what the ledger knows, by the number of the job
 * @param cancelled jobs of the ledger that are to be booked out
 * @param booked the entry of a job that its journals have and no later one has taken back
 */
record Remaining(
        Inputs inputs,
        Map<String, JobHistory> histories,
        List<WithdrawalEntry.Line> cancelled,
        Function<String, Optional<Booked>> booked) {

    /**
     * Asks the ledger about every job.
     *
     * @param late keys of jobs with a claim that falls away now
     */
    static Remaining of(
            Inputs inputs,
            Request request,
            Optional<Ledger> ledger,
            Set<String> late,
            List<Finding> noticed) {
        Sieve sieve = new Sieve(request, late);
        sieve.lookForTwice(inputs);
        inputs.jobs().stream()
                .filter(job -> job.stage() == Stage.CANCELLED && !sieve.isTwice(job))
                .forEach(job -> sieve.cancelledJobs.add(job.reference()));
        ledger.map(Ledger::income)
                .ifPresent(
                        income ->
                                sieve.cancelledJobs.stream()
                                        .filter(income::isSold)
                                        .forEach(sieve.sold::add));
        for (Job job : inputs.jobs()) {
            sieve.take(job, ledger.map(l -> l.history(job)).orElse(JobHistory.NONE));
        }
        sieve.groups(inputs.sheet().file());
        List<Finding> all = new ArrayList<>(inputs.findings());
        all.addAll(sieve.findings);
        ledger.ifPresent(
                l ->
                        l.gone(
                                        request.register().name(),
                                        inputs.jobs().stream().map(Job::reference).toList())
                                .forEach(
                                        gone ->
                                                all.add(
                                                        WithdrawnCheck.gone(
                                                                inputs.sheet().file(), gone))));
        all.addAll(noticed);
        return new Remaining(
                InputsBuilder.builder(inputs).jobs(sieve.left).findings(List.copyOf(all)).build(),
                sieve.histories,
                sieve.withdrawals,
                ledger.map(l -> EarlierSales.of(l, request).booked())
                        .orElse(job -> Optional.empty()));
    }

    /** Sorts the jobs one by one. */
    private static final class Sieve {
        private final Request request;
        private final Set<String> late;
        private final Set<String> cancelledJobs = new HashSet<>();
        private final Set<String> sold = new HashSet<>();
        private final Set<String> twice = new HashSet<>();
        private final List<Job> left = new ArrayList<>();
        private final List<Finding> findings = new ArrayList<>();
        private final Map<String, JobHistory> histories = new HashMap<>();
        private final List<WithdrawalEntry.Line> withdrawals = new ArrayList<>();
        private final Map<String, List<String>> done = new LinkedHashMap<>();
        private final List<String> untold = new ArrayList<>();

        /** Whoever answers a question wants it on paper, also where the ledger compares it not. */
        private final boolean answered;

        private Sieve(Request request, Set<String> late) {
            this.request = request;
            this.late = late;
            this.answered = !AnswerBook.answers(request.register().file()).all().isEmpty();
        }

        /** Numbers of several rows, where these do not all say that the job is cancelled. */
        private void lookForTwice(Inputs inputs) {
            Set<String> told =
                    inputs.findings().stream()
                            .filter(f -> f.code() == FindingCode.JOB_TWICE)
                            .flatMap(f -> f.job().stream())
                            .map(Keys::job)
                            .collect(Collectors.toSet());
            inputs.jobs().stream()
                    .filter(job -> job.stage() != Stage.CANCELLED)
                    .map(job -> Keys.job(job.reference()))
                    .filter(told::contains)
                    .forEach(twice::add);
        }

        private boolean isTwice(Job job) {
            return twice.contains(Keys.job(job.reference()));
        }

        private void take(Job job, JobHistory history) {
            Optional<Earlier> earlier = history.earlier();
            boolean withdrawn = earlier.flatMap(Earlier::withdrawn).isPresent();
            if (earlier.filter(Earlier::forgotten).isPresent()) {
                // Nothing of it may come back, neither on paper nor in the ledger.
                findings.add(HistoryCheck.forgotten(job, earlier.get()));
            } else if (isTwice(job)) {
                // Which of the rows the ledger's job is nobody knows, so it stays as it was.
                if (withdrawn) {
                    findings.add(WithdrawnCheck.twice(job, earlier.get()));
                } else if (job.stage() != Stage.CANCELLED) {
                    left.add(job);
                }
            } else if (job.stage() == Stage.CANCELLED) {
                findings.add(
                        WithdrawnCheck.cancelled(job, history, sold.contains(job.reference())));
                if (earlier.isPresent() && !withdrawn) {
                    withdrawals.add(
                            new WithdrawalEntry.Line(
                                    job.reference(),
                                    "cancelled in the list " + request.register().name()));
                }
            } else if (withdrawn && staysWithdrawn(earlier.get())) {
                findings.add(WithdrawnCheck.leftOut(job, earlier.get()));
            } else if (HistoryCheck.isDone(history)
                    && !late.contains(Keys.job(job.reference()))
                    && !request.ledger().again()
                    && !answered) {
                done.computeIfAbsent(earlier.orElseThrow().batch(), b -> new ArrayList<>())
                        .add(job.reference());
            } else {
                prepare(job, history.without(cancelledJobs), withdrawn);
            }
        }

        /** A list that says again that a job is installed means it; an unchanged row does not. */
        private boolean staysWithdrawn(Earlier earlier) {
            return !earlier.withdrawn().orElseThrow().isByList()
                    && earlier.changed().filter(Set::isEmpty).isPresent()
                    && !request.ledger().again();
        }

        private void prepare(Job job, JobHistory history, boolean withdrawn) {
            left.add(job);
            histories.put(job.reference(), history);
            findings.addAll(HistoryCheck.of(job, history, Schemes.KNOWN.hangsOn()));
            if (withdrawn) {
                findings.add(WithdrawnCheck.takenBack(job, history.earlier().orElseThrow()));
            } else if (HistoryCheck.isUntold(history)) {
                untold.add(job.reference());
            }
        }

        /** What is told once of many jobs. */
        private void groups(String file) {
            done.forEach((batch, jobs) -> findings.add(unchanged(file, batch, jobs)));
            if (!untold.isEmpty()) {
                findings.add(untold(file, untold));
            }
        }

        private static Finding untold(String file, List<String> jobs) {
            return Finding.of(
                    FindingCode.JOB_CHANGE_UNTOLD,
                    new Place.InFile(file),
                    "The ledger cannot tell what changed in these jobs since an earlier batch, because an"
                            + " earlier version of the program or another key made its prints of them: "
                            + String.join(", ", jobs)
                            + ".",
                    "Take back their earlier packs, or leave their rows out where nothing changed.");
        }

        private static Finding unchanged(String file, String batch, List<String> jobs) {
            return Finding.of(
                    FindingCode.JOB_UNCHANGED,
                    new Place.InFile(file),
                    "Left out because nothing that the ledger compares changed since batch "
                            + batch
                            + ": "
                            + String.join(", ", jobs)
                            + ".",
                    "Prepare with --again where an ABN, contact data or an account was corrected, which it"
                            + " does not compare.");
        }
    }
}
