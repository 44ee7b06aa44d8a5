package paperbark.office;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * A rename outlives a cut of power only when what it renames was on the disk before, so the order
 * of writing, forcing, committing and renaming is what counts.
 */
@Tag("slow")
class OrderOnDiskTest {
    @TempDir private Path folder;

    private Office office;

    /** A line of the trace. */
    private record Step(String what, List<String> paths) {
        boolean is(String wanted, String path) {
            return what.equals(wanted) && paths.contains(path);
        }
    }

    private List<Step> trace(Optional<Weakened> without) throws Exception {
        office = Offices.make(folder.resolve("office"));
        Files.writeString(office.intake().resolve("week.csv"), Offices.register(1, 2));
        Path trace = folder.resolve("trace.txt");
        String property = "paperbark.trace=" + trace;
        Path said = folder.resolve("said.txt");
        Process run =
                without.isPresent()
                        ? Child.watch(without.get(), office, said, property)
                        : Child.watch(office, said, property);
        assertThat(Child.end(run)).as(Files.readString(said)).isZero();
        return Files.readAllLines(trace).stream()
                .map(l -> List.of(l.split("\t")))
                .map(w -> new Step(w.get(0), w.subList(1, w.size())))
                .toList();
    }

    @Test
    void everyFileOfAPublishedFolderIsOnTheDiskBeforeTheCommitAndTheCommitBeforeTheRename()
            throws Exception {
        assertThat(faults(trace(Optional.empty()))).isEmpty();
    }

    @Test
    void withoutForcingTheCheckFails() throws Exception {
        assertThat(faults(trace(Optional.of(Weakened.NO_SYNC))))
                .anyMatch(f -> f.startsWith("not forced before the commit: "))
                .anyMatch(f -> f.startsWith("not forced after the rename: "));
    }

    @Test
    void publishedBeforeTheCommitTheCheckFails() throws Exception {
        assertThat(faults(trace(Optional.of(Weakened.PUBLISH_FIRST))))
                .anyMatch(f -> f.startsWith("renamed before the commit"));
    }

    private List<String> faults(List<Step> steps) throws Exception {
        List<String> faults = new ArrayList<>();
        int commit = first(steps, 0, "COMMIT", "");
        String target = office.packs().resolve("2026-11-23-week").toString();
        int rename = first(steps, 0, "MOVE", target);
        assertThat(List.of(commit, rename)).doesNotContain(-1);
        if (rename < commit) {
            faults.add("renamed before the commit");
        }
        String hidden = steps.get(rename).paths().get(0);
        int files = 0;
        for (int i = 0; i < steps.size(); i++) {
            Step step = steps.get(i);
            if (step.what().equals("WRITE") && step.paths().get(0).startsWith(hidden)) {
                files++;
                within(steps, i, commit, step.paths().get(0), faults);
            }
            if (step.what().equals("MOVE")) {
                after(steps, i, Path.of(step.paths().get(1)).getParent(), faults);
                after(steps, i, Path.of(step.paths().get(0)).getParent(), faults);
            }
        }
        assertThat(files).isEqualTo(Invariants.files(Path.of(target)).size());
        for (String path : List.of(hidden, hidden + "/packs", office.packs().toString())) {
            within(steps, last(steps, hidden), commit, path, faults);
        }
        return faults;
    }

    private static void within(
            List<Step> steps, int from, int to, String path, List<String> faults) {
        int at = first(steps, from, "FORCE", path);
        if (at < 0 || at > to) {
            faults.add("not forced before the commit: " + path);
        }
    }

    private static void after(List<Step> steps, int from, Path path, List<String> faults) {
        if (first(steps, from, "FORCE", path.toString()) < 0) {
            faults.add("not forced after the rename: " + path);
        }
    }

    private static int first(List<Step> steps, int from, String what, String path) {
        for (int i = from; i < steps.size(); i++) {
            if (path.isEmpty() ? steps.get(i).what().equals(what) : steps.get(i).is(what, path)) {
                return i;
            }
        }
        return -1;
    }

    private static int last(List<Step> steps, String below) {
        int last = -1;
        for (int i = 0; i < steps.size(); i++) {
            Step step = steps.get(i);
            if (step.what().equals("WRITE") && step.paths().get(0).startsWith(below)) {
                last = i;
            }
        }
        return last;
    }
}
