package paperbark.office;

import java.io.IOException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import paperbark.scan.PrintedPage;
import paperbark.scan.SeenPage;

/**
 * What pages without a mark may be, such as a buyer's own form: those that lie in a pack between
 * the page before and the page after, where there are just so many. A person decides; a shuffled
 * pile looks the same.
 */
final class Between {
    private Between() {}

    /** The places that open pages may have, by their number in the pile. */
    static Map<Integer, PrintedPage> of(List<SeenPage> pages, PrintedPages printed)
            throws IOException {
        Map<Integer, PrintedPage> places = new HashMap<>();
        List<SeenPage> open = new ArrayList<>();
        Optional<PrintedPage> before = Optional.empty();
        for (SeenPage page : pages) {
            if (page.place().isPresent()) {
                if (before.isPresent()) {
                    suggest(open, before.get(), page.place().get(), printed, places);
                }
                open.clear();
                before = page.place();
            } else if (!page.empty()) {
                open.add(page);
            }
        }
        return places;
    }

    private static void suggest(
            List<SeenPage> open,
            PrintedPage before,
            PrintedPage after,
            PrintedPages printed,
            Map<Integer, PrintedPage> places)
            throws IOException {
        if (!before.job().equals(after.job()) || !before.batch().equals(after.batch())) {
            return;
        }
        List<PrintedPage> between = new ArrayList<>();
        for (int page = before.packPage() + 1; page < after.packPage(); page++) {
            printed.at(before, page).ifPresent(between::add);
        }
        if (between.size() == open.size()) {
            for (int i = 0; i < open.size(); i++) {
                places.put(open.get(i).number(), between.get(i));
            }
        }
    }
}
