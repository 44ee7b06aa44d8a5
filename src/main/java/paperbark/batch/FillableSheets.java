package paperbark.batch;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import paperbark.disk.Hashes;
import paperbark.disk.Staging;
import paperbark.finding.Finding;
import paperbark.firm.FirmTables;
import paperbark.output.paper.FillableSheet;
import paperbark.output.paper.Pack;

/**
 * Site sheets with live fields beside the packs of booked jobs, where they are wanted. Safe for use
 * by several threads.
 */
public final class FillableSheets {
    private static final String FOLDER = "fillable/";

    private final String register;
    private final String sha256;
    private final FirmTables tables;
    private final List<Finding> findings = new ArrayList<>();

    private FillableSheets(String register, String sha256, FirmTables tables) {
        this.register = register;
        this.sha256 = sha256;
        this.tables = tables;
    }

    /** Those of a batch; empty where neither the request nor the firm's own table wants them. */
    static Optional<FillableSheets> wanted(Request request, FirmTables tables) throws IOException {
        if (!request.extras().fillable() && !tables.firm().fillable()) {
            return Optional.empty();
        }
        Request.Register register = request.register();
        return Optional.of(
                new FillableSheets(register.name(), Hashes.sha256(register.file()), tables));
    }

    /**
     * Writes the sheet of a job, if it gets one; a sheet that cannot be made costs nothing else.
     */
    void write(Pack pack, Staging staging) throws IOException {
        String name = FOLDER + pack.caseFile().packFile();
        SideProducts beside = new SideProducts(register);
        Optional<byte[]> sheet =
                beside.make(name, () -> FillableSheet.of(pack, tables, sha256)).flatMap(s -> s);
        if (sheet.isPresent()) {
            staging.write(name, sheet.get());
        }
        synchronized (findings) {
            findings.addAll(beside.findings());
        }
    }

    /** What was noticed so far. */
    List<Finding> findings() {
        synchronized (findings) {
            return List.copyOf(findings);
        }
    }

    /** The sheets of a batch that is being written, by the name of the job's pack. */
    static Map<String, String> of(Staging staging) {
        Map<String, String> sheets = new TreeMap<>();
        staging.written().keySet().stream()
                .filter(name -> name.startsWith(FOLDER))
                .forEach(name -> sheets.put(name.substring(FOLDER.length()), name));
        return sheets;
    }

    /** Whether a file of a batch is the sheet of the job whose pack that is. */
    public static boolean isOf(String file, String pack) {
        return file.equals(FOLDER + pack.substring(pack.lastIndexOf('/') + 1));
    }
}
