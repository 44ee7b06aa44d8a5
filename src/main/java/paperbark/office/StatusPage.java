package paperbark.office;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import paperbark.batch.Disk;
import paperbark.batch.OutputFolder;
import paperbark.ledger.Ledger;
import paperbark.output.index.OfficePage;
import paperbark.output.index.OfficeView;
import paperbark.value.Days;

/** Writes the page in the office folder that shows how things stand. */
final class StatusPage {
    private static final int LISTED = 20;

    private StatusPage() {}

    /**
     * Writes the page anew.
     *
     * @param waiting files in the intake with the reason why they wait
     * @param working the register being worked on
     */
    static void write(
            Office office, Attendant.World world, Map<Path, String> waiting, Optional<Path> working)
            throws IOException {
        OfficeView view =
                new OfficeView(
                        Days.show(world.today().get()),
                        world.version(),
                        working.map(Path::toString),
                        waiting.entrySet().stream()
                                .sorted(Map.Entry.comparingByKey())
                                .map(
                                        e ->
                                                new OfficeView.Waiting(
                                                        e.getKey().getFileName().toString(),
                                                        e.getValue()))
                                .toList(),
                        returned(office),
                        batches(office));
        byte[] page = OfficePage.of(view).getBytes(StandardCharsets.UTF_8);
        // Rewritten only when something changed: every look would else wake a sync client.
        if (!Files.exists(office.status())
                || !Arrays.equals(Files.readAllBytes(office.status()), page)) {
            Disk.replace(office.status(), page);
        }
    }

    private static List<String> returned(Office office) throws IOException {
        try (Stream<Path> folders = Files.list(office.returned())) {
            return folders.filter(Files::isDirectory)
                    .map(f -> f.getFileName().toString())
                    .filter(n -> !n.startsWith("."))
                    .sorted(Comparator.reverseOrder())
                    .limit(LISTED)
                    .toList();
        }
    }

    private static List<OfficeView.Line> batches(Office office) throws IOException {
        List<OfficeView.Line> lines = new ArrayList<>();
        if (office.ledger().isExpected()) {
            try (Ledger ledger = Ledger.open(office.ledger())) {
                for (Ledger.BatchState batch :
                        ledger.newest(LISTED, OutputFolder.known(office.packs()).orElse(""))) {
                    lines.add(
                            new OfficeView.Line(
                                    batch.name(),
                                    batch.register(),
                                    Days.show(batch.day()),
                                    batch.jobs(),
                                    batch.held()));
                }
            }
        }
        return lines;
    }
}
