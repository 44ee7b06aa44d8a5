package paperbark.settle;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.function.Predicate;
import paperbark.ledger.ClaimState;
import paperbark.ledger.Ledger;
import paperbark.ledger.LedgerPlace;
import paperbark.ledger.Receipt;
import paperbark.ledger.Sale;
import paperbark.value.Days;
import paperbark.value.Money;
import paperbark.value.SchemeName;

/**
 * The figures of a quarter for the activity statement. Sales count on the day of installation,
 * money from buyers on the day on which it came; whether the firm reports by one or the other is
 * for its accountant to say.
 *
 * @param from first day
 * @param to last day
 * @param jobs installations with a known price
 * @param sales full prices with GST, before certificates
 * @param gst GST included in them
 * @param certificates those claimed for installations of the quarter, by scheme; every scheme has
 *     its entry
 * @param expected money expected for those claims
 * @param gstBeyond GST on what buyers paid beyond the discounts given, for claims fully paid in the
 *     quarter
 * @param received money that came from buyers in the quarter, reversals taken off
 */
public record Quarter(
        LocalDate from,
        LocalDate to,
        int jobs,
        Money sales,
        Money gst,
        Map<SchemeName, Integer> certificates,
        Money expected,
        Money gstBeyond,
        Money received) {
    private static final int FIRST_MONTH = 7;

    /** The quarter in words: {@code Jul to Sep 2026}. */
    public String name() {
        return Days.quarter(from);
    }

    /**
     * The four quarters of a financial year, July to June.
     *
     * @param endingIn the year in which it ends, e.g. 2027 for 2026-27
     */
    public static List<Quarter> ofYear(
            int endingIn, List<Sale> sales, List<ClaimState> claims, List<Receipt> payments) {
        List<Quarter> quarters = new ArrayList<>();
        LocalDate first = LocalDate.of(endingIn - 1, FIRST_MONTH, 1);
        for (int i = 0; i < 4; i++) {
            LocalDate from = first.plusMonths(3L * i);
            quarters.add(of(from, from.plusMonths(3).minusDays(1), sales, claims, payments));
        }
        return quarters;
    }

    /** The year in which the financial year of a day ends. */
    public static int yearOf(LocalDate day) {
        return day.getYear() + (day.getMonthValue() < FIRST_MONTH ? 0 : 1);
    }

    /**
     * The quarters of a financial year, as a ledger has them.
     *
     * @param endingIn as above
     * @param asOf what was entered, or came, after that day is left out
     */
    public static List<Quarter> ofYear(LedgerPlace place, int endingIn, LocalDate asOf) {
        try (Ledger ledger = Ledger.open(place)) {
            return ofYear(
                    endingIn,
                    ledger.income().sales(asOf),
                    ledger.claims(asOf),
                    ledger.income().receipts(asOf));
        }
    }

    private static Quarter of(
            LocalDate from,
            LocalDate to,
            List<Sale> sales,
            List<ClaimState> claims,
            List<Receipt> payments) {
        Predicate<LocalDate> within = day -> !day.isBefore(from) && !day.isAfter(to);
        List<Sale> sold = sales.stream().filter(s -> within.test(s.installedOn())).toList();
        List<ClaimState> claimed =
                claims.stream().filter(c -> within.test(c.installedOn())).toList();
        List<Receipt> paid = payments.stream().filter(p -> within.test(p.day())).toList();
        return new Quarter(
                from,
                to,
                sold.size(),
                sum(sold, Sale::price),
                sum(sold, Sale::gst),
                certificates(claimed),
                sum(claimed, ClaimState::expected),
                sum(
                        claims.stream()
                                .filter(c -> !c.isOpen() && c.paidOn().filter(within).isPresent())
                                .toList(),
                        ClaimState::firmGst),
                sum(paid, Receipt::amount));
    }

    private static Map<SchemeName, Integer> certificates(List<ClaimState> claims) {
        Map<SchemeName, Integer> all = new EnumMap<>(SchemeName.class);
        for (SchemeName scheme : SchemeName.values()) {
            all.put(scheme, 0);
        }
        claims.forEach(c -> all.merge(c.scheme(), c.certificates(), Integer::sum));
        return all;
    }

    private static <T> Money sum(List<T> all, Function<T, Money> amount) {
        return all.stream().map(amount).reduce(Money.ZERO, Money::plus);
    }
}
