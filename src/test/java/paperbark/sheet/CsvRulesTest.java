package paperbark.sheet;

import static java.nio.charset.StandardCharsets.UTF_16BE;
import static java.nio.charset.StandardCharsets.UTF_16LE;
import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;
import static paperbark.finding.FindingCode.CELL_TOO_LONG;
import static paperbark.finding.FindingCode.CSV_BROKEN;
import static paperbark.finding.FindingCode.DELIMITER_UNCLEAR;
import static paperbark.finding.FindingCode.ENCODING_GUESSED;
import static paperbark.finding.FindingCode.ENCODING_UNREADABLE;
import static paperbark.finding.FindingCode.FILE_MAY_BE_CUT;
import static paperbark.finding.FindingCode.FILE_TOO_LARGE;
import static paperbark.finding.FindingCode.HEADINGS_NOT_FOUND;
import static paperbark.finding.FindingCode.HEADING_TWICE;
import static paperbark.finding.FindingCode.REGISTER_EMPTY;
import static paperbark.finding.FindingCode.ROW_IGNORED;
import static paperbark.finding.FindingCode.ROW_LONG;
import static paperbark.finding.FindingCode.ROW_SHORT;
import static paperbark.sheet.Books.codes;
import static paperbark.sheet.Books.csv;
import static paperbark.sheet.Books.sheet;

import java.nio.charset.Charset;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import paperbark.finding.Finding;
import paperbark.finding.Place;
import paperbark.finding.Severity;

/** What is read in a CSV file and what is refused. */
class CsvRulesTest {
    private static final String WEEK = "Job,Owner,Serial\r\nSB-1,Zoë Example,TD-1\r\n";

    @Test
    void quotedFieldsMayHoldDelimitersQuotesAndLineBreaks() {
        Reading<Sheet> reading =
                csv("Job,Owner,Serial\r\nSB-1,\"Example, \"\"Ann\"\"\r\nand Bob\",TD-1\r\n");
        assertThat(texts(reading))
                .containsExactly(List.of("SB-1", "Example, \"Ann\" and Bob", "TD-1"));
        assertThat(reading.findings()).isEmpty();
    }

    @Test
    void aRowIsNumberedByTheLineOnWhichItBegins() {
        Reading<Sheet> reading =
                csv("Job,Owner\r\n\r\nSB-1,\"two\r\nlines\"\r\nSB-2,Bob\r\n,\r\nSB-3,Cec\r\n");
        Sheet sheet = sheet(reading);
        assertThat(sheet.rows()).extracting(Row::number).containsExactly(3, 5, 7);
        assertThat(sheet.rows().get(1).cell(sheet.columns().get(1)).address()).isEqualTo("B5");
        assertThat(sheet.headingRow()).isEqualTo(1);
        assertThat(sheet.name()).isEmpty();
        assertThat(sheet.file()).isEqualTo("week.csv");
    }

    @ParameterizedTest
    @ValueSource(strings = {"\n", "\r\n", "\r"})
    void everyKindOfLineEndIsRead(String end) {
        Reading<Sheet> reading = csv(String.join(end, "Job,Owner", "SB-1,Ann", "", "SB-2,Bob", ""));
        assertThat(sheet(reading).rows()).extracting(Row::number).containsExactly(2, 4);
    }

    @Test
    void theByteOrderMarkNamesTheEncoding() {
        assertOwnerIsZoe(csv(("\uFEFF" + WEEK).getBytes(UTF_8)));
        assertOwnerIsZoe(csv(("\uFEFF" + WEEK).getBytes(UTF_16LE)));
        assertOwnerIsZoe(csv(("\uFEFF" + WEEK).getBytes(UTF_16BE)));
        assertOwnerIsZoe(csv(WEEK.getBytes(UTF_8)));
    }

    private static void assertOwnerIsZoe(Reading<Sheet> reading) {
        assertThat(texts(reading)).containsExactly(List.of("SB-1", "Zoë Example", "TD-1"));
        assertThat(sheet(reading).columns().get(0).heading()).isEqualTo("Job");
        assertThat(reading.findings()).isEmpty();
    }

    @Test
    void aFileThatIsNotUtf8IsTakenForWindowsTextAndShowsTheFirstWord() {
        Reading<Sheet> reading = csv(WEEK.getBytes(Charset.forName("windows-1252")));
        assertThat(texts(reading)).containsExactly(List.of("SB-1", "Zoë Example", "TD-1"));
        Finding guess = reading.findings().get(0);
        assertThat(guess.code()).isEqualTo(ENCODING_GUESSED);
        assertThat(guess.severity()).isEqualTo(Severity.CHECK);
        assertThat(guess.seen()).isEqualTo("Zoë");
        assertThat(guess.place()).isEqualTo(new Place.InRow("week.csv", "", 2));
    }

    @Test
    void zeroBytesAreNotText() {
        assertThat(codes(csv(WEEK.getBytes(UTF_16LE)))).containsExactly(ENCODING_UNREADABLE);
        byte[] tail = Arrays.copyOf(WEEK.getBytes(UTF_8), 500);
        assertThat(codes(csv(tail))).containsExactly(ENCODING_UNREADABLE);
    }

    @Test
    void aBrokenSequenceAfterAByteOrderMarkIsNotGuessed() {
        byte[] marked = ("\uFEFF" + WEEK).getBytes(UTF_8);
        marked[marked.length - 4] = (byte) 0xFF;
        assertThat(codes(csv(marked))).containsExactly(ENCODING_UNREADABLE);
    }

    @Test
    void halfACharacterAtTheEndIsACutFile() {
        byte[] whole = (WEEK + "SB-2,Zoë,Zoë").getBytes(UTF_8);
        assertThat(codes(csv(Arrays.copyOf(whole, whole.length - 1))))
                .containsExactly(FILE_MAY_BE_CUT);
    }

    @ParameterizedTest
    @ValueSource(strings = {",", ";", "\t", "|"})
    void theDelimiterIsTheOneThatBringsOutTheHeadings(String delimiter) {
        Reading<Sheet> reading =
                csv(
                        "Job,Owner;x\tSerial\nSB-1,Ann;x\tTD-1\n"
                                .replaceAll("[,\t]", delimiter)
                                .replace(";x", ""));
        assertThat(texts(reading)).containsExactly(List.of("SB-1", "Ann", "TD-1"));
    }

    @Test
    void commasInTheDataDoNotOutweighTheHeadings() {
        Reading<Sheet> reading = csv("a,b,c,d\nJob;Owner\nSB-1;Example, Ann, Bob, Cec\n");
        assertThat(texts(reading)).containsExactly(List.of("SB-1", "Example, Ann, Bob, Cec"));
    }

    @Test
    void twoDelimitersThatMatchEquallyWellAreUnclear() {
        Reading<Sheet> reading = csv("Job,Owner,x\nSerial;Date;y\n1,2,3\n");
        assertThat(codes(reading)).containsExactly(DELIMITER_UNCLEAR);
        assertThat(reading.findings().get(0).fact()).contains("comma").contains("semicolon");
        assertThat(csv("Job,Owner,x\nSerial|Date|y\n1,2,3\n").findings().get(0).fact())
                .contains("by comma and by \"|\"");
    }

    @Test
    void aLineThatNamesTheDelimiterIsHonoured() {
        Reading<Sheet> reading = csv("sep=;\r\nJob;Owner\r\nSB-1;Ann\r\n");
        assertThat(texts(reading)).containsExactly(List.of("SB-1", "Ann"));
        assertThat(sheet(reading).headingRow()).isEqualTo(2);
        assertThat(texts(csv("sep=|\nJob|Owner\nSB-1|Ann, Bob; Cec\n")))
                .containsExactly(List.of("SB-1", "Ann, Bob; Cec"));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "Job,Owner\nSB-1,\"Ann\nSB-2,Bob\n",
                "Job,Owner\nSB-1,\"Ann\"x\n",
                "Job,Owner\nSB-1,Ann\"\n",
                "Job,Owner\nSB-1, \"Ann\"\n",
                "Job,Owner\nSB-1,5\" pipe\nSB-2,\"x\"\n"
            })
    void aBrokenQuoteRefusesTheFileAndNamesTheLine(String text) {
        Reading<Sheet> reading = csv(text);
        assertThat(reading.result()).isEmpty();
        assertThat(codes(reading)).containsExactly(CSV_BROKEN);
        assertThat(reading.findings().get(0).place()).isEqualTo(new Place.InRow("week.csv", "", 2));
    }

    @Test
    void aBrokenQuoteInTheHeadingsIsNamedAsSuch() {
        assertThat(codes(csv("\"Job,Owner\nSB-1,Ann\n"))).containsExactly(CSV_BROKEN);
    }

    @Test
    void aRowWithTooFewFieldsIsStoppedAndTheOthersAreRead() {
        Reading<Sheet> reading = csv("Job,Owner,Serial\nSB-1,Ann\nSB-2,Bob,TD-2\n");
        assertThat(codes(reading)).containsExactly(ROW_SHORT);
        assertThat(reading.findings().get(0).place()).isEqualTo(new Place.InRow("week.csv", "", 2));
        assertThat(texts(reading))
                .containsExactly(List.of("SB-1", "Ann", ""), List.of("SB-2", "Bob", "TD-2"));
    }

    @Test
    void aRowWithTooManyFilledFieldsIsStopped() {
        Reading<Sheet> reading = csv("Job,Owner\nSB-1,Example, Ann\nSB-2,Bob,,\n");
        assertThat(codes(reading)).containsExactly(ROW_LONG);
        assertThat(reading.findings().get(0).seen()).isEmpty();
    }

    @Test
    void aShortLastRowWithoutLineEndMayBeCut() {
        assertThat(codes(csv("Job,Owner,Serial\nSB-1,Ann,TD-1\nSB-2,Bo")))
                .containsExactly(FILE_MAY_BE_CUT);
        assertThat(csv("Job,Owner,Serial\nSB-1,Ann,TD-1\nSB-2,Bob,TD-2").findings()).isEmpty();
    }

    @Test
    void aCutCanShortenOnlyTheLastFieldOfAWholeRow() {
        String whole = "Job,Owner,Serial\nSB-1,\"Ann, Bob\",TD-1\nSB-2,Cec,TD-2\n";
        int accepted = 0;
        for (int length = 1; length < whole.length(); length++) {
            Reading<Sheet> reading = csv(whole.substring(0, length));
            if (reading.result().isPresent()) {
                accepted++;
                assertThat(texts(reading).get(0)).startsWith("SB-1", "Ann, Bob");
                assertThat(texts(reading).size() == 1 || texts(reading).get(1).get(1).equals("Cec"))
                        .isTrue();
            }
        }
        assertThat(accepted).isEqualTo(2 * "TD-1\n".length() + 1);
    }

    @Test
    void rowsOfTotalsAndRepeatedHeadingsAreLeftOut() {
        Reading<Sheet> reading = csv("Job,Owner\nSB-1,Ann\nJob,Owner\nTotal:,1\n");
        assertThat(texts(reading)).hasSize(1);
        assertThat(codes(reading)).containsExactly(ROW_IGNORED, ROW_IGNORED);
    }

    @Test
    void aFirmCalledTotalIsNoTotal() {
        assertThat(texts(csv("Job,Owner\nTotal Plumbing,Ann\n"))).hasSize(1);
    }

    @Test
    void filesWithoutContentAreRefused() {
        assertThat(codes(csv(""))).containsExactly(REGISTER_EMPTY);
        assertThat(codes(csv(" \n\n"))).containsExactly(HEADINGS_NOT_FOUND);
        assertThat(codes(csv("Job,Owner\n"))).containsExactly(REGISTER_EMPTY);
        assertThat(codes(csv("Job,Owner\n,\n"))).containsExactly(REGISTER_EMPTY);
    }

    @Test
    void unknownHeadingsAreListed() {
        Reading<Sheet> reading = csv("Auftrag,Kunde\n1,2\n");
        assertThat(codes(reading)).containsExactly(HEADINGS_NOT_FOUND);
        assertThat(reading.findings().get(0).fact()).contains("\"Auftrag\", \"Kunde\"");
    }

    @Test
    void twoColumnsWithOneHeadingAreNamedBoth() {
        Reading<Sheet> reading = csv("Job,Owner,Notes,Notes,Job\nSB-1,Ann,a,b,SB-2\n");
        assertThat(codes(reading)).containsExactly(HEADING_TWICE);
        Finding twice = reading.findings().get(0);
        assertThat(twice.place()).isEqualTo(new Place.InColumn("week.csv", "", "Job", "E"));
        assertThat(twice.also()).containsExactly(new Place.InColumn("week.csv", "", "Job", "A"));
    }

    @Test
    void hugeFilesRowsAndCellsAreRefused() {
        assertThat(codes(csv("Job,Owner\n" + "1,2\n".repeat(20_000)))).isEmpty();
        assertThat(codes(csv("Job,Owner\n" + "1,2\n".repeat(20_001))))
                .containsExactly(FILE_TOO_LARGE);
        assertThat(codes(csv("Job,Owner\n" + "1,".repeat(300) + "\n")))
                .containsExactly(FILE_TOO_LARGE);
        assertThat(codes(csv("Job,Owner\n" + ",".repeat(20_000_000))))
                .containsExactly(FILE_TOO_LARGE);
        assertThat(codes(csv(new byte[26 * 1024 * 1024]))).containsExactly(FILE_TOO_LARGE);
        Sheet sheet = sheet(csv("Job,Owner\nSB-1," + "x".repeat(40_000) + "\n"));
        assertThat(codes(sheet.rows().get(0).cell(sheet.columns().get(1))))
                .containsExactly(CELL_TOO_LONG);
    }

    private static List<List<String>> texts(Reading<Sheet> reading) {
        Sheet sheet = sheet(reading);
        return sheet.rows().stream()
                .map(row -> sheet.columns().stream().map(c -> row.cell(c).text()).toList())
                .toList();
    }
}
