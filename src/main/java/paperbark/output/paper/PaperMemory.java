package paperbark.output.paper;

import com.openhtmltopdf.render.Box;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.Iterator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.ToIntFunction;
import org.w3c.dom.Element;

/**
 * The papers that were laid out and drawn, by their templates and tags. The first that comes again
 * of a template is drawn once more and compared; a template of which the two differ is always
 * drawn. Safe for use by several threads.
 */
final class PaperMemory {
    /** {@code -Dpaperbark.draw-all=true} has every paper laid out and drawn. */
    private static final String ALL = "paperbark.draw-all";

    // Some 300 KB each at most; the sample week, made to be odd, has some 160 that differ.
    private static final int MOST = 300;

    // Of the same tags, such as with a name on one line and on two, and a model number likewise.
    private static final int MOST_ALIKE = 16;

    private final boolean drawsAll = drawsAll();
    private final Map<Key, List<KnownPaper>> papers = new LinkedHashMap<>(64, 0.75f, true);
    private final StylePool styles = new StylePool();
    private final FrameMemory frames = new FrameMemory();
    private final Set<String> proven = new HashSet<>();
    private final Set<String> refused = new HashSet<>();
    private Optional<FittingRoom> room = Optional.empty();
    private int count;

    private record Key(String template, String tags) {}

    /** Whether every paper is laid out and drawn. */
    static boolean drawsAll() {
        return Boolean.getBoolean(ALL);
    }

    /** Whether papers of the template are always drawn. */
    synchronized boolean draws(String template) {
        return drawsAll || refused.contains(template);
    }

    /** Head and foot of the pages of such papers. */
    FrameMemory frames() {
        return frames;
    }

    /** What the layout of a paper will give, where one like it was laid out before. */
    synchronized Optional<PaperMarkup.Foreseen> foresee(String template, TagsAndWords wording) {
        if (draws(template)) {
            return Optional.empty();
        }
        List<KnownPaper> alike = papers.getOrDefault(new Key(template, wording.tags()), List.of());
        try {
            Optional<ReadyPaper> best = Optional.empty();
            for (KnownPaper paper : alike) {
                Optional<ReadyPaper> ready = paper.with(wording.words(), room());
                boolean settled = ready.map(ReadyPaper::settled).orElse(false);
                best = settled || best.isEmpty() ? ready : best;
                if (settled) {
                    break;
                }
            }
            boolean sure = proven.contains(template);
            return best.map(r -> new PaperMarkup.Foreseen(r, sure));
        } catch (RuntimeException e) {
            // What is remembered must never cost a job its papers.
            refused.add(template);
            return Optional.empty();
        }
    }

    private FittingRoom room() {
        if (room.isEmpty()) {
            room = Optional.of(new FittingRoom());
        }
        return room.get();
    }

    /** Compares what a layout gave with what was foreseen of it. */
    synchronized void compare(String template, ReadyPaper foreseen, ReadyPaper drawn) {
        (foreseen.isSame(drawn) ? proven : refused).add(template);
    }

    /**
     * Remembers a paper that was laid out.
     *
     * @param leaf the box around it
     * @param top where its first page begins
     * @param kinds knows which elements are alike
     */
    void learn(
            String template,
            TagsAndWords wording,
            PaperShape shape,
            ReadyPaper drawn,
            Box leaf,
            int top,
            ToIntFunction<Element> kinds) {
        KnownPaper.of(wording, shape, drawn, leaf, top, kinds, styles)
                .ifPresent(paper -> keep(new Key(template, wording.tags()), paper));
    }

    private synchronized void keep(Key key, KnownPaper paper) {
        List<KnownPaper> alike = papers.computeIfAbsent(key, k -> new ArrayList<>());
        count++;
        alike.add(paper);
        if (alike.size() > MOST_ALIKE) {
            count--;
            alike.remove(0);
        }
        for (Iterator<List<KnownPaper>> eldest = papers.values().iterator(); count > MOST; ) {
            count -= eldest.next().size();
            eldest.remove();
        }
    }
}
