package paperbark.output.table;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import paperbark.finding.Finding;
import paperbark.output.BatchView;
import paperbark.output.BatchViews;
import paperbark.output.Jobs;

class BatchTablesTest {
    private static final BatchTables WEEK = BatchTables.of(BatchViews.week());

    @Test
    void derivedColumnsCarryTheirFormulaAndTheSameFigure() {
        Table expected = WEEK.expected();
        for (List<TableCell> row : expected.rows()) {
            BigDecimal gross = expected.value(row, "gross").amount();
            BigDecimal fee = expected.value(row, "fee").amount();
            TableCell net = row.get(expected.column("net"));
            assertThat(net.formula()).contains("[gross]-[fee]");
            assertThat(net.value().amount()).isEqualTo(gross.subtract(fee));
        }
    }

    @Test
    void totalsStandBelowTheirColumn() {
        Table expected = WEEK.expected();
        TableCell total = expected.footers().get(0).get(expected.column("net"));
        assertThat(total.formula())
                .contains("SUMIFS([Expected:net],[Expected:standing],\"<>held\")");
        assertThat(total.value().amount()).isEqualTo("3345.56");
        TableCell held = expected.footers().get(1).get(expected.column("net"));
        assertThat(held.value().amount()).isEqualTo("1721.89");
    }

    @Test
    void onlyTheHeldClaimsOfAJobAreMarkedHeld() {
        Table certificates = WEEK.certificates();
        assertThat(certificates.rows())
                .extracting(
                        row ->
                                certificates.value(row, "job").shown()
                                        + " "
                                        + certificates.value(row, "standing").shown())
                .containsExactly(
                        "SB-1041 due",
                        "SB-1041 due",
                        "SB-1042 booked",
                        "SB-1043 due",
                        "SB-1044 held",
                        "SB-1044 held");
    }

    @Test
    void statusFollowsTheGravestFinding() {
        Table jobs = WEEK.jobs();
        assertThat(jobs.rows())
                .extracting(row -> jobs.value(row, "status").shown())
                .containsExactly("ready", "ready", "ready, look at it", "held", "ready");
    }

    @Test
    void aFindingTellsItsPlaceItsRemedyAndItsRule() {
        Finding twice = BatchViews.twice().forJob("SB-1044");
        Table table = FindingsTable.of(List.of(twice), f -> Optional.of("'Week 47'!H7"));
        assertThat(table.rows().get(0))
                .extracting(cell -> cell.value().shown())
                .containsExactly(
                        "stop",
                        "serial-twice",
                        "SB-1044",
                        "week-47.xlsx",
                        "Week 47",
                        "7",
                        "Tank serial",
                        "H7",
                        "TD-2231",
                        "Two rows of the register name this serial.",
                        "Read the number off both tanks again.",
                        "week-47.xlsx > Week 47 > H4 \"Tank serial\"",
                        "A serial can be claimed once.",
                        "Sample product table (invented for the demonstration)");
    }

    @Test
    void jobsWithoutAPriceAreNamedInTheGstNotes() {
        assertThat(WEEK.gst().notes()).contains("1 job without a price is not in this list.");
    }

    @Test
    void aJobThatClaimsNothingHasNoCertificates() {
        BatchView view =
                BatchViews.of(true, List.of(new Jobs("SB-1", "Fern", "Ballan").caseFile()));
        assertThat(BatchTables.of(view).certificates().rows()).isEmpty();
        assertThat(BatchTables.of(view).jobs().rows()).hasSize(1);
    }

    @Test
    void aRowThatIsTooShortIsRefused() {
        assertThatThrownBy(
                        () ->
                                new Table(
                                        "Short",
                                        "Short",
                                        List.of(),
                                        List.of(TableColumn.text("a", "A", 5)),
                                        List.of(List.of()),
                                        List.of()))
                .isInstanceOf(IllegalArgumentException.class);
    }
}
