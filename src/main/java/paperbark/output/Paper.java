package paperbark.output;

import java.util.List;
import java.util.Locale;
import paperbark.finding.Finding;

/**
 * One paper of a pack.
 *
 * @param kind which paper
 * @param variant name of the template variant, {@code default} where the tables name none
 * @param blockedBy the stops that hold it; where there are any, it is not in the pack and the cover
 *     says why
 */
public record Paper(PaperKind kind, String variant, List<Finding> blockedBy) {
    /** The folder of the buyers' and makers' own forms within the template folder. */
    public static final String FORMS = "forms";

    /** Keeps the findings from being changed. */
    public Paper {
        blockedBy = List.copyOf(blockedBy);
    }

    /** The name on paper and in bookmarks. */
    public String title() {
        return kind.title();
    }

    /** Where it begins in the pack: links to {@code #leaf-} and this lead there. */
    public String anchor() {
        return kind.title().toLowerCase(Locale.ROOT).replaceAll("[^a-z]+", "-");
    }

    /** Whether a stop holds it. */
    public boolean isBlocked() {
        return !blockedBy.isEmpty();
    }

    /** The same paper, held by these stops; the same as it is where there are none. */
    public Paper heldBy(List<Finding> stops) {
        return stops.isEmpty() ? this : new Paper(kind, variant, stops);
    }
}
