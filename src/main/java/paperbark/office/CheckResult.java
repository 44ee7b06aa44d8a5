package paperbark.office;

import paperbark.batch.Ending;

/**
 * One thing that was looked at.
 *
 * @param what was looked at, in a word or two
 * @param ending what a run would end with because of it; {@link Ending#DONE} when all is well
 * @param said what was found, and what to do unless all is well
 */
public record CheckResult(String what, Ending ending, String said) {
    static CheckResult well(String what, String said) {
        return new CheckResult(what, Ending.DONE, said);
    }

    static CheckResult disk(String what, String said) {
        return new CheckResult(what, Ending.DISK, said);
    }

    static CheckResult setup(String what, String said) {
        return new CheckResult(what, Ending.SETUP, said);
    }

    /** Whether nothing has to be done. */
    public boolean isWell() {
        return ending == Ending.DONE;
    }
}
