package paperbark.office;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.Map;
import paperbark.batch.LastDays;

/**
 * The last days that the published batches of an office knew. A manifest is read once as long as it
 * stays the same, and of what is over nothing is kept.
 */
final class KnownDays {
    private final Office office;
    private final Map<String, Known> batches = new HashMap<>();
    private LocalDate since = LocalDate.MAX;

    /** By job number what is to be done by when, and by what that was told. */
    private record Known(String stamp, Map<String, Map<String, LocalDate>> days) {}

    KnownDays(Office office) {
        this.office = office;
    }

    /**
     * The last days of a batch's jobs, by job number, from a day on.
     *
     * @throws IOException when the manifest cannot be read
     */
    Map<String, Map<String, LocalDate>> of(String batch, LocalDate from) throws IOException {
        if (from.isBefore(since)) {
            // A clock that was put back asks for what was dropped.
            batches.clear();
        }
        since = from;
        Path folder = office.packs().resolve(batch);
        String stamp = stamp(folder.resolve("manifest.json"));
        Known known = batches.get(batch);
        if (known == null || !known.stamp().equals(stamp)) {
            known = new Known(stamp, from(from, LastDays.of(folder)));
            batches.put(batch, known);
        }
        return known.days();
    }

    private static Map<String, Map<String, LocalDate>> from(
            LocalDate first, Map<String, Map<String, LocalDate>> all) {
        Map<String, Map<String, LocalDate>> kept = new LinkedHashMap<>();
        all.forEach(
                (job, days) -> {
                    Map<String, LocalDate> later = new LinkedHashMap<>(days);
                    later.values().removeIf(day -> day.isBefore(first));
                    if (!later.isEmpty()) {
                        kept.put(job, later);
                    }
                });
        return kept;
    }

    private static String stamp(Path file) throws IOException {
        return Files.isRegularFile(file)
                ? Files.size(file) + " " + Files.getLastModifiedTime(file)
                : "";
    }
}
