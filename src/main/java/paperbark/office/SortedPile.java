package paperbark.office;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import paperbark.disk.Disk;
import paperbark.disk.FileNames;
import paperbark.fault.FaultPoint;
import paperbark.finding.Finding;
import paperbark.ledger.Ledger;
import paperbark.ledger.ScanBook;
import paperbark.ledger.ScanEntry;
import paperbark.scan.PagesPdf;
import paperbark.scan.PileReader;
import paperbark.scan.PrintedPage;
import paperbark.scan.ReturnedPaper;
import paperbark.scan.SeenPage;
import paperbark.scan.UnmarkedPages;
import paperbark.scan.UnreadablePile;

/**
 * A pile sorted into papers, with everything made that is to appear under {@code signed}.
 *
 * @param papers the papers that the pile has pages of
 * @param entered the pages as the ledger takes them in
 * @param byLooks how many pages without a mark were placed by their neighbours and looks
 * @param unplaced how many pages a person has to place
 * @param empty how many pages have nothing on them
 * @param findings what people should look at
 */
record SortedPile(
        List<ReturnedPaper> papers,
        List<ScanEntry.Page> entered,
        int byLooks,
        int unplaced,
        int empty,
        List<Finding> findings) {

    /** Whether somebody has to look. */
    boolean asks() {
        return ScanDesk.asks(findings);
    }

    /** What came of the pile, one line. */
    String said() {
        return entered.size()
                + (entered.size() == 1 ? " page of " : " pages of ")
                + papers.size()
                + (papers.size() == 1 ? " paper" : " papers")
                + " sorted into signed/"
                + (byLooks > 0 ? ", " + byLooks + " without a mark by looks and neighbours" : "")
                + (empty > 0 ? ", " + empty + " empty" : "")
                + (unplaced > 0 ? ", " + unplaced + " to be placed by a person" : "")
                + ". "
                + findings.size()
                + (findings.size() == 1 ? " finding." : " findings.");
    }

    /**
     * Reads a pile and makes the files.
     *
     * @param out where they are made, by their paths below {@code signed}
     */
    static SortedPile of(Path source, Office office, Ledger ledger, Path out, Attendant.World world)
            throws IOException {
        PrintedPages printed = new PrintedPages(ledger, office);
        int cores = Runtime.getRuntime().availableProcessors();
        List<SeenPage> read = PileReader.read(source, printed, cores);
        List<SeenPage> named = NamedPages.placed(source, read, printed);
        List<SeenPage> pages = UnmarkedPages.placed(source, named, printed);
        List<ReturnedPaper> papers = papers(pages);
        String name = source.getFileName().toString();
        ScanFindings findings = new ScanFindings(name, new ScanBook(ledger));
        List<ScanEntry.Page> entered = new ArrayList<>();
        for (ReturnedPaper paper : papers) {
            findings.of(paper);
            write(source, office, paper, out);
            paper.pages().forEach(page -> entered.add(entered(paper, page)));
        }
        int unplaced = 0;
        Numbers numbers = new Numbers(office);
        Map<Integer, PrintedPage> maybe = Between.of(pages, printed);
        for (SeenPage page : pages) {
            if (page.place().isEmpty() && !page.empty()) {
                String number = numbers.next();
                write(out.resolve("to-place").resolve(number), to -> lone(source, page, to));
                findings.unplaced(page, number, Optional.ofNullable(maybe.get(page.number())));
                unplaced++;
            }
        }
        int empty = (int) pages.stream().filter(SeenPage::empty).count();
        long open = pages.stream().filter(SeenPage::isUnmarked).count();
        int byLooks = (int) (named.stream().filter(SeenPage::isUnmarked).count() - open);
        SortedPile sorted =
                new SortedPile(
                        papers, List.copyOf(entered), byLooks, unplaced, empty, findings.all());
        if (!sorted.findings().isEmpty()) {
            report(source, office, sorted, out, world);
        }
        return sorted;
    }

    private static void report(
            Path source, Office office, SortedPile sorted, Path out, Attendant.World world)
            throws IOException {
        String name = source.getFileName().toString();
        byte[] report = ScanReport.of(name, sorted, world).getBytes(StandardCharsets.UTF_8);
        String file = world.today().get() + "-" + FileNames.slug(FileNames.stem(source));
        Path free = Office.free(office.signed(), file + ".html");
        write(out.resolve(free.getFileName().toString()), to -> to.write(report));
    }

    private static List<ReturnedPaper> papers(List<SeenPage> pages) {
        Map<String, List<SeenPage>> byPaper = new LinkedHashMap<>();
        for (SeenPage page : pages) {
            page.place()
                    .ifPresent(
                            p ->
                                    byPaper.computeIfAbsent(
                                                    p.job()
                                                            + "|"
                                                            + p.batch()
                                                            + "|"
                                                            + p.paper().first(),
                                                    k -> new ArrayList<>())
                                            .add(page));
        }
        return byPaper.values().stream()
                .map(
                        of -> {
                            PrintedPage first = of.get(0).place().orElseThrow();
                            return new ReturnedPaper(
                                    first.job(), first.version(), first.batch(), first.paper(), of);
                        })
                .toList();
    }

    private static ScanEntry.Page entered(ReturnedPaper paper, SeenPage page) {
        return new ScanEntry.Page(
                page.number(),
                paper.job(),
                paper.version(),
                paper.kind(),
                page.place().orElseThrow().page(),
                paper.paper().pages(),
                page.blanks());
    }

    /** One file a paper. */
    private static void write(Path source, Office office, ReturnedPaper paper, Path out)
            throws IOException {
        Path before = SignedFile.of(office, paper.job(), paper.paper().title(), paper.version());
        Path there = office.signed().relativize(before);
        String said = paper.paper().title() + ", job " + paper.job();
        try {
            Optional<Path> earlier = Files.exists(before) ? Optional.of(before) : Optional.empty();
            write(
                    out.resolve(there),
                    to -> PagesPdf.write(source, paper.pages(), earlier, said, to));
        } catch (UnreadablePile damaged) {
            // Whatever lies there by that name stays as it is.
            Path free = Office.free(before.getParent(), before.getFileName().toString());
            write(
                    out.resolve(there).resolveSibling(free.getFileName()),
                    to -> PagesPdf.write(source, paper.pages(), Optional.empty(), said, to));
        }
    }

    private static void lone(Path source, SeenPage page, OutputStream to) throws IOException {
        PagesPdf.write(source, List.of(page), Optional.empty(), "A page to be placed", to);
    }

    private static void write(Path file, Disk.Content content) throws IOException {
        Disk.makeFolders(file.getParent());
        Disk.write(file, content);
        FaultPoint.SORTED.reach();
    }

    /** Names for pages that nobody could place: never one that was there before. */
    private static final class Numbers {
        private final Path folder;
        private int last;

        Numbers(Office office) throws IOException {
            folder = office.toPlace();
            for (Path file : Office.list(folder)) {
                String digits = file.getFileName().toString().replaceAll("\\D", "");
                last =
                        digits.isEmpty() || digits.length() > 8
                                ? last
                                : Math.max(last, Integer.parseInt(digits));
            }
        }

        String next() {
            last++;
            return "page-" + last + ".pdf";
        }
    }
}
