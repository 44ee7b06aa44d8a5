package paperbark.office;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.io.PrintStream;
import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import org.apache.commons.codec.digest.DigestUtils;
import paperbark.batch.EntryFile;
import paperbark.cli.Program;
import paperbark.disk.Disk;
import paperbark.ledger.BatchEntry;
import paperbark.ledger.Entries;
import paperbark.ledger.Ledger;
import paperbark.ledger.LedgerBench;
import paperbark.ledger.Proof;

/**
 * An office with 500 published batches: how much of a command is the proof that its folders agree
 * with its ledger. Run by {@code mvn -Pbench verify}; the promise is a tenth of a second beyond the
 * proof of the ledger itself.
 */
public final class OfficeBench {
    private static final int BATCHES = 500;
    private static final int RUNS = 5;
    private static final Path MANIFEST = Path.of("output-samples/2026-11-23-week-47/manifest.json");
    private static final PrintStream OUT = System.out;

    private OfficeBench() {}

    /** Measures and prints. */
    public static void main(String[] arguments) throws Exception {
        Path folder = Files.createTempDirectory("office");
        Office office = Offices.make(folder.resolve("office"));
        try (Ledger ledger = Ledger.open(office.ledger())) {
            for (int b = 0; b < BATCHES; b++) {
                publish(office, ledger, LedgerBench.batch(b));
            }
        }
        for (int run = 0; run < RUNS; run++) {
            long start = busy();
            try (Ledger ledger = Ledger.open(office.ledger())) {
                ledger.verify();
            }
            long proved = busy();
            LedgerProof.before(office.ledger(), new Proof());
            long asked = busy();
            Program.Run owed = Program.run(office.root(), "owed");
            OUT.printf(
                    "ledger alone %.3f s, with folders %.3f s, owed %.3f s, exit code %d%n",
                    (proved - start) / 1e9,
                    (asked - proved) / 1e9,
                    (busy() - asked) / 1e9,
                    owed.exitCode());
        }
        Disk.delete(folder);
    }

    /** The processor's time of this thread, which other programs on the machine do not lengthen. */
    private static long busy() {
        return ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime();
    }

    private static void publish(Office office, Ledger ledger, BatchEntry batch) throws IOException {
        Path folder = Files.createDirectories(office.packs().resolve(batch.name()));
        byte[] entry = new EntryFile(ledger.id(), ledger.rehearse(batch)).toJson();
        Files.write(folder.resolve(EntryFile.NAME), entry);
        ObjectMapper json = new ObjectMapper();
        ObjectNode manifest = (ObjectNode) json.readTree(MANIFEST.toFile());
        ((ObjectNode) manifest.get("outputs"))
                .putObject(EntryFile.NAME)
                .put("sha256", DigestUtils.sha256Hex(entry));
        byte[] all = json.writerWithDefaultPrettyPrinter().writeValueAsBytes(manifest);
        Files.write(folder.resolve("manifest.json"), all);
        Entries.enter(ledger, batch.withManifest(DigestUtils.sha256Hex(all)));
        ledger.batches().notePublished(batch.name());
    }
}
