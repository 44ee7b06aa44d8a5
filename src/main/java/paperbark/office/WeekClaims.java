package paperbark.office;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import paperbark.firm.Buyer;
import paperbark.firm.FirmTables;
import paperbark.job.Job;
import paperbark.ledger.ClaimState;
import paperbark.ledger.Failed;
import paperbark.ledger.Ledger;
import paperbark.ledger.Lodging;
import paperbark.output.WeekView;
import paperbark.settle.Owing;
import paperbark.value.Days;
import paperbark.value.Money;
import paperbark.value.Phone;

/** Puts claims into the words of the page of the week: what is to be lodged, signed and paid. */
final class WeekClaims {
    // A sheet for the wall; how many more there are is said below them.
    private static final int NOT_BACK = 40;
    // More than that nobody lodges by a list on paper.
    private static final int LISTED = 200;

    private final DaysLeft left;
    private final Optional<FirmTables> tables;

    /** Words for a day; the firm's tables tell how to reach its buyers. */
    WeekClaims(DaysLeft left, Optional<FirmTables> tables) {
        this.left = left;
        this.tables = tables;
    }

    /** The first of some claims, each with its last day. */
    List<WeekView.Closing> closings(List<ClaimState> claims) {
        return claims.stream().limit(LISTED).map(this::closing).toList();
    }

    /** How many more there are than are listed. */
    static int further(List<ClaimState> claims) {
        return Math.max(0, claims.size() - LISTED);
    }

    /**
     * Claims that can be lodged no longer. Where nobody says what was lodged they are many, and the
     * newest can still be asked about.
     */
    WeekView.TooLate tooLate(List<ClaimState> claims) {
        List<ClaimState> newest =
                claims.subList(Math.max(0, claims.size() - NOT_BACK), claims.size());
        return new WeekView.TooLate(claims.size(), closings(newest), Lodging.WHEN_TOO_LATE);
    }

    private WeekView.Closing closing(ClaimState c) {
        return new WeekView.Closing(
                c.reference(),
                c.certificates() + " " + c.scheme().word() + "s",
                c.buyer(),
                phone(c.buyer()),
                c.lodgeBy().map(Days::show).orElse(""),
                c.lodgeBy().map(left::until).orElse(""),
                c.failed().map(Failed::reason).orElse(""));
    }

    /** How many assignments are signed, and those that are not back yet. */
    WeekView.Signed signed(Lodging lodging, Ledger ledger, FiledJobs filed) {
        return new WeekView.Signed(
                lodging.ready().size(),
                lodging.awaited().size(),
                lodging.awaited().stream()
                        .limit(NOT_BACK)
                        .map(a -> notBack(a, filed.of(ledger, a.claim().job())))
                        .toList());
    }

    private WeekView.NotBack notBack(Lodging.Assigned assigned, Optional<Job> job) {
        Optional<LocalDate> last = assigned.claim().lodgeBy();
        return new WeekView.NotBack(
                assigned.claim().reference(),
                assigned.name(),
                assigned.paper().awaited(),
                assigned.paper().batch(),
                job.flatMap(j -> j.owner().phone()),
                last.map(Days::show).orElse(""),
                last.map(left::until).orElse(""));
    }

    /** What is wanted of claims to be lodged and is not there. */
    WeekView.Files files(Photos.Result photos, List<ClaimState> claims) {
        Set<String> toLodge =
                claims.stream()
                        .filter(c -> c.isToLodge(left.today()))
                        .map(ClaimState::job)
                        .collect(Collectors.toSet());
        List<WeekView.Lacking> lacking =
                photos.jobs().stream()
                        .filter(j -> toLodge.contains(j.job()) && !j.lacking().isEmpty())
                        .map(j -> new WeekView.Lacking(j.job(), String.join(", ", j.lacking())))
                        .toList();
        return new WeekView.Files(
                PhotoDesk.lines(photos),
                lacking.stream().limit(NOT_BACK).toList(),
                Math.max(0, lacking.size() - NOT_BACK));
    }

    /** What each buyer owes past its day; the lines come with the longest overdue first. */
    List<WeekView.Overdue> overdue(List<Owing.Line> late) {
        Map<String, List<Owing.Line>> byBuyer = new TreeMap<>(String.CASE_INSENSITIVE_ORDER);
        late.forEach(
                l -> byBuyer.computeIfAbsent(l.claim().buyer(), b -> new ArrayList<>()).add(l));
        List<WeekView.Overdue> all = new ArrayList<>();
        byBuyer.forEach(
                (buyer, lines) ->
                        all.add(
                                new WeekView.Overdue(
                                        buyer.isEmpty() ? "(no buyer)" : buyer,
                                        phone(buyer),
                                        sum(lines).toString(),
                                        oldest(lines.get(0)),
                                        lines.size())));
        return all;
    }

    /** What is still to come of some claims. */
    static Money sum(List<Owing.Line> lines) {
        return lines.stream().map(l -> l.claim().outstanding()).reduce(Money.ZERO, Money::plus);
    }

    private static String oldest(Owing.Line line) {
        return line.claim().reference()
                + ", due "
                + line.claim().due().map(Days::show).orElse("")
                + ", "
                + DaysLeft.count(line.daysOverdue());
    }

    private Optional<Phone> phone(String buyer) {
        return tables.flatMap(t -> t.buyer(buyer)).flatMap(Buyer::phone);
    }
}
