package paperbark.output;

import java.util.ArrayList;
import java.util.List;

/**
 * The files of a print run. A week is one file; a far larger batch is spread over several, so that
 * what is in memory while one is written does not grow with the batch.
 */
public final class PrintRunFiles {
    /** How many packs one file holds at most. */
    public static final int MOST_PACKS = 100;

    private PrintRunFiles() {}

    /** The files for so many packs, in order; one where there is none. */
    public static List<RunFile> of(int packs) {
        boolean several = packs > MOST_PACKS;
        List<RunFile> files = new ArrayList<>();
        files.add(new RunFile("print-run.pdf", several ? "Print run, part 1" : "Print run"));
        for (int part = 2; (part - 1) * MOST_PACKS < packs; part++) {
            files.add(new RunFile("print-run-" + part + ".pdf", "Print run, part " + part));
        }
        return files;
    }

    /** The packs of the file at the given place, from 0, out of all in order. */
    public static <T> List<T> part(List<T> packs, int place) {
        int from = place * MOST_PACKS;
        return packs.subList(from, Math.min(from + MOST_PACKS, packs.size()));
    }
}
