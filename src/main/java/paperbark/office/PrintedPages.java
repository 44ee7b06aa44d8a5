package paperbark.office;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import paperbark.batch.PageMap;
import paperbark.ledger.JobVersion;
import paperbark.ledger.Ledger;
import paperbark.output.PageMark;
import paperbark.scan.Place;
import paperbark.scan.Printed;

/** The pages that an office printed, by the maps in its batch folders. */
final class PrintedPages implements Printed {
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
    public List<Place> of(PageMark mark) throws IOException {
        List<Place> places = new ArrayList<>();
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
    Optional<Place> newest(String job, String kind) throws IOException {
        List<JobVersion> all = versions(job);
        for (int i = all.size() - 1; i >= 0; i--) {
            JobVersion version = all.get(i);
            Optional<PageMap.PackPages> pack = pack(job, version);
            Optional<Place> place =
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
    Optional<Place> at(Place like, int packPage) throws IOException {
        return map(like.batch())
                .flatMap(map -> map.of(like.job()))
                .flatMap(pack -> pack.at(packPage))
                .map(paper -> new Place(like.job(), like.version(), like.batch(), paper, packPage));
    }

    /**
     * The batch of the newest version of a job, where it tells to take back an earlier version's
     * paper and holds the new one. What versions between said counts no longer: the facts may have
     * been put back.
     */
    Optional<String> takenBack(String job, int version, String kind) throws IOException {
        List<JobVersion> all = versions(job);
        if (all.isEmpty() || all.get(all.size() - 1).number() <= version) {
            return Optional.empty();
        }
        JobVersion newest = all.get(all.size() - 1);
        return pack(job, newest)
                .filter(pack -> pack.takenBack().contains(kind))
                .map(pack -> newest.batch());
    }

    /** The folder of a batch, also one that was renamed; none where it is not here. */
    Optional<Path> folder(String batch) {
        return folders.of(office, batch).stream().findFirst();
    }

    private static Place place(
            PageMap.PackPages pack, JobVersion version, PageMap.PaperSpan paper, int packPage) {
        return new Place(pack.job(), version.number(), version.batch(), paper, packPage);
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
