package paperbark.office;

import java.io.IOException;
import java.nio.file.Files;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import paperbark.batch.OutputFolder;
import paperbark.ledger.BatchProgress;
import paperbark.ledger.Ledger;

/**
 * How far each batch has come and whose it is, which no seal covers since it changes, held against
 * what lies in the folders.
 */
final class BatchStates {
    private final Office office;
    private final Ledger ledger;
    private final Set<String> visible;
    private final Set<String> filed;

    BatchStates(Office office, Ledger ledger, Witnesses witnesses) {
        this.office = office;
        this.ledger = ledger;
        this.visible = witnesses.batches().names();
        this.filed =
                witnesses.filed().stream()
                        .map(f -> f.getFileName().toString())
                        .collect(Collectors.toSet());
    }

    /** What the ledger says otherwise than the folders, a sentence each; one for many batches. */
    List<String> noticed() throws IOException {
        Optional<String> place =
                OutputFolder.known(office.packs()).filter(id -> Files.isDirectory(office.intake()));
        List<String> lines = new ArrayList<>();
        if (place.isEmpty()) {
            return lines;
        }
        List<BatchProgress> all = ledger.batches().progress();
        List<String> before = OutputFolder.copiedFrom(office.packs());
        tell(
                lines,
                all.stream()
                        .filter(b -> !b.isOf(place.get()) && before.stream().noneMatch(b::isOf))
                        .filter(b -> visible.contains(b.name()) || filed.contains(b.name()))
                        .toList(),
                " here, and in the ledger of another office. If the office was not copied from that"
                        + " one, somebody changed the ledger: bring back a copy of it.");
        List<BatchProgress> own = all.stream().filter(b -> b.isOf(place.get())).toList();
        tell(
                lines,
                unnoted(own),
                " in packs/, and not published as the ledger has it: a run was cut short, or"
                        + " somebody changed the ledger. The next start of watch notes it.");
        tell(
                lines,
                own.stream().filter(b -> b.isFiled() && !filed.contains(b.name())).toList(),
                " filed as the ledger has it, and not in filed/. Bring the register back from a"
                        + " backup.");
        return lines;
    }

    /** Notes the batches that people see and that a run was cut short of noting. */
    void note() throws IOException {
        Optional<String> place = OutputFolder.known(office.packs());
        if (place.isPresent()) {
            unnoted(ledger.batches().progress().stream().filter(b -> b.isOf(place.get())).toList())
                    .forEach(b -> ledger.batches().notePublished(b.name()));
        }
    }

    private List<BatchProgress> unnoted(List<BatchProgress> own) {
        return own.stream().filter(b -> !b.isPublished() && visible.contains(b.name())).toList();
    }

    private static void tell(List<String> lines, List<BatchProgress> batches, String what) {
        if (!batches.isEmpty()) {
            String newest = batches.get(batches.size() - 1).name();
            lines.add(
                    batches.size() == 1
                            ? "Batch " + newest + " is" + what
                            : batches.size() + " batches, the newest " + newest + ", are" + what);
        }
    }
}
