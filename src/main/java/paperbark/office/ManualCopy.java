package paperbark.office;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Map;
import paperbark.disk.Disk;
import paperbark.disk.Shipped;

/**
 * The manual in the office folder, one click from the status page. It is the program's, so that a
 * newer program's replaces it.
 */
public final class ManualCopy {
    private ManualCopy() {}

    /**
     * Writes what is missing or differs.
     *
     * @return whether anything did
     * @throws IOException when a page cannot be written; the others are there
     */
    public static boolean renew(Path folder) throws IOException {
        boolean differed = false;
        for (Map.Entry<String, byte[]> page : Shipped.below(Shipped.MANUAL).entrySet()) {
            Path target = folder.resolve(Shipped.MANUAL).resolve(page.getKey());
            if (!Files.exists(target)
                    || !Arrays.equals(Files.readAllBytes(target), page.getValue())) {
                Disk.replace(target, page.getValue());
                differed = true;
            }
        }
        return differed;
    }
}
