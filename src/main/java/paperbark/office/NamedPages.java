package paperbark.office;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import paperbark.disk.FileNames;
import paperbark.scan.PrintedPage;
import paperbark.scan.SeenPage;

/**
 * Places pages without a mark where the name of their file says, e.g. {@code SB-1032 stc 2.pdf}:
 * the job, the paper, and the page where the paper has several.
 */
final class NamedPages {
    private static final Pattern NAME =
            Pattern.compile(
                    "(.+?)[ _]+([a-z][a-z-]+)(?:[ _]+([1-9][0-9]?))?(?:[ -]\\(?[0-9]+\\)?)?");

    private NamedPages() {}

    /** The name of a file that tells a page's place. */
    static String name(String job, String paper, int page) {
        return job + " " + paper + " " + page + ".pdf";
    }

    /** The pages, those without a mark placed as far as the name tells it. */
    static List<SeenPage> placed(Path file, List<SeenPage> pages, PrintedPages printed)
            throws IOException {
        Matcher name = NAME.matcher(FileNames.stem(file));
        Optional<PrintedPage> first =
                name.matches() ? printed.newest(name.group(1), name.group(2)) : Optional.empty();
        if (first.isEmpty()) {
            return pages;
        }
        long open = pages.stream().filter(NamedPages::isOpen).count();
        int page = name.group(3) == null ? 0 : Integer.parseInt(name.group(3));
        int all = first.get().paper().pages();
        boolean tells = page == 0 ? open == all : open == 1 && page <= all;
        if (!tells) {
            return pages;
        }
        List<SeenPage> placed = new ArrayList<>();
        int next = Math.max(page, 1);
        for (SeenPage seen : pages) {
            placed.add(isOpen(seen) ? seen.at(at(first.get(), next++)) : seen);
        }
        return placed;
    }

    private static boolean isOpen(SeenPage page) {
        return page.place().isEmpty() && !page.empty();
    }

    private static PrintedPage at(PrintedPage first, int page) {
        return new PrintedPage(
                first.job(),
                first.version(),
                first.batch(),
                first.paper(),
                first.paper().first() + page - 1);
    }
}
