package paperbark.fuzz;

import com.code_intelligence.jazzer.junit.FuzzTest;
import java.util.Set;
import paperbark.finding.Finding;
import paperbark.sheet.Reading;
import paperbark.sheet.Sheet;
import paperbark.sheet.SheetReader;

/** A CSV file is read or refused with a reason, whatever its bytes. */
class CsvFuzz {
    @FuzzTest(maxDuration = "10m")
    void aCsvFileIsReadOrRefused(byte[] content) {
        Reading<Sheet> read =
                SheetReader.readCsv("week.csv", content, Set.of("Job no.", "Client")::contains);
        if (read.result().isEmpty() && read.findings().stream().noneMatch(Finding::stops)) {
            throw new AssertionError("neither read nor refused");
        }
    }
}
