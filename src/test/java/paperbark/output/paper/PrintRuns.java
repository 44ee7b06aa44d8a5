package paperbark.output.paper;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import paperbark.output.BatchInfo;

/** Print runs of packs that were just made. */
public final class PrintRuns {
    private PrintRuns() {}

    /**
     * The run of the packs.
     *
     * @param folder where the packs may lie
     */
    public static byte[] of(Path folder, List<Pack> packs) throws IOException {
        List<RunPack> run = new ArrayList<>();
        for (Pack pack : packs) {
            Path file = folder.resolve(pack.caseFile().job().reference() + ".pdf");
            run.add(
                    new RunPack(
                            Files.write(file, pack.pdf()),
                            pack.caseFile().job().reference(),
                            "Job " + (run.size() + 1) + " of " + packs.size(),
                            "Crew Heron"));
        }
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        BatchInfo info = new BatchInfo("week", "week.xlsx", LocalDate.of(2026, 11, 23), "test");
        PrintRun.write(run, Optional.empty(), Optional.empty(), info, out);
        return out.toByteArray();
    }
}
