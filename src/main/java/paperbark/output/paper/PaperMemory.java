package paperbark.output.paper;

import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import paperbark.output.pdf.Sketch;

/**
 * The papers that were drawn, by what their drawing follows from. The first that comes again of a
 * template is drawn once more and compared; a template of which the two differ is always drawn.
 * Safe for use by several threads.
 */
final class PaperMemory {
    /** {@code -Dpaperbark.draw-all=true} has every paper drawn. */
    private static final String ALL = "paperbark.draw-all";

    // Some 220 KB each; the sample week, made to be odd, has as many.
    private static final int MOST = 150;

    private final boolean drawsAll = Boolean.getBoolean(ALL);
    private final Map<PaperShape.Key, Sketch> sketches =
            new LinkedHashMap<>(64, 0.75f, true) {
                private static final long serialVersionUID = 1L;

                @Override
                protected boolean removeEldestEntry(Map.Entry<PaperShape.Key, Sketch> eldest) {
                    return size() > MOST;
                }
            };
    private final Set<String> proven = new HashSet<>();
    private final Set<String> refused = new HashSet<>();

    /** Whether papers of the template are always drawn. */
    synchronized boolean draws(String template) {
        return drawsAll || refused.contains(template);
    }

    /** What can be shown in place of drawing such a paper. */
    synchronized Optional<Sketch> proven(String template, PaperShape shape) {
        if (!proven.contains(template)) {
            return Optional.empty();
        }
        return Optional.ofNullable(sketches.get(shape.key()));
    }

    /** Remembers a paper that was drawn, and compares it with what was known of it. */
    void learn(String template, PaperShape shape, Sketch drawn) {
        Optional<Sketch> before;
        synchronized (this) {
            before = Optional.ofNullable(sketches.putIfAbsent(shape.key(), drawn));
        }
        if (before.isPresent()) {
            boolean same =
                    before.get().with(shape.words()).isSame(drawn.with(shape.words()))
                            && drawn.with(shape.words()).isSame(drawn);
            synchronized (this) {
                (same ? proven : refused).add(template);
            }
        }
    }
}
