package paperbark.batch;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.ShrinkingMode;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.lifecycle.AfterProperty;
import net.jqwik.api.lifecycle.BeforeProperty;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.apache.poi.hssf.usermodel.HSSFWorkbook;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.ss.usermodel.Sheet;
import org.apache.poi.ss.usermodel.Workbook;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import paperbark.finding.Finding;
import paperbark.finding.FindingCode;
import paperbark.finding.Place;
import paperbark.sheet.Cell;
import paperbark.sheet.Reading;

/**
 * Real registers harmed a little on their way: no cell that a job needs is missing or changed
 * without a finding that was not there before. What lies in a cell is left alone, because nobody
 * could tell another name from a wrong one; harmed is what holds the cells together.
 */
class MutatedRegistersTest {
    private static final String JOBS = jobs();
    private static final List<String> BETWEEN = List.of(",", ";", "\t", "\"", "\n", "\r", "");

    private Path folder;
    private Optional<Reading<Inputs>> unharmed = Optional.empty();

    @BeforeProperty
    void makeFolder() throws IOException {
        unharmed = Optional.empty();
        folder = Files.createTempDirectory(Path.of("target").toAbsolutePath(), "mutated-");
    }

    @AfterProperty
    void deleteFolder() throws IOException {
        try (var files = Files.list(folder)) {
            for (Path file : files.toList()) {
                Files.delete(file);
            }
        }
        Files.delete(folder);
    }

    private static String jobs() {
        try {
            return SampleWeek.only("SB-1101", "SB-1102", "SB-1103");
        } catch (IOException e) {
            throw new IllegalStateException(e);
        }
    }

    /** A delimiter, quote or end of a line becomes another one, or is gone. */
    @Property(tries = 80, shrinking = ShrinkingMode.OFF)
    void aSignBetweenTheCellsOfACsvFile(
            @ForAll @IntRange(min = 0, max = 1_000_000) int at,
            @ForAll @IntRange(min = 0, max = 6) int other)
            throws IOException {
        int[] places =
                IntStream.range(0, JOBS.length())
                        .filter(i -> BETWEEN.contains(JOBS.substring(i, i + 1)))
                        .filter(i -> JOBS.charAt(i) == '"' || !isQuoted(i))
                        .toArray();
        int place = places[at % places.length];
        String harmed = JOBS.substring(0, place) + BETWEEN.get(other) + JOBS.substring(place + 1);
        saysWhatIsLost("week.csv", JOBS.getBytes(StandardCharsets.UTF_8), utf8(harmed));
    }

    /** What stands between quotes belongs to a cell. */
    private static boolean isQuoted(int at) {
        return JOBS.substring(0, at).chars().filter(c -> c == '"').count() % 2 == 1;
    }

    @Property(tries = 25, shrinking = ShrinkingMode.OFF)
    void aCsvFileThatEndsEarly(@ForAll @IntRange(min = 1, max = 1_000_000) int at)
            throws IOException {
        byte[] whole = utf8(JOBS);
        // The last line may lack its end, and empty cells after its last words say nothing.
        int end = at % JOBS.stripTrailing().replaceFirst(",+$", "").length();
        saysWhatIsLost("week.csv", whole, Arrays.copyOf(whole, end));
    }

    /** The parts of a workbook carry sums, so that no wrong byte may go unnoticed. */
    @Property(tries = 40, shrinking = ShrinkingMode.OFF)
    void aByteOfAnXlsxFile(
            @ForAll @IntRange(min = 0, max = 1_000_000) int at,
            @ForAll @IntRange(min = 1, max = 255) int change)
            throws IOException {
        byte[] whole = workbook(new XSSFWorkbook());
        byte[] harmed = whole.clone();
        harmed[at % whole.length] ^= (byte) change;
        saysWhatIsLost("week.xlsx", whole, harmed);
    }

    @Property(tries = 20, shrinking = ShrinkingMode.OFF)
    void aPieceOfAnXlsxFileIsMissing(
            @ForAll @IntRange(min = 0, max = 1_000_000) int at,
            @ForAll @IntRange(min = 1, max = 600) int length)
            throws IOException {
        byte[] whole = workbook(new XSSFWorkbook());
        saysWhatIsLost("week.xlsx", whole, without(whole, at % whole.length, length));
    }

    @Property(tries = 20, shrinking = ShrinkingMode.OFF)
    void anXlsFileThatEndsEarly(@ForAll @IntRange(min = 0, max = 1_000_000) int at)
            throws IOException {
        byte[] whole = workbook(new HSSFWorkbook());
        saysWhatIsLost("week.xls", whole, Arrays.copyOf(whole, at % whole.length));
    }

    private static byte[] utf8(String text) {
        return text.getBytes(StandardCharsets.UTF_8);
    }

    private static byte[] without(byte[] whole, int from, int length) {
        int to = Math.min(whole.length, from + length);
        byte[] rest = Arrays.copyOf(whole, whole.length - (to - from));
        System.arraycopy(whole, to, rest, from, whole.length - to);
        return rest;
    }

    private static byte[] workbook(Workbook book) throws IOException {
        try (book;
                CSVParser lines = CSVParser.parse(JOBS.replace("\uFEFF", ""), CSVFormat.RFC4180)) {
            Sheet sheet = book.createSheet("Week 47");
            for (CSVRecord line : lines) {
                Row row = sheet.createRow((int) line.getRecordNumber() - 1);
                for (int i = 0; i < line.size(); i++) {
                    row.createCell(i).setCellValue(line.get(i));
                }
            }
            ByteArrayOutputStream out = new ByteArrayOutputStream();
            book.write(out);
            return out.toByteArray();
        }
    }

    private void saysWhatIsLost(String name, byte[] whole, byte[] harmed) throws IOException {
        Path file = folder.resolve(name);
        if (unharmed.isEmpty()) {
            unharmed = Optional.of(read(Files.write(file, whole)));
        }
        Reading<Inputs> before = unharmed.get();
        Reading<Inputs> after = read(Files.write(file, harmed));
        if (after.result().isEmpty()) {
            assertThat(after.findings()).as("a refusal says why").anyMatch(Finding::stops);
            return;
        }
        List<NewFinding> known = before.findings().stream().map(NewFinding::of).toList();
        boolean told =
                after.findings().stream().map(NewFinding::of).anyMatch(f -> !known.contains(f));
        Map<String, Map<String, String>> cells = cells(after.result().get());
        cells(before.result().orElseThrow())
                .forEach(
                        (job, needed) ->
                                assertThat(told || needed.equals(cells.get(job)))
                                        .as(
                                                "%s was %s and is %s, and nothing says so",
                                                job, needed, cells.get(job))
                                        .isTrue());
    }

    private record NewFinding(FindingCode code, Place place, String fact) {
        static NewFinding of(Finding finding) {
            return new NewFinding(finding.code(), finding.place(), finding.fact());
        }
    }

    private Reading<Inputs> read(Path register) {
        return Inputs.read(SampleWeek.request(register, folder.resolve("out")));
    }

    /** What each job says, heading by heading; blanks say nothing. */
    private static Map<String, Map<String, String>> cells(Inputs inputs) {
        Map<String, Map<String, String>> all = new HashMap<>();
        for (paperbark.sheet.Row row : inputs.sheet().rows()) {
            Map<String, String> said = new HashMap<>();
            inputs.sheet()
                    .columns()
                    .forEach(
                            c ->
                                    Optional.of(row.cell(c))
                                            .map(Cell::text)
                                            .filter(t -> !t.isEmpty())
                                            .ifPresent(t -> said.put(c.heading(), t)));
            all.put(said.getOrDefault("Job no.", ""), said);
        }
        return all;
    }
}
