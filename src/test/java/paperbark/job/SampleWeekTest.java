package paperbark.job;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.Reader;
import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import paperbark.finding.Finding;
import paperbark.sheet.Cell;
import paperbark.sheet.Column;
import paperbark.sheet.Reading;
import paperbark.sheet.Row;
import paperbark.sheet.Sheet;
import paperbark.sheet.SheetReader;
import paperbark.value.Days;

class SampleWeekTest {
    private static final CSVFormat HEADED =
            CSVFormat.RFC4180.builder().setHeader().setSkipHeaderRecord(true).get();
    private static final Path SAMPLES = Path.of("input-samples");
    private static final String FIRM = "input-samples/tables/columns.csv";
    private static final String SHIPPED = "src/main/resources/columns.csv";

    @ParameterizedTest
    @ValueSource(strings = {FIRM, SHIPPED})
    void everyFieldHasSeveralHeadingsAndNoHeadingTwoFields(String file) throws IOException {
        Map<String, String> fields = aliases(file);
        Set<String> keys = Field.values().stream().map(Field::key).collect(Collectors.toSet());
        assertThat(fields.values()).containsAll(keys).allMatch(keys::contains);
        for (Field field : Field.values()) {
            assertThat(fields).containsEntry(plain(field.label()), field.key());
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {FIRM, SHIPPED})
    void bothListsOfHeadingsCoverTheWeekButForTheVan(String file) throws IOException {
        Map<String, String> fields = aliases(file);
        for (String week : List.of("week-47.xlsx", "week-47.csv")) {
            assertThat(sheet(week).columns())
                    .filteredOn(c -> !fields.containsKey(plain(c.heading())))
                    .extracting(Column::heading)
                    .containsExactly("Van");
        }
    }

    @Test
    void workbookAndCsvHoldTheSameFactsButForTheAccidentsOfASpreadsheet() throws IOException {
        Map<String, String> book = facts(sheet("week-47.xlsx"));
        Map<String, String> csv = facts(sheet("week-47.csv"));
        Set<String> different = new TreeSet<>();
        book.forEach(
                (place, fact) -> {
                    if (!fact.equals(csv.get(place))) {
                        different.add(place + ": " + fact + " / " + csv.get(place));
                    }
                });
        assertThat(book.keySet()).isEqualTo(csv.keySet());
        assertThat(different)
                .containsExactly(
                        "SB-1106 Tank S/N: 2611040000451200 / 2.61104E+15",
                        "SB-1107 Ph.: 491570157 / 0491570157",
                        "SB-1123 P/code: 870 / 0870");
    }

    @Test
    void theWorkbookHasTheAccidentsOfAnOffice() throws IOException {
        Reading<Sheet> reading = reading("week-47.xlsx");
        assertThat(reading.result().orElseThrow().headingRow()).isEqualTo(3);
        assertThat(reading.result().orElseThrow().rows()).hasSize(40);
        assertThat(reading.findings())
                .extracting(Finding::code)
                .extracting(Enum::name)
                .containsExactlyInAnyOrder("ROW_IGNORED", "ROWS_HIDDEN");
        assertThat(reading("week-47.csv").findings()).isEmpty();
    }

    private static Map<String, String> facts(Sheet sheet) {
        Map<String, String> facts = new HashMap<>();
        for (Row row : sheet.rows()) {
            String job = row.cell(sheet.columns().get(0)).text();
            for (Column column : sheet.columns()) {
                facts.put(job + " " + column.heading(), fact(row.cell(column)));
            }
        }
        return facts;
    }

    /** Dates and amounts in one form, everything else without spaces. */
    private static String fact(Cell cell) {
        String text = cell.text();
        if (text.matches("[0-9]+/[0-9]+/[0-9]{4}")) {
            return Days.parse(text).toOptional().map(String::valueOf).orElse(text);
        }
        if (text.matches("[0-9]+\\.[0-9]{2}")) {
            return new BigDecimal(text).setScale(0).toPlainString();
        }
        return text.replace(" ", "");
    }

    private static Map<String, String> aliases(String file) throws IOException {
        Map<String, String> fields = new HashMap<>();
        try (Reader reader = Files.newBufferedReader(Path.of(file));
                var records = HEADED.parse(reader)) {
            for (CSVRecord record : records.getRecords()) {
                String earlier = fields.put(plain(record.get(1)), record.get(0));
                assertThat(earlier).as(record.get(1)).isNull();
            }
        }
        return fields;
    }

    private static Sheet sheet(String name) throws IOException {
        return reading(name).result().orElseThrow();
    }

    private static Reading<Sheet> reading(String name) throws IOException {
        Set<String> known = aliases(FIRM).keySet();
        return SheetReader.read(
                SAMPLES.resolve(name), h -> known.contains(plain(h)), Optional.empty());
    }

    private static String plain(String heading) {
        return heading.toLowerCase(Locale.ROOT).replaceAll("[^\\p{L}\\p{N}]", "");
    }
}
