package paperbark.output.paper;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/** Print runs of packs that were just made. */
public final class PrintRuns {
    private PrintRuns() {}

    /**
     * The run of the packs.
     *
     * @param folder where the packs may lie
     */
    public static byte[] of(Path folder, List<Pack> packs) throws IOException {
        List<FiledPack> filed = new ArrayList<>();
        for (Pack pack : packs) {
            Path file = folder.resolve(pack.caseFile().job().reference() + ".pdf");
            filed.add(pack.filed(Files.write(file, pack.pdf())));
        }
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        PrintRun.write(filed, out);
        return out.toByteArray();
    }
}
