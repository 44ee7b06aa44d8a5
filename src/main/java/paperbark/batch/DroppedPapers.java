package paperbark.batch;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import paperbark.ledger.JobHistory;
import paperbark.ledger.PrintedPaper;
import paperbark.ledger.Replaced;
import paperbark.output.Dropped;
import paperbark.output.Paper;
import paperbark.output.PaperKind;

/** Papers of earlier batches that are to be taken back and in whose place none is printed. */
final class DroppedPapers {
    private DroppedPapers() {}

    /** Those that the job has no place for any more, such as that of a claim given up. */
    static List<Dropped> own(List<Paper> papers, JobHistory history) {
        Set<PaperKind> seen =
                papers.stream().map(Paper::kind).collect(Collectors.toCollection(TreeSet::new));
        List<Dropped> dropped = new ArrayList<>();
        for (PrintedPaper earlier : history.papers()) {
            PaperKind.ofFolder(earlier.kind())
                    .filter(PaperKind::isGivenOut)
                    .filter(seen::add)
                    .map(k -> new Dropped(Optional.empty(), k, earlier.batch(), earlier.day()))
                    .ifPresent(dropped::add);
        }
        return dropped.stream().sorted(Comparator.comparing(Dropped::kind)).toList();
    }

    /** All of another job whose place this one takes, but for what tells of its batch alone. */
    static Stream<Dropped> ofOthers(JobHistory history) {
        return history.replaced().stream()
                .flatMap(paper -> ofOther(paper).stream())
                .sorted(Comparator.comparing(Dropped::kind));
    }

    private static Optional<Dropped> ofOther(Replaced paper) {
        return PaperKind.ofFolder(paper.kind())
                .filter(kind -> !kind.isMadeAnew())
                .map(k -> new Dropped(Optional.of(paper.job()), k, paper.batch(), paper.day()));
    }
}
