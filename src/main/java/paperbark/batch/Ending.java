package paperbark.batch;

/** How a run ended; each ending has one exit code, which never changes. */
public enum Ending {
    DONE(0, "All done."),
    FAULT(1, "Something went wrong inside the program."),
    USAGE(2, "The command was not understood."),
    HELD(10, "Done, but some jobs are held until their findings are mended."),
    REFUSED(11, "The register was refused; nothing was published."),
    ALREADY(
            12,
            "Nothing in this register is new: its jobs were already prepared, or are cancelled."),
    KEPT(13, "Nothing was forgotten: the time for which it must be kept is not over."),
    BUSY(20, "Another program is at work in the same place; nothing was done."),
    UNTRUSTED(21, "The ledger cannot be used; nothing was taken in."),
    DISK(
            22,
            "A file, a folder or the ledger's server could not be written, or was not found. Try again once the reason is gone; what was begun is then finished."),
    SETUP(23, "The firm's tables, rule tables or templates cannot be used; nothing was published.");

    private final int exitCode;
    private final String sentence;

    Ending(int exitCode, String sentence) {
        this.exitCode = exitCode;
        this.sentence = sentence;
    }

    /** The process's exit code. */
    public int exitCode() {
        return exitCode;
    }

    /** One sentence for people. */
    public String sentence() {
        return sentence;
    }
}
