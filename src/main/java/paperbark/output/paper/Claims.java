package paperbark.output.paper;

import java.util.List;

/**
 * Which standards a document says that it keeps.
 *
 * @param accessible PDF/UA-1 (ISO 14289-1): it can be read aloud
 * @param archivable PDF/A-2a (ISO 19005-2): it will look the same in many years
 */
public record Claims(boolean accessible, boolean archivable) {
    /** What our own papers keep. */
    public static final Claims BOTH = new Claims(true, true);

    /** What a document made of parts with these claims keeps. */
    static Claims ofAll(List<Claims> parts) {
        return new Claims(
                parts.stream().allMatch(Claims::accessible),
                parts.stream().allMatch(Claims::archivable));
    }
}
