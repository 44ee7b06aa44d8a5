package paperbark.office;

import paperbark.batch.Ending;

/**
 * One thing that was looked at.
 *
 * @param what was looked at, in a word or two
 * @param ending what a run would end with because of it; {@link Ending#DONE} when all is well
 * @param said what was found, and what to do unless all is well
 */
public record Check(String what, Ending ending, String said) {
    static Check well(String what, String said) {
        return new Check(what, Ending.DONE, said);
    }

    static Check disk(String what, String said) {
        return new Check(what, Ending.DISK, said);
    }

    static Check setup(String what, String said) {
        return new Check(what, Ending.SETUP, said);
    }

    /** Whether nothing has to be done. */
    public boolean isWell() {
        return ending == Ending.DONE;
    }
}
