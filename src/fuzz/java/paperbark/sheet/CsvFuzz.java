package paperbark.sheet;

import com.code_intelligence.jazzer.junit.FuzzTest;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import paperbark.finding.Finding;

/** A CSV file is read or refused with a reason, and what stands before any damage is there. */
class CsvFuzz {
    private static final byte[] BEFORE =
            "Job,Owner,Date,Serial\r\nSB-1,Ann,2026-11-20,T-1\r\nSB-2,\"Bo, C\",,T-2\r\n"
                    .getBytes(StandardCharsets.US_ASCII);

    @FuzzTest(maxDuration = "10m")
    void aCsvFileIsReadOrRefused(byte[] content) throws IOException {
        FuzzedFile.with(".csv", content, FuzzedFile::readOrRefused);
        byte[] behind = Arrays.copyOf(BEFORE, BEFORE.length + content.length);
        System.arraycopy(content, 0, behind, BEFORE.length, content.length);
        Reading<Sheet> read = SheetReader.readCsv("week.csv", behind, Books.KNOWN);
        boolean told = read.findings().stream().anyMatch(Finding::stops);
        if (read.result().isPresent() && !told && !isWhole(read.result().get())) {
            throw new AssertionError("a cell is missing or changed: " + read);
        }
    }

    private static boolean isWhole(Sheet sheet) {
        return sheet.rows().size() >= 2
                && texts(sheet.rows().get(0)).equals(List.of("SB-1", "Ann", "2026-11-20", "T-1"))
                && texts(sheet.rows().get(1)).equals(List.of("SB-2", "Bo, C", "", "T-2"));
    }

    private static List<String> texts(Row row) {
        return List.of(1, 2, 3, 4).stream()
                .map(i -> row.cells().containsKey(i) ? row.cells().get(i).text() : "")
                .toList();
    }
}
