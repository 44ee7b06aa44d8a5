package paperbark.answer;

import paperbark.batch.Outcome;

/** What came of asking for the working of one job. */
public sealed interface Explained {

    /**
     * The working.
     *
     * @param explanation the working with everything it rests on
     */
    record Working(Explanation explanation) implements Explained {}

    /**
     * The register or the firm's tables could not be used.
     *
     * @param outcome what was noticed
     */
    record Refused(Outcome outcome) implements Explained {}

    /**
     * A word of the command fits nothing: no such job, name or value.
     *
     * @param fact one sentence of what is wrong
     * @param remedy one sentence of what there is instead
     */
    record Misunderstood(String fact, String remedy) implements Explained {}
}
