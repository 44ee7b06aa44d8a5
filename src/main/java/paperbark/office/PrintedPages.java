package paperbark.office;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import paperbark.batch.OutputFolder;
import paperbark.batch.PageMap;
import paperbark.ledger.Batches;
import paperbark.ledger.JobVersion;
import paperbark.ledger.Ledger;
import paperbark.output.PageMark;
import paperbark.scan.Printed;
import paperbark.scan.PrintedForms;
import paperbark.scan.PrintedPage;

/** The pages that an office printed, by the maps in its batch folders. */
final class PrintedPages implements Printed, PrintedForms {
    // Enough to tell what of a form is filled in, and what is printed on each.
    private static final int MOST_ALIKE = 8;
    private static final int LOOKED_INTO = 20;

    private final Ledger ledger;
    private final Office office;
    private final BatchFolders folders;
    private final Map<String, Optional<PageMap>> maps = new HashMap<>();
    private final Map<String, List<JobVersion>> versions = new HashMap<>();

    PrintedPages(Ledger ledger, Office office) throws IOException {
        this.ledger = ledger;
        this.office = office;
        this.folders = new BatchFolders(office, ProvedFiles.of(office));
    }

    /** A page that does not tell its batch may be of any version of the job, so nobody guesses. */
    @Override
    public List<PrintedPage> of(PageMark mark) throws IOException {
        List<PrintedPage> places = new ArrayList<>();
        for (JobVersion version : versions(mark.job())) {
            Optional<PageMap.PackPages> pack = pack(mark.job(), version);
            if (pack.isPresent() && isOf(mark, pack.get(), version)) {
                pack.get()
                        .at(mark.page())
                        .filter(paper -> paper.kind().equals(mark.paper()))
                        .map(paper -> place(pack.get(), version, paper, mark.page()))
                        .ifPresent(places::add);
            }
        }
        return places;
    }

    private static boolean isOf(PageMark mark, PageMap.PackPages pack, JobVersion version) {
        String letters = PageMark.batchLetters(pack.job(), version.batch());
        return mark.batch().equals(Optional.of(letters));
    }

    /** The newest paper of a kind that was printed for a job: its first page. */
    Optional<PrintedPage> newest(String job, String kind) throws IOException {
        List<JobVersion> all = versions(job);
        for (int i = all.size() - 1; i >= 0; i--) {
            JobVersion version = all.get(i);
            Optional<PageMap.PackPages> pack = pack(job, version);
            Optional<PrintedPage> place =
                    pack.stream()
                            .flatMap(p -> p.papers().stream())
                            .filter(paper -> paper.kind().equals(kind) && !paper.copy())
                            .map(paper -> place(pack.get(), version, paper, paper.first()))
                            .findFirst();
            if (place.isPresent()) {
                return place;
            }
        }
        return Optional.empty();
    }

    /** Another page of the pack that a page is of; none on a blank back. */
    Optional<PrintedPage> at(PrintedPage like, int packPage) throws IOException {
        return map(like.batch())
                .flatMap(map -> map.of(like.job()))
                .flatMap(pack -> pack.at(packPage))
                .map(
                        paper ->
                                new PrintedPage(
                                        like.job(), like.version(), like.batch(), paper, packPage));
    }

    @Override
    public List<PrintedPage> inPackOf(PrintedPage page) throws IOException {
        List<PrintedPage> all = new ArrayList<>();
        Optional<PageMap.PackPages> pack = map(page.batch()).flatMap(map -> map.of(page.job()));
        for (PageMap.PaperSpan paper : pack.stream().flatMap(p -> p.papers().stream()).toList()) {
            for (int i = 0; paper.unmarked() && i < paper.pages(); i++) {
                all.add(
                        new PrintedPage(
                                page.job(),
                                page.version(),
                                page.batch(),
                                paper,
                                paper.first() + i));
            }
        }
        return all;
    }

    @Override
    public List<PrintedPage> alike(PrintedPage page) throws IOException {
        List<PrintedPage> all = new ArrayList<>();
        for (JobVersion version : versions(page.job())) {
            add(all, page, page.job(), version);
        }
        addOthers(all, page, page.batch());
        String place = OutputFolder.known(office.packs()).orElse("");
        for (Batches.BatchState batch : ledger.batches().newest(LOOKED_INTO, place)) {
            if (!batch.name().equals(page.batch())) {
                addOthers(all, page, batch.name());
            }
        }
        return all;
    }

    /** Pages of other jobs of a batch, as long as there are few. */
    private void addOthers(List<PrintedPage> all, PrintedPage page, String batch)
            throws IOException {
        List<PageMap.PackPages> packs = map(batch).map(PageMap::jobs).orElse(List.of());
        for (int i = 0; i < packs.size() && all.size() < MOST_ALIKE; i++) {
            String job = packs.get(i).job();
            for (JobVersion version : versions(job)) {
                if (version.batch().equals(batch) && !job.equals(page.job())) {
                    add(all, page, job, version);
                }
            }
        }
    }

    /** The same page of the paper of another job or version, if that was printed without a mark. */
    private void add(List<PrintedPage> all, PrintedPage page, String job, JobVersion version)
            throws IOException {
        pack(job, version).stream()
                .flatMap(pack -> pack.papers().stream())
                .filter(PageMap.PaperSpan::unmarked)
                .filter(paper -> paper.kind().equals(page.paper().kind()))
                .filter(paper -> page.page() <= paper.pages())
                .map(
                        paper ->
                                new PrintedPage(
                                        job,
                                        version.number(),
                                        version.batch(),
                                        paper,
                                        paper.first() + page.page() - 1))
                .filter(place -> !place.equals(page))
                .forEach(all::add);
    }

    @Override
    public Optional<Path> pack(PrintedPage page) throws IOException {
        Optional<JobVersion> version =
                versions(page.job()).stream().filter(v -> v.number() == page.version()).findFirst();
        if (version.isEmpty()) {
            return Optional.empty();
        }
        return folders.of(office, page.batch()).stream()
                .map(folder -> folder.resolve(version.get().pack()))
                .filter(Files::isRegularFile)
                .findFirst();
    }

    /** The folder of a batch, also one that was renamed; none where it is not here. */
    Optional<Path> folder(String batch) {
        return folders.of(office, batch).stream().findFirst();
    }

    private static PrintedPage place(
            PageMap.PackPages pack, JobVersion version, PageMap.PaperSpan paper, int packPage) {
        return new PrintedPage(pack.job(), version.number(), version.batch(), paper, packPage);
    }

    private List<JobVersion> versions(String job) {
        return versions.computeIfAbsent(job, ledger::versions);
    }

    private Optional<PageMap.PackPages> pack(String job, JobVersion version) throws IOException {
        return map(version.batch()).flatMap(map -> map.of(job));
    }

    private Optional<PageMap> map(String batch) throws IOException {
        if (!maps.containsKey(batch)) {
            Optional<PageMap> map = Optional.empty();
            for (Path folder : folders.of(office, batch)) {
                map = map.isPresent() ? map : PageMap.in(folder);
            }
            maps.put(batch, map);
        }
        return maps.get(batch);
    }
}
