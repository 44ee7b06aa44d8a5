package paperbark.scan;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import paperbark.batch.PageMap;
import paperbark.output.PageMark;
import paperbark.output.paper.SignBox;

/** Reads made piles and counts how much of them was seen as it is. */
final class PileScore {
    int pages;
    int right;
    int asked;
    int empty;
    int blankBoxes;
    int blankFound;
    int signedBoxes;
    int falseAlarms;
    int unlooked;
    int forms;
    int formsPlaced;
    double seconds;
    final List<String> wrong = new ArrayList<>();
    final List<String> doubtful = new ArrayList<>();

    private static final double CORES = 2;

    private final Path batch;
    private final PageMap map;

    PileScore(Path batch) throws IOException {
        this.batch = batch;
        this.map = PageMap.in(batch).orElseThrow();
    }

    /** Makes a pile of some pages, reads it, and counts. */
    void pile(Path file, long seed, int howMany, int... resolutions) throws IOException {
        List<PileMaker.Truth> truths = made(file, seed, maker -> maker.some(howMany), resolutions);
        long before = processorNanos();
        List<SeenPage> seen = PileReader.read(file, this::places, 2);
        seconds += (processorNanos() - before) / CORES / 1e9;
        for (int i = 0; i < truths.size(); i++) {
            count(truths.get(i), seen.get(i));
        }
    }

    /** The same with so many forms without a mark, their neighbours beside them or anywhere. */
    void forms(Path file, long seed, int howMany, boolean shuffled, int... resolutions)
            throws IOException {
        List<PileMaker.Truth> truths =
                made(file, seed, maker -> maker.aboutForms(howMany, shuffled), resolutions);
        long before = processorNanos();
        List<SeenPage> read = PileReader.read(file, this::places, 2);
        List<SeenPage> seen = UnmarkedPages.placed(file, read, new PilesForms(batch, map));
        seconds += (processorNanos() - before) / CORES / 1e9;
        for (int i = 0; i < truths.size(); i++) {
            if (isForm(truths.get(i))) {
                forms++;
                formsPlaced += seen.get(i).place().isPresent() ? 1 : 0;
                if (seen.get(i).place().isEmpty()) {
                    doubtful.add("not placed: " + truths.get(i));
                }
            }
            count(truths.get(i), seen.get(i));
        }
    }

    private boolean isForm(PileMaker.Truth truth) {
        return map.of(truth.job())
                .flatMap(job -> job.at(truth.packPage()))
                .filter(PageMap.PaperSpan::unmarked)
                .isPresent();
    }

    /** Which pages of the run a pile is made of. */
    private interface Choice {
        List<Integer> of(PileMaker maker) throws IOException;
    }

    private List<PileMaker.Truth> made(Path file, long seed, Choice choice, int... resolutions)
            throws IOException {
        List<PileMaker.Truth> truths = new ArrayList<>();
        try (PDDocument run = Loader.loadPDF(batch.resolve("print-run.pdf").toFile());
                PDDocument pile = new PDDocument()) {
            PileMaker maker = new PileMaker(run, map, seed);
            for (int page : choice.of(maker)) {
                truths.add(maker.add(pile, page, maker.anyHarm(resolutions)));
            }
            pile.save(file.toFile());
        }
        return truths;
    }

    /** Time of all threads, since others may be at work on the machine too. */
    private static long processorNanos() {
        return ((com.sun.management.OperatingSystemMXBean)
                        java.lang.management.ManagementFactory.getOperatingSystemMXBean())
                .getProcessCpuTime();
    }

    List<PrintedPage> places(PageMark mark) {
        Optional<PageMap.PackPages> job = map.of(mark.job());
        boolean same =
                mark.batch().equals(Optional.of(PageMark.batchLetters(mark.job(), map.batch())));
        return job.filter(j -> same).flatMap(j -> j.at(mark.page())).stream()
                .map(p -> new PrintedPage(mark.job(), 1, map.batch(), p, mark.page()))
                .toList();
    }

    private void count(PileMaker.Truth truth, SeenPage seen) {
        pages++;
        if (seen.place().isEmpty()) {
            if (seen.empty() != truth.isEmpty()) {
                (seen.empty() ? wrong : doubtful).add(truth + " was seen as " + seen);
            }
            if (seen.empty()) {
                empty++;
            } else {
                asked++;
            }
            return;
        }
        PrintedPage place = seen.place().get();
        if (!place.job().equals(truth.job()) || place.packPage() != truth.packPage()) {
            wrong.add(truth + " was seen as " + place);
            return;
        }
        right++;
        if (!place.paper().unmarked()) {
            boxes(truth, seen);
        }
    }

    private void boxes(PileMaker.Truth truth, SeenPage seen) {
        Set<SignBox> told = new HashSet<>();
        seen.blank().forEach(b -> told.add(b.box()));
        if (!seen.looked()) {
            unlooked++;
            doubtful.add("not looked into: " + truth);
        }
        for (SignBox box : truth.blank()) {
            blankBoxes++;
            if (told.contains(box)) {
                blankFound++;
            } else {
                doubtful.add("not seen to be blank: " + box + " of " + truth);
            }
        }
        for (SignBox box : truth.signed()) {
            signedBoxes++;
            if (told.contains(box)) {
                falseAlarms++;
                doubtful.add("false alarm: " + box + " of " + truth);
            }
        }
    }

    @Override
    public String toString() {
        return "%d of %d forms; %d pages: %d right, %d empty, %d asked, %d wrong; %d of %d blank boxes, %d false alarms in %d, %d pages not looked into; %.1f pages a second"
                .formatted(
                        formsPlaced,
                        forms,
                        pages,
                        right,
                        empty,
                        asked,
                        wrong.size(),
                        blankFound,
                        blankBoxes,
                        falseAlarms,
                        signedBoxes,
                        unlooked,
                        pages / seconds);
    }
}
