package paperbark.job;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import paperbark.finding.Finding;

class TradesCheckTest {
    private static final String LATE = "certificate-late";

    // Days or months after installation per state and trade: the sample firm's state-papers table,
    // which
    // names its sources. 30 Oct 2026 is a Friday. Each pair is the last day in time and the first
    // one late.
    @ParameterizedTest
    @CsvSource({
        "VIC, Plumbing, 30/10/2026, 4/11/2026, 5/11/2026",
        "VIC, Electrical, 15/10/2026, 15/11/2026, 16/11/2026",
        "NSW, Electrical, 30/10/2026, 6/11/2026, 7/11/2026",
        "QLD, Plumbing, 30/10/2026, 13/11/2026, 14/11/2026",
        "QLD, Plumbing, 31/10/2026, 13/11/2026, 14/11/2026",
        "SA, Plumbing, 30/10/2026, 6/11/2026, 7/11/2026",
        "SA, Electrical, 20/10/2026, 19/11/2026, 20/11/2026",
        "WA, Plumbing, 30/10/2026, 6/11/2026, 7/11/2026",
        "WA, Electrical, 20/10/2026, 17/11/2026, 18/11/2026",
        "ACT, Electrical, 30/10/2026, 13/11/2026, 14/11/2026"
    })
    void theLastDayStillCounts(
            String state, String trade, String installed, String lastDay, String late) {
        assertThat(dated(state, trade, installed, lastDay).codes()).doesNotContain(LATE);
        assertThat(dated(state, trade, installed, late).codes()).contains(LATE);
    }

    @ParameterizedTest
    @CsvSource({
        "NSW, Plumbing",
        "QLD, Electrical",
        "TAS, Plumbing",
        "TAS, Electrical",
        "ACT, Plumbing",
        "NT, Plumbing",
        "NT, Electrical"
    })
    void nothingIsLateWhereNoNumberOfDaysWasFound(String state, String trade) {
        assertThat(dated(state, trade, "2/1/2026", "20/11/2026").codes()).doesNotContain(LATE);
    }

    @Test
    void theFactTellsFromWhenAndHowTheDaysAreCounted() {
        assertThat(dated("VIC", "Plumbing", "9/11/2026", "15/11/2026").only(LATE).fact())
                .isEqualTo(
                        "The plumbing certificate is dated 15 Nov 2026; the 5 days after the installation ended on 14 Nov 2026.");
        assertThat(dated("QLD", "Plumbing", "30/10/2026", "16/11/2026").only(LATE).fact())
                .isEqualTo(
                        "The plumbing certificate is dated 16 Nov 2026; the 10 working days after the installation, public holidays not counted, ended on 13 Nov 2026.");
    }

    @ParameterizedTest
    @CsvSource({"Plumbing, plumbing", "Electrical, electrical"})
    void aCertificateOlderThanTheInstallationIsOutOfOrderAndNotLate(String trade, String word) {
        Register.Result result = dated("VIC", trade, "9/11/2026", "8/11/2026");

        assertThat(result.codes()).contains("dates-out-of-order").doesNotContain(LATE);
        assertThat(result.only("dates-out-of-order").fact())
                .isEqualTo(
                        "The "
                                + word
                                + " certificate is dated 8 Nov 2026, before the installation on 9 Nov 2026.");
    }

    @Test
    void aBookedJobHasNoCertificateToBeLate() {
        assertThat(
                        Register.read(
                                        "Stage,Visit date,Plumbing certificate date\nbooked,2/11/2026,20/11/2026")
                                .codes())
                .doesNotContain(LATE);
    }

    // Perry Peppermint's Victorian licence is in force from 1 Nov 2023 to 31 Oct 2026.
    @ParameterizedTest
    @CsvSource({"31/10/2023, true", "1/11/2023, false", "31/10/2026, false", "1/11/2026, true"})
    void aLicenceIsInForceOnItsFirstAndItsLastDay(String installed, boolean lapsed) {
        assertThat(
                        Register.read("Installed on,Plumber\n" + installed + ",Perry Peppermint")
                                .codes()
                                .contains("licence-expired"))
                .isEqualTo(lapsed);
    }

    @Test
    void aLicenceOfAnotherTradeOrStateIsNone() {
        Finding otherTrade =
                Register.read("Installed on,Plumber\n20/11/2026,Tilly Teatree")
                        .only("licence-missing");
        assertThat(otherTrade.fact())
                .isEqualTo("The people table has no plumbing licence of Tilly Teatree for VIC.");
        assertThat(
                        Register.read(
                                        "Installed on,Site state,Site postcode,Plumber\n20/11/2026,TAS,7000,Clem Currawong")
                                .codes())
                .contains("licence-missing");
    }

    private static Register.Result dated(
            String state, String trade, String installed, String issued) {
        return Register.read(
                "Stage,Site state,Installed on,%s certificate date\ninstalled,%s,%s,%s"
                        .formatted(trade, state, installed, issued));
    }
}
