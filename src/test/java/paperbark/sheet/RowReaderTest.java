package paperbark.sheet;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import paperbark.finding.Finding;
import paperbark.finding.FindingCode;
import paperbark.finding.Place;
import paperbark.finding.Severity;
import paperbark.value.Money;

class RowReaderTest {
    /** An owner for whom all is a check; what is in the column "Secret" is nobody's business. */
    private static final class PlainRow extends RowReader<String> {
        PlainRow(Sheet sheet, Map<String, Column> columns) {
            super(sheet, columns, sheet.rows().get(0), new ArrayList<>());
        }

        @Override
        protected boolean isPublic(String key) {
            return !key.equals("Secret");
        }

        @Override
        protected Finding finding(String key, Place place, CellTrouble trouble, boolean refused) {
            return Finding.of(trouble.code(), place, trouble.fact(), "Look.")
                    .as(Severity.CHECK)
                    .seeing(trouble.seen().orElse(""));
        }

        List<FindingCode> codes() {
            return findings().stream().map(Finding::code).toList();
        }
    }

    private static PlainRow row(String csv, boolean from1904) {
        Sheet read =
                SheetReader.readCsv("a.csv", csv.getBytes(StandardCharsets.UTF_8), h -> true)
                        .result()
                        .orElseThrow();
        Sheet sheet = new Sheet("a.csv", "", 1, read.columns(), read.rows(), from1904);
        Map<String, Column> columns = new HashMap<>();
        sheet.columns().forEach(column -> columns.put(column.heading(), column));
        return new PlainRow(sheet, columns);
    }

    @Test
    void aPlainNumberIsCountedAsADayFrom1900OrFrom1904() {
        PlainRow row = row("Day,Other\n46351,x", false);
        assertThat(row.day("Day")).contains(LocalDate.of(2026, 11, 25));
        assertThat(row.codes()).containsExactly(FindingCode.NUMBER_FOR_DATE);
        assertThat(row.unread()).isEmpty();
        assertThat(row("Day,Other\n44889,x", true).day("Day")).contains(LocalDate.of(2026, 11, 25));
        assertThat(row("Day,Other\n19999,x", false).day("Day")).isEmpty();
        assertThat(row("Day,Other\n80001,x", false).day("Day")).isEmpty();
    }

    @Test
    void whatWasCleanedIsToldOnceHoweverOftenTheCellIsRead() {
        PlainRow row = row("Name,Other\nA\u200bda,x", false);
        assertThat(row.text("Name")).contains("Ada");
        assertThat(row.text("Name")).contains("Ada");
        assertThat(row.codes()).containsExactly(FindingCode.TEXT_CLEANED);
    }

    @Test
    void aCellThatWasRefusedIsNotReadAgain() {
        PlainRow row = row("Amount,Other\n12 or so,x", false);
        assertThat(row.money("Amount")).isEmpty();
        assertThat(row.text("Amount")).isEmpty();
        assertThat(row.says("Amount")).isTrue();
        assertThat(row.unread()).containsExactly("Amount");
        assertThat(row.codes()).containsExactly(FindingCode.MONEY_UNREADABLE);
        assertThat(row.findings().get(0).seen()).isEqualTo("12 or so");
        assertThat(row.findings().get(0).place().cellAddress()).isEqualTo("A2");
    }

    @Test
    void aZeroThatASpreadsheetDroppedIsPutBackAndNotRepeatedWhereItIsPrivate() {
        PlainRow row = row("Postcode,Secret\n800,83000", false);
        assertThat(row.postcode("Postcode").map(Object::toString)).contains("0800");
        assertThat(row.bsb("Secret")).isPresent();
        assertThat(row.codes())
                .containsExactly(FindingCode.LEADING_ZERO_LOST, FindingCode.LEADING_ZERO_LOST);
        assertThat(row.findings().get(0).fact()).contains("0800");
        assertThat(row.findings().get(1).fact()).doesNotContain("83000");
    }

    @Test
    void aColumnThatIsNotThereSaysNothing() {
        PlainRow row = row("Name,Other\nAda,x", false);
        assertThat(row.text("Amount")).isEmpty();
        assertThat(row.says("Amount")).isFalse();
        assertThat(row.place("Amount")).isEqualTo(row.place());
        assertThat(row.money("Other")).isEmpty();
        assertThat(row("Amount,Other\n\"1,234.50\",x", false).money("Amount"))
                .contains(Money.of("1234.50"));
    }
}
