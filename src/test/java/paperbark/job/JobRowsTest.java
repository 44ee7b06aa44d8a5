package paperbark.job;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import paperbark.finding.Finding;
import paperbark.finding.FindingCode;
import paperbark.finding.Severity;
import paperbark.firm.Words;
import paperbark.sheet.ColumnMap;
import paperbark.sheet.ColumnNames;
import paperbark.sheet.Sheet;
import paperbark.sheet.SheetReader;

class JobRowsTest {
    private static final String HEADINGS =
            "Job,Stage,Owner,Owner's phone,Site street,Site suburb,Site state,Site postcode,Maker,Model,Office note\n";
    private static final String CERTIFICATES =
            HEADINGS.strip() + ",Certificates of this row,Number of these certificates\n";

    @ParameterizedTest
    @ValueSource(
            strings = {
                "pink = waiting for serial,,,,,,,,,,",
                "WEEK 48 - to be confirmed,,,,,,,,,,",
                "Freight,,,,,,,,,,120.00",
                "2 jobs,,,,,,,,,,",
                "end of list,,,,,,,,,,",
                ",,,,,,,,,,see Bluegum about the Umbrella Rise job",
                "SB-9,booked,Ann,,,Ballan,VIC,3342,,,ring her first"
            })
    void aRowThatSaysLessThanTwoThingsOfAJobIsNone(String row) {
        JobRows rows = rows("", row);
        assertThat(rows.sheet().rows()).isEmpty();
        assertThat(rows.others()).containsExactly(2);
        Finding finding = rows.findings().get(0);
        assertThat(finding.code()).isEqualTo(FindingCode.ROW_NO_JOB);
        assertThat(finding.severity()).isEqualTo(Severity.CHECK);
        assertThat(finding.seen()).isNotEmpty();
        assertThat(finding.fact()).contains("\"Site street\", \"Maker\", \"Model\"");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "SB-9,booked,Ann,,4 Teaspoon Lane,Ballan,VIC,3342,,,",
                "SB-9,booked,,,,,,,Dunlin,D270-A,",
                ",booked,Ann,,,,,,Dunlin,,",
                "SB-9,called off,,,,,,,,,"
            })
    void twoThingsOfAJobAreEnoughAndACancelledOneNeedsOnlyItsNumber(String row) {
        JobRows rows = rows("", row);
        assertThat(rows.sheet().rows()).hasSize(1);
        assertThat(rows.findings()).isEmpty();
    }

    @Test
    void whatHoldsForEveryRowMakesNoJobOfARemark() {
        assertThat(rows("maker,,Dunlin\nmodel,,D270-A", "WEEK 48,,,,,,,,,,").sheet().rows())
                .isEmpty();
    }

    @Test
    void aTelephoneNumberIsNotQuoted() {
        assertThat(rows("", "ring,,,0491 570 156,,,,,,,").findings().get(0).seen())
                .isEqualTo("ring");
    }

    @Test
    void aRowWithTheNumberOfAJobIsLeftOutWithAWordOnThatJob() {
        JobRows rows =
                rows(
                        "",
                        "SB-9,booked,Ann,,,Ballan,VIC,3342,Dunlin,,\nsb-9,,,,,,,,,,ring her first");
        assertThat(rows.others()).containsExactly(3);
        assertThat(rows.findings().get(0).job()).contains("SB-9");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "SB-9,,,,,,,,,,call again,,",
                "SB-9 call again,,,,,,,,,,,,",
                "SB-9 call again,,,,,,,,,,,VEEC,7",
                "SB-8,,,,,,,,,,,VEEC,7"
            })
    void aRemarkInAListWithARowACertificateStaysOne(String row) {
        assertThat(certificateRows(row).others()).containsExactly(3);
    }

    @ParameterizedTest
    @ValueSource(strings = {"SB-9,,,,,,,,,,,VEEC,7", "sb-9,,,,,,,,,,,VEEC,", "SB-9,,,,,,,,,,,,7"})
    void aRowThatTellsOfCertificatesOfAJobOfTheListIsARowOfThatJob(String row) {
        JobRows rows = certificateRows(row);
        assertThat(rows.sheet().rows()).hasSize(2);
        assertThat(rows.findings()).isEmpty();
    }

    @Test
    void theRowWithTheJobsFactsMayComeSecond() {
        assertThat(
                        rows(
                                        "row-a-certificate,,yes",
                                        CERTIFICATES,
                                        "SB-9,,,,,,,,,,,VEEC,7\nSB-9,,Ann,,,,,,Dunlin,,,STC,9")
                                .others())
                .isEmpty();
    }

    private static JobRows certificateRows(String second) {
        return rows(
                "row-a-certificate,,yes",
                CERTIFICATES,
                "SB-9,booked,Ann,,,Ballan,VIC,3342,Dunlin,,,STC,9\n" + second);
    }

    private static JobRows rows(String columnLines, String row) {
        return rows(columnLines, HEADINGS, row);
    }

    private static JobRows rows(String columnLines, String headings, String row) {
        ColumnNames<Field> names = Register.names(columnLines);
        Sheet sheet =
                SheetReader.readCsv(
                                "week.csv",
                                (headings + row + "\n").getBytes(StandardCharsets.UTF_8),
                                names::knows)
                        .result()
                        .orElseThrow();
        return JobRows.of(
                sheet,
                ColumnMap.of(sheet, names).result().orElseThrow(),
                Words.SHIPPED,
                JobReader.isRowEach(names));
    }
}
