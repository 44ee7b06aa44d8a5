package paperbark.batch;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.AccessDeniedException;
import java.nio.file.FileSystemException;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.junit.jupiter.api.Test;
import paperbark.disk.FileNames;
import paperbark.disk.Windows;
import paperbark.job.Job;
import paperbark.job.Jobs;

/** Files of a batch have names and paths that Windows takes, and its messages fit Windows. */
class WindowsNamesTest {
    // Letters that Explorer and office programs take in a path, from memory; and room for the
    // folder around.
    private static final int LONGEST_PATH = 260;
    private static final int ROOM_FOR_THE_OFFICE = 100;

    @Property(tries = 200)
    void packsHaveNamesThatWindowsTakesAndTellsApart(
            @ForAll("references") List<String> references) {
        List<Job> jobs = new ArrayList<>();
        for (String reference : new HashSet<>(references)) {
            jobs.add(Jobs.installed().withReference(reference).job());
        }
        List<String> names = PackNames.of(jobs);
        assertThat(names).allMatch(Windows::takes);
        Set<String> apart = new HashSet<>();
        names.forEach(name -> assertThat(apart.add(name.toLowerCase(Locale.ROOT))).isTrue());
    }

    @Provide
    Arbitrary<List<String>> references() {
        Arbitrary<String> nasty =
                Arbitraries.of(
                        "CON", "con", "NUL", "nul.", "Lpt9", "COM¹", "job.", "job ", "a:b", "a\\b",
                        "SB-1", "sb-1", "Sb-1.", "..", "ß", "SS");
        return Arbitraries.oneOf(nasty, Arbitraries.strings().ofMinLength(1).ofMaxLength(60))
                .list()
                .ofMinSize(1)
                .ofMaxSize(20);
    }

    @Test
    void theLongestPathOfABatchLeavesRoomForTheOfficesFolder() {
        String longest = "x".repeat(300);
        String pack = PackNames.of(List.of(Jobs.installed().withReference(longest).job())).get(0);
        String hidden = ".2026-11-23-" + FileNames.slug(longest) + "-9999-" + Long.MAX_VALUE;
        String path = "\\packs\\" + hidden + "\\packs\\" + pack;
        assertThat(path.length()).isLessThan(LONGEST_PATH - ROOM_FOR_THE_OFFICE);
    }

    @Test
    void aFileThatIsOpenInAViewerIsSaidToBe() {
        assertThat(
                        Trouble.of(new AccessDeniedException("C:\\office\\packs\\week"))
                                .orElseThrow()
                                .said())
                .startsWith(
                        "No permission: C:\\office\\packs\\week. Close it, and what lies in it");
        assertThat(
                        Trouble.of(
                                        new FileSystemException(
                                                "C:\\office\\status.html",
                                                null,
                                                "The process cannot access the file because it is being used by another process"))
                                .orElseThrow()
                                .said())
                .isEqualTo(
                        "It is open in another program: C:\\office\\status.html. Close it there.");
        assertThat(Trouble.of(new AccessDeniedException("/office/packs")).orElseThrow().said())
                .doesNotContain("Close");
    }
}
