package paperbark.settle;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import paperbark.ledger.ClaimState;
import paperbark.ledger.Failed;
import paperbark.ledger.Receipt;
import paperbark.ledger.Sale;
import paperbark.value.Money;
import paperbark.value.SchemeName;

class OwingTest {
    private static final LocalDate DUE = LocalDate.of(2026, 12, 1);

    private static ClaimState claim(boolean lodged, LocalDate lodgeBy, String received) {
        return claim(lodged, lodgeBy, received, Optional.empty());
    }

    private static ClaimState claim(
            boolean lodged, LocalDate lodgeBy, String received, Optional<Failed> failed) {
        return new ClaimState(
                1,
                "SB-1",
                SchemeName.STC,
                "Kestrel Certificates",
                14,
                LocalDate.of(2026, 11, 20),
                Optional.of(lodgeBy),
                Money.of("504.00"),
                Money.ZERO,
                Money.of("5.00"),
                Optional.of(DUE),
                true,
                "one",
                LocalDate.of(2026, 11, 23),
                lodged,
                failed,
                Money.of(received),
                Optional.empty());
    }

    @ParameterizedTest
    @CsvSource({
        "2026-11-30, not due",
        "2026-12-01, not due",
        "2026-12-02, 1-30 days",
        "2026-12-31, 1-30 days",
        "2027-01-01, 31-60 days",
        "2027-01-30, 31-60 days",
        "2027-01-31, 61-90 days",
        "2027-03-01, 61-90 days",
        "2027-03-02, over 90 days"
    })
    void moneyAgesFromTheDayAfterItWasDue(LocalDate asOf, String age) {
        Owing owing = Owing.of(List.of(claim(true, DUE.plusYears(1), "4.00")), asOf);
        assertThat(owing.open()).singleElement().extracting(l -> l.age().words()).isEqualTo(age);
        assertThat(owing.total().values()).contains(Money.of("500.00"));
        assertThat(owing.byBuyer()).containsOnlyKeys("Kestrel Certificates");
    }

    @Test
    void whatIsPaidOrPaidTooMuchIsNotOwed() {
        assertThat(
                        Owing.of(
                                        List.of(
                                                claim(true, DUE, "504.00"),
                                                claim(true, DUE, "510.00")),
                                        DUE)
                                .open())
                .isEmpty();
    }

    @Test
    void aClaimThatIsNotLodgedIsToldFewerThanSixtyDaysBeforeItCloses() {
        LocalDate closes = LocalDate.of(2027, 11, 20);
        List<ClaimState> claims =
                List.of(claim(false, closes, "0.00"), claim(true, closes, "0.00"));
        assertThat(Owing.of(claims, closes.minusDays(60)).closing()).isEmpty();
        assertThat(Owing.of(claims, closes.minusDays(59)).closing()).hasSize(1);
        assertThat(Owing.of(claims, closes).closing()).hasSize(1);
        assertThat(Owing.of(claims, closes).tooLate()).isEmpty();
        assertThat(Owing.of(claims, closes.plusDays(1)).closing()).isEmpty();
        assertThat(Owing.of(claims, closes.plusDays(1)).tooLate()).containsExactly(claims.get(0));
    }

    @Test
    void aClaimThatFailedStandsAloneAndIsNeitherOwedNorClosing() {
        LocalDate closes = LocalDate.of(2027, 11, 20);
        ClaimState failed = claim(true, closes, "0.00", Optional.of(new Failed(DUE, "no photo")));

        Owing owing = Owing.of(List.of(failed), closes.minusDays(10));

        assertThat(owing.failed()).containsExactly(failed);
        assertThat(owing.open()).isEmpty();
        assertThat(owing.closing()).isEmpty();
        assertThat(Owing.of(List.of(failed), closes.plusDays(1)).failed()).isEmpty();
        assertThat(Owing.of(List.of(failed), closes.plusDays(1)).tooLate()).containsExactly(failed);
    }

    @Test
    void quartersBeginInJulyAndEveryDayLiesInOne() {
        List<Quarter> quarters =
                Quarter.ofYear(
                        2027,
                        List.of(
                                new Sale(
                                        LocalDate.of(2026, 9, 30),
                                        Money.of("1100.00"),
                                        Money.of("100.00")),
                                new Sale(
                                        LocalDate.of(2026, 10, 1),
                                        Money.of("2200.00"),
                                        Money.of("200.00"))),
                        List.of(claim(true, DUE, "0.00")),
                        List.of(
                                new Receipt(
                                        LocalDate.of(2027, 1, 1),
                                        SchemeName.STC,
                                        Money.of("504.00")),
                                new Receipt(
                                        LocalDate.of(2027, 6, 30),
                                        SchemeName.STC,
                                        Money.of("-4.00")),
                                new Receipt(
                                        LocalDate.of(2027, 7, 1),
                                        SchemeName.STC,
                                        Money.of("9.00"))));
        assertThat(quarters)
                .extracting(Quarter::name)
                .containsExactly(
                        "Jul to Sep 2026", "Oct to Dec 2026", "Jan to Mar 2027", "Apr to Jun 2027");
        assertThat(quarters)
                .extracting(q -> q.sales().toString())
                .containsExactly("$1,100.00", "$2,200.00", "$0.00", "$0.00");
        assertThat(quarters)
                .extracting(q -> q.gst().toString())
                .containsExactly("$100.00", "$200.00", "$0.00", "$0.00");
        assertThat(quarters)
                .extracting(q -> q.received().toString())
                .containsExactly("$0.00", "$0.00", "$504.00", "-$4.00");
        assertThat(quarters)
                .extracting(q -> q.certificates().get(SchemeName.STC))
                .containsExactly(0, 14, 0, 0);
    }

    private static ClaimState claim(
            long id, String buyer, boolean lodged, String due, String closes, String paidOn) {
        return new ClaimState(
                id,
                "SB-" + id,
                SchemeName.STC,
                buyer,
                14,
                LocalDate.of(2026, 11, 20),
                Optional.ofNullable(closes).map(LocalDate::parse),
                Money.of("504.00"),
                Money.ZERO,
                Money.of("5.00"),
                Optional.ofNullable(due).map(LocalDate::parse),
                true,
                "one",
                LocalDate.of(2026, 11, 23),
                lodged,
                Optional.empty(),
                paidOn == null ? Money.ZERO : Money.of("504.00"),
                Optional.ofNullable(paidOn).map(LocalDate::parse));
    }

    @Test
    void whatIsLongestOverdueComesFirstAndWhatHasNoDayIsNotDue() {
        Owing owing =
                Owing.of(
                        List.of(
                                claim(1, "", true, null, null, null),
                                claim(2, "Whimbrel", true, "2026-12-01", null, null),
                                claim(3, "Kestrel", true, "2026-11-01", null, null),
                                claim(4, "kestrel", true, "2026-11-01", null, null)),
                        LocalDate.of(2026, 12, 2));
        assertThat(owing.open())
                .extracting(l -> l.claim().id() + " " + l.daysOverdue())
                .containsExactly("3 31", "4 31", "2 1", "1 0");
        assertThat(owing.byBuyer().keySet()).containsExactly("(no buyer)", "Kestrel", "Whimbrel");
        assertThat(owing.byBuyer().get("Kestrel").values())
                .containsExactlyInAnyOrder(
                        Money.ZERO, Money.ZERO, Money.of("1008.00"), Money.ZERO, Money.ZERO);
        assertThat(owing.closing()).as("no closing day, nothing closes").isEmpty();
        assertThat(Owing.of(List.of(), DUE).total().values()).hasSize(5).containsOnly(Money.ZERO);
    }

    @Test
    void whatClosesFirstComesFirst() {
        List<ClaimState> claims =
                List.of(
                        claim(1, "", false, null, "2026-12-20", null),
                        claim(2, "", false, null, "2026-12-10", null),
                        claim(3, "", false, null, "2026-12-10", null));
        assertThat(Owing.of(claims, LocalDate.of(2026, 12, 1)).closing())
                .extracting(ClaimState::id)
                .containsExactly(2L, 3L, 1L);
    }

    @Test
    void gstBeyondTheDiscountIsDueInTheQuarterInWhichTheLastOfTheMoneyCame() {
        List<Quarter> quarters =
                Quarter.ofYear(
                        2027,
                        List.of(),
                        List.of(
                                claim(1, "", true, null, null, "2027-01-01"),
                                claim(2, "", true, null, null, "2026-12-31"),
                                claim(3, "", true, null, null, null)),
                        List.of());
        assertThat(quarters)
                .extracting(q -> q.gstBeyond().toString())
                .containsExactly("$0.00", "$5.00", "$5.00", "$0.00");
    }
}
