package paperbark.answer;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import paperbark.batch.Cases;
import paperbark.batch.Inputs;
import paperbark.batch.Outcome;
import paperbark.batch.Request;
import paperbark.entitlement.Schemes;
import paperbark.finding.Finding;
import paperbark.job.Job;
import paperbark.job.SupposedJob;
import paperbark.job.WhatIf;
import paperbark.output.CaseFile;
import paperbark.sheet.Reading;
import paperbark.value.Nearest;
import paperbark.value.Parsed;

/** Tells how the certificates of one job come about. Reads like a check and writes nothing. */
public final class Explainer {
    private final Request request;

    /** An explainer of the register that the request names. */
    public Explainer(Request request) {
        this.request = request;
    }

    /**
     * The working of a job.
     *
     * @param reference its number, whatever the case; where rows share it, the first is taken
     * @param suppositions words like {@code date=2027-01-04,postcode=3350}; none for the real job
     *     alone
     */
    public Explained explain(String reference, List<String> suppositions) {
        Parsed<WhatIf> whatIf = WhatIf.parse(suppositions);
        if (whatIf instanceof Parsed.Bad<WhatIf> bad) {
            return misunderstood(bad);
        }
        Reading<Inputs> reading = Inputs.read(request);
        if (reading.result().isEmpty()) {
            return new Explained.Refused(Outcome.refused(request, reading.findings()));
        }
        Inputs inputs = reading.result().get();
        Optional<Job> job =
                inputs.jobs().stream()
                        .filter(j -> j.reference().equalsIgnoreCase(reference.strip()))
                        .findFirst();
        return job.map(j -> explain(j, whatIf.toOptional().orElseThrow(), inputs))
                .orElseGet(() -> noSuchJob(reference, inputs));
    }

    private Explained explain(Job job, WhatIf whatIf, Inputs inputs) {
        Parsed<Job> supposed = SupposedJob.of(job, whatIf, inputs.tables(), inputs.rulebook());
        if (supposed instanceof Parsed.Bad<Job> bad) {
            return misunderstood(bad);
        }
        CaseFile file = caseFile(job, inputs);
        return new Explained.Working(
                new Explanation(
                        job.reference(),
                        job.origin().wholeRow().inWords(),
                        side(job, inputs),
                        whatIf.isEmpty()
                                ? Optional.empty()
                                : supposed.toOptional().map(j -> side(j, inputs)),
                        file.comparisons(),
                        file.findings()));
    }

    private Explanation.Side side(Job job, Inputs inputs) {
        Schemes.Assessed assessed = inputs.assess(job, request.run().today());
        return new Explanation.Side(
                JobFacts.of(job),
                Schemes.KNOWN.all().stream()
                        .map(s -> new SchemeWorking(s.name(), assessed.entitlements().of(s.name())))
                        .toList(),
                Finding.inOrder(assessed.findings()));
    }

    private CaseFile caseFile(Job job, Inputs inputs) {
        return new Cases(inputs, "", request).of(job, "");
    }

    private static Explained noSuchJob(String reference, Inputs inputs) {
        return noSuchJob(
                reference,
                inputs.sheet().file(),
                inputs.jobs().stream().map(Job::reference).toList());
    }

    /** Says that a register has no such job, and which number may be meant. */
    static Explained.Misunderstood noSuchJob(
            String reference, String register, List<String> numbers) {
        // Job numbers differ in a digit or two, so the nearest of the same length is worth naming.
        String nearest =
                Nearest.to(reference.toUpperCase(Locale.ROOT), numbers)
                        .map(n -> "The nearest number is \"" + n + "\".")
                        .orElse(
                                "Its job numbers run from \"%s\" to \"%s\"."
                                        .formatted(
                                                numbers.get(0), numbers.get(numbers.size() - 1)));
        return new Explained.Misunderstood(
                "%s has no job \"%s\".".formatted(register, reference), nearest);
    }

    private static Explained misunderstood(Parsed.Bad<?> bad) {
        return new Explained.Misunderstood(bad.fact(), bad.remedy());
    }
}
