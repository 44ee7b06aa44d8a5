package paperbark.scan;

import java.io.IOException;
import java.util.List;
import paperbark.output.PageMark;

/** Knows what was printed. */
public interface Printed {
    /**
     * The places that a mark may mean: one where it is told, none where no such page was printed.
     * Asked by one thread at a time.
     *
     * @throws IOException when it cannot be looked up
     */
    List<PrintedPage> of(PageMark mark) throws IOException;
}
