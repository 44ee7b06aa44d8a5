package paperbark.output.paper;

import java.util.List;

/**
 * Which standards a document says that it keeps.
 *
 * @param accessible PDF/UA-1 (ISO 14289-1): it can be read aloud
 * @param archivable PDF/A-2a (ISO 19005-2): it will look the same in many years
 */
public record Conformance(boolean accessible, boolean archivable) {
    /** What our own papers keep. */
    public static final Conformance BOTH = new Conformance(true, true);

    /** What a document made of parts with these claims keeps. */
    static Conformance ofAll(List<Conformance> parts) {
        return new Conformance(
                parts.stream().allMatch(Conformance::accessible),
                parts.stream().allMatch(Conformance::archivable));
    }
}
