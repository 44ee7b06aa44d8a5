package paperbark.golden;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.interactive.documentnavigation.outline.PDOutlineItem;
import org.apache.pdfbox.text.PDFTextStripper;

/**
 * One paper of a published pack, found by its bookmark.
 *
 * @param title the bookmark
 * @param pages its pages, counted from 1, without a blank back
 */
record PackPaper(String title, List<Integer> pages) {

    /** The papers of a pack in their order. */
    static List<PackPaper> of(PDDocument pack) throws IOException {
        List<String> titles = new ArrayList<>();
        List<Integer> starts = new ArrayList<>();
        for (PDOutlineItem item : pack.getDocumentCatalog().getDocumentOutline().children()) {
            PDPage page = item.findDestinationPage(pack);
            titles.add(item.getTitle());
            starts.add(pack.getPages().indexOf(page) + 1);
        }
        starts.add(pack.getNumberOfPages() + 1);
        List<PackPaper> papers = new ArrayList<>();
        for (int i = 0; i < titles.size(); i++) {
            List<Integer> pages = new ArrayList<>();
            for (int page = starts.get(i); page < starts.get(i + 1); page++) {
                if (!text(pack, page).isBlank()) {
                    pages.add(page);
                }
            }
            papers.add(new PackPaper(titles.get(i), pages));
        }
        return papers;
    }

    /** A name for files: the title in small letters. */
    String slug() {
        return title.toLowerCase(Locale.ROOT)
                .replace("'", "")
                .replaceAll("[^a-z0-9]+", "-")
                .replaceAll("^-|-$", "");
    }

    /** What a reader takes from its pages, a line a line. */
    String text(PDDocument pack) throws IOException {
        StringBuilder text = new StringBuilder();
        for (int page : pages) {
            text.append("== page ").append(page).append('\n').append(text(pack, page));
        }
        return text.toString();
    }

    /** What holds a pack together: title, language, number of pages, bookmarks. */
    static String structure(PDDocument pack) throws IOException {
        String papers =
                of(pack).stream()
                        .map(p -> p.title() + ": " + p.pages())
                        .collect(Collectors.joining("\n"));
        return "title: %s%nlanguage: %s%npages: %d%n%s%n"
                .formatted(
                        pack.getDocumentInformation().getTitle(),
                        pack.getDocumentCatalog().getLanguage(),
                        pack.getNumberOfPages(),
                        papers)
                .replace("\r", "");
    }

    /** The first line in which two texts differ; empty when they do not. */
    static String firstDifference(String expected, String actual) {
        List<String> was = expected.lines().toList();
        List<String> is = actual.lines().toList();
        return IntStream.range(0, Math.max(was.size(), is.size()))
                .filter(i -> !line(was, i).equals(line(is, i)))
                .mapToObj(
                        i ->
                                "line %d was \"%s\" and is \"%s\""
                                        .formatted(i + 1, line(was, i), line(is, i)))
                .findFirst()
                .orElse("");
    }

    private static String line(List<String> lines, int i) {
        return i < lines.size() ? lines.get(i) : "(no such line)";
    }

    private static String text(PDDocument pack, int page) throws IOException {
        PDFTextStripper stripper = new PDFTextStripper();
        stripper.setSortByPosition(true);
        stripper.setStartPage(page);
        stripper.setEndPage(page);
        stripper.setLineSeparator("\n");
        return stripper.getText(pack)
                .lines()
                .map(String::stripTrailing)
                .collect(Collectors.joining("\n", "", "\n"));
    }
}
