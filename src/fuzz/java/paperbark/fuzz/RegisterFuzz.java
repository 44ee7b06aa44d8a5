package paperbark.fuzz;

import com.code_intelligence.jazzer.junit.FuzzTest;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import java.util.Set;
import paperbark.finding.Finding;
import paperbark.sheet.Reading;
import paperbark.sheet.Sheet;
import paperbark.sheet.SheetReader;

/** A workbook is read or refused with a reason, whatever its bytes. */
class RegisterFuzz {
    @FuzzTest(maxDuration = "10m")
    void aWorkbookIsReadOrRefused(byte[] content) throws IOException {
        Path file = Files.createTempFile("fuzz-", ".xlsx");
        try {
            Files.write(file, content);
            Reading<Sheet> read =
                    SheetReader.read(file, Set.of("Job no.", "Client")::contains, Optional.empty());
            if (read.result().isEmpty() && read.findings().stream().noneMatch(Finding::stops)) {
                throw new AssertionError("neither read nor refused");
            }
        } finally {
            Files.delete(file);
        }
    }
}
