package paperbark.office;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import paperbark.batch.PageMap;
import paperbark.batch.Recipients;
import paperbark.ledger.PaperState;
import paperbark.output.LetterView;

/**
 * A job with the papers of one batch that count still.
 *
 * @param job whom it is for and what was put in where
 * @param file its pack
 * @param pack which page is of which paper
 * @param papers how the papers stand that count
 */
record PrintedJob(
        Recipients.OfJob job, Path file, PageMap.PackPages pack, List<PaperState> papers) {

    /** How a paper of that kind stands; none where it counts no longer. */
    Optional<PaperState> state(String kind) {
        return papers.stream().filter(p -> p.kind().equals(kind)).findFirst();
    }

    /** Where that paper is in the pack; none for the owner's copy of it. */
    Optional<PageMap.PaperSpan> span(String kind) {
        return pack.papers().stream().filter(p -> p.kind().equals(kind) && !p.copy()).findFirst();
    }

    /** Whether the batch printed a paper of that kind which counts still. */
    boolean has(String kind) {
        return state(kind).isPresent() && span(kind).isPresent();
    }

    /** What letters tell of the job. */
    LetterView.OfJob told() {
        return new LetterView.OfJob(
                job.job(), job.owner(), job.site(), job.installedOn(), job.heater(), job.serial());
    }
}
