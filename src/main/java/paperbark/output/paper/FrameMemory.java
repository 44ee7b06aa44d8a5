package paperbark.output.paper;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import paperbark.output.pdf.PageFrame;

/**
 * Head and foot of pages that were drawn, by their tags and by all of their values but the digits.
 * The first that comes again is compared with what is drawn; tags of which the two differ are
 * always drawn. Safe for use by several threads.
 */
final class FrameMemory {
    // Some 5 KB each; a paper of three pages has three, and some more in long packs.
    private static final int MOST = 2_000;

    private final Map<Key, PageFrame> frames =
            new LinkedHashMap<>(64, 0.75f, true) {
                private static final long serialVersionUID = 1L;

                @Override
                protected boolean removeEldestEntry(Map.Entry<Key, PageFrame> eldest) {
                    return size() > MOST;
                }
            };
    private final Set<String> proven = new HashSet<>();
    private final Set<String> refused = new HashSet<>();

    private record Key(String tags, List<String> alike) {
        static Key of(TagsAndWords head, List<String> values) {
            return new Key(head.tags(), values.stream().map(PageFrame::alike).toList());
        }
    }

    /**
     * What stands in head and foot of a page.
     *
     * @param head their markup
     * @param page of the pack, from 0
     * @param pages of the pack
     * @param paper the pages of the paper
     */
    static List<String> values(TagsAndWords head, int page, int pages, Extent paper) {
        List<String> values = new ArrayList<>();
        head.words().forEach(words -> values.add(TagsAndWords.collapsed(words).strip()));
        values.add(String.valueOf(page + 1));
        values.add(String.valueOf(pages));
        values.add(paper.words(page));
        return values;
    }

    /** Head and foot that can be shown in place of drawing them. */
    synchronized Optional<PageFrame> sure(TagsAndWords head, List<String> values) {
        return proven.contains(head.tags()) && !refused.contains(head.tags())
                ? Optional.ofNullable(frames.get(Key.of(head, values)))
                : Optional.empty();
    }

    /** Whether more is to be learnt of such head and foot. */
    synchronized boolean wants(TagsAndWords head, List<String> values) {
        return !refused.contains(head.tags())
                && !(proven.contains(head.tags()) && frames.containsKey(Key.of(head, values)));
    }

    /** Remembers head and foot of a page that was drawn, or compares them with what is known. */
    void learn(TagsAndWords head, List<String> values, PageFrame drawn) {
        Optional<PageFrame> before;
        synchronized (this) {
            before = Optional.ofNullable(frames.putIfAbsent(Key.of(head, values), drawn));
        }
        if (before.isPresent()) {
            boolean same = before.get().isSame(drawn, values);
            synchronized (this) {
                (same ? proven : refused).add(head.tags());
            }
        }
    }
}
