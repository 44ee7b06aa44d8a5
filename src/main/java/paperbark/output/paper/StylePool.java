package paperbark.output.paper;

import com.openhtmltopdf.css.style.CalculatedStyle;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;

/**
 * The styles of blocks that are remembered, one for all elements that are alike: a style holds on
 * to the document that it was worked out for.
 */
final class StylePool {
    private final Map<Key, CalculatedStyle> styles = new ConcurrentHashMap<>();

    /** What a style is of. */
    enum Role {
        /** A block of its own. */
        BLOCK,
        /** Lines of a block that holds other blocks too. */
        PART_OF_BLOCK,
        /** Words within a line. */
        WORDS,
        /** Words right in a block. */
        WORDS_OF_BLOCK
    }

    private record Key(int kind, Role role, String part) {}

    /**
     * The style of such elements.
     *
     * @param kind a number for all elements that are alike
     * @param part what of the element it is, such as what stands before it; empty for its own
     * @param own that of one of them
     */
    CalculatedStyle get(int kind, Role role, String part, CalculatedStyle own) {
        return styles.computeIfAbsent(new Key(kind, role, part), key -> own);
    }
}
