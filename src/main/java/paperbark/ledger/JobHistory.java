package paperbark.ledger;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import paperbark.value.SchemeName;

/**
 * What the ledger knows that concerns a job.
 *
 * @param earlier the job itself, when it was in a batch before
 * @param underWay the job's own claims that the buyer has
 * @param conflicts claims of other jobs
 * @param claims its own claims and those of the job that it corrects, standing or not
 * @param papers its papers that went out and were not withdrawn, newest first
 * @param replaced the papers of other jobs whose place it takes
 */
public record JobHistory(
        Optional<Earlier> earlier,
        List<UnderWay> underWay,
        List<Conflict> conflicts,
        List<ClaimState> claims,
        List<PrintedPaper> papers,
        List<Replaced> replaced) {
    /** Nothing known. */
    public static final JobHistory NONE =
            new JobHistory(Optional.empty(), List.of(), List.of(), List.of(), List.of(), List.of());

    /** Keeps the lists from being changed. */
    public JobHistory {
        underWay = List.copyOf(underWay);
        conflicts = List.copyOf(conflicts);
        claims = List.copyOf(claims);
        papers = List.copyOf(papers);
        replaced = List.copyOf(replaced);
    }

    /** The same without what collides with jobs that are cancelled. */
    public JobHistory without(Set<String> cancelled) {
        Set<String> keys = cancelled.stream().map(Keys::job).collect(Collectors.toSet());
        return new JobHistory(
                earlier,
                underWay,
                conflicts.stream().filter(c -> !keys.contains(Keys.job(c.job()))).toList(),
                claims,
                papers,
                replaced);
    }

    /** Numbers of the other jobs whose place it takes. */
    public Set<String> replacedJobs(String job) {
        return Stream.concat(
                        claims.stream().map(ClaimState::job), replaced.stream().map(Replaced::job))
                .filter(other -> !Keys.job(other).equals(Keys.job(job)))
                .collect(Collectors.toCollection(TreeSet::new));
    }

    /** The job's own claims that the buyer has, by scheme. */
    public Map<SchemeName, ClaimState> withBuyer() {
        return underWay.stream()
                .map(UnderWay::claim)
                .collect(Collectors.toMap(ClaimState::scheme, claim -> claim));
    }

    /** The job's own claims that stand. */
    public List<ClaimState> standing(String job) {
        return claims.stream()
                .filter(c -> c.active() && Keys.job(c.job()).equals(Keys.job(job)))
                .toList();
    }
}
