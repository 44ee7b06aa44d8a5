package paperbark.batch;

/** Is told how far long work has come. */
@FunctionalInterface
public interface Progress {

    /**
     * Some work is done.
     *
     * @param what in words, e.g. {@code packs}
     * @param done how many
     * @param of how many in all
     */
    void at(String what, int done, int of);
}
