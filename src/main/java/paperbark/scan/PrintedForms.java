package paperbark.scan;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;

/** Knows the pages that were printed without a mark, such as buyers' own forms. */
public interface PrintedForms {
    /**
     * The pages without a mark in the pack that a page is of.
     *
     * @throws IOException when it cannot be looked up
     */
    List<PrintedPage> inPackOf(PrintedPage page) throws IOException;

    /**
     * Other pages without a mark that a page may be taken for: the same page of the paper, of other
     * versions of the job and of other jobs.
     *
     * @throws IOException when it cannot be looked up
     */
    List<PrintedPage> alike(PrintedPage page) throws IOException;

    /**
     * The pack that a page was printed in; empty where it is not here any more.
     *
     * @throws IOException when it cannot be looked up
     */
    Optional<Path> pack(PrintedPage page) throws IOException;
}
