package paperbark.output;

import java.util.List;
import java.util.stream.Stream;
import paperbark.finding.Finding;

/**
 * One paper of a pack.
 *
 * @param kind which paper
 * @param variant name of the template variant, {@code default} where the tables name none
 * @param blockedBy the stops that hold it; where there are any, a page that says so takes its place
 */
public record Paper(PaperKind kind, String variant, List<Finding> blockedBy) {

    /** Keeps the findings from being changed. */
    public Paper {
        blockedBy = List.copyOf(blockedBy);
    }

    /** The name on paper and in bookmarks. */
    public String title() {
        return kind.title();
    }

    /** Whether a page of reasons takes its place. */
    public boolean isBlocked() {
        return !blockedBy.isEmpty();
    }

    /** The same paper, held by those of the findings about its own template, too. */
    Paper heldBy(List<Finding> more) {
        List<Finding> own =
                more.stream()
                        .filter(Finding::stops)
                        .filter(f -> f.place().file().startsWith(kind.folder() + "/"))
                        .toList();
        return own.isEmpty()
                ? this
                : new Paper(
                        kind, variant, Stream.concat(blockedBy.stream(), own.stream()).toList());
    }
}
