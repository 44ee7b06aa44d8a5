package paperbark.scan;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import paperbark.batch.PageMap;

/** The forms without a mark of one batch, as its page map has them. */
record PilesForms(Path batch, PageMap map) implements PrintedForms {

    @Override
    public List<PrintedPage> inPackOf(PrintedPage page) {
        return of(page.job());
    }

    private List<PrintedPage> of(String job) {
        List<PrintedPage> all = new ArrayList<>();
        for (PageMap.PaperSpan paper : map.of(job).orElseThrow().papers()) {
            for (int i = 0; paper.unmarked() && i < paper.pages(); i++) {
                all.add(new PrintedPage(job, 1, map.batch(), paper, paper.first() + i));
            }
        }
        return all;
    }

    @Override
    public List<PrintedPage> alike(PrintedPage page) {
        return map.jobs().stream()
                .filter(pack -> !pack.job().equals(page.job()))
                .flatMap(pack -> of(pack.job()).stream())
                .filter(p -> p.paper().kind().equals(page.paper().kind()))
                .filter(p -> p.page() == page.page())
                .limit(8)
                .toList();
    }

    @Override
    public Optional<Path> pack(PrintedPage page) {
        Path pack = batch.resolve("packs/" + page.job() + ".pdf");
        return Optional.of(pack).filter(Files::isRegularFile);
    }
}
