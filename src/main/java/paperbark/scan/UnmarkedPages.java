package paperbark.scan;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * Places pages that were printed without a mark, such as buyers' own forms: a page is taken for one
 * of the pack that the page before or after it is of, where it looks like that page and, in what
 * differs between them, like no other. Whatever is not clear is left to a person.
 */
public final class UnmarkedPages {
    private static final int MOST_ALIKE = 24;

    private final List<SeenPage> seen;
    private final PrintedForms printed;
    private final Drawings drawings;

    private UnmarkedPages(List<SeenPage> seen, PrintedForms printed) {
        this.seen = seen;
        this.printed = printed;
        this.drawings = new Drawings(printed);
    }

    /**
     * The same pages, those without a mark placed where their neighbours and their drawing tell it.
     *
     * @param pile the file that they are of
     * @throws UnreadablePile when the file cannot be read a second time
     * @throws IOException when what was printed cannot be looked up
     */
    public static List<SeenPage> placed(Path pile, List<SeenPage> seen, PrintedForms printed)
            throws IOException {
        if (seen.stream().noneMatch(SeenPage::isUnmarked)) {
            return seen;
        }
        UnmarkedPages pages = new UnmarkedPages(seen, printed);
        List<SeenPage> placed = new ArrayList<>();
        try (Pile file = Pile.open(pile)) {
            for (int i = 0; i < seen.size(); i++) {
                placed.add(seen.get(i).isUnmarked() ? pages.at(i, file) : seen.get(i));
            }
        }
        return placed;
    }

    private SeenPage at(int index, Pile file) throws IOException {
        Set<PrintedPage> candidates = new LinkedHashSet<>();
        for (int step = -1; step <= 1; step += 2) {
            Optional<PrintedPage> near = near(index, step);
            if (near.isPresent()) {
                candidates.addAll(printed.inPackOf(near.get()));
            }
        }
        SeenPage page = seen.get(index);
        if (candidates.isEmpty()) {
            return page;
        }
        Resemblance resemblance = new Resemblance(file.picture(page.number()), drawings);
        for (PrintedPage candidate : candidates) {
            resemblance.add(candidate);
        }
        Optional<PrintedPage> likeliest = resemblance.likeliest();
        if (likeliest.isPresent() && resemblance.isClear(rivals(likeliest.get(), candidates))) {
            return page.at(likeliest.get(), resemblance.quarterTurns());
        }
        return page;
    }

    /** The nearest page whose place its mark told, in that direction. */
    private Optional<PrintedPage> near(int index, int step) {
        for (int i = index + step; i >= 0 && i < seen.size(); i += step) {
            if (seen.get(i).place().isPresent()) {
                return seen.get(i).place();
            }
        }
        return Optional.empty();
    }

    private Set<PrintedPage> rivals(PrintedPage likeliest, Set<PrintedPage> candidates)
            throws IOException {
        Set<PrintedPage> all = new LinkedHashSet<>(candidates);
        all.addAll(printed.alike(likeliest));
        Set<String> packs = new LinkedHashSet<>();
        for (SeenPage other : seen) {
            if (all.size() < MOST_ALIKE
                    && other.place().isPresent()
                    && packs.add(other.place().get().batch() + "/" + other.place().get().job())) {
                printed.inPackOf(other.place().get()).stream()
                        .filter(p -> isSame(p, likeliest))
                        .forEach(all::add);
            }
        }
        all.remove(likeliest);
        return all;
    }

    private static boolean isSame(PrintedPage one, PrintedPage other) {
        return one.paper().kind().equals(other.paper().kind()) && one.page() == other.page();
    }
}
