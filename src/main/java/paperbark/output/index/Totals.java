package paperbark.output.index;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import paperbark.offer.Standing;
import paperbark.output.BatchView;
import paperbark.output.index.IndexView.Figure;
import paperbark.output.table.ExpectedTable;
import paperbark.output.table.GroupedSums;
import paperbark.output.table.JobStatus;
import paperbark.value.Money;
import paperbark.value.SchemeName;

/**
 * The figures at the top of the index page: jobs, packs, certificates by scheme, money.
 *
 * @param view the batch
 */
record Totals(BatchView view) {

    /** One after the other, as the page shows them. */
    List<Figure> all() {
        List<Figure> all = new ArrayList<>();
        all.add(jobs());
        all.add(new Figure("Packs", Integer.toString(view.cases().size()), ""));
        for (SchemeName scheme : SchemeName.values()) {
            all.add(certificates(scheme));
        }
        all.add(money());
        return all;
    }

    private Figure jobs() {
        long held =
                view.cases().stream().filter(file -> JobStatus.of(file) == JobStatus.HELD).count();
        return new Figure(
                "Jobs",
                Integer.toString(view.cases().size()),
                note(
                        held + " held",
                        view.cancelled() > 0 ? view.cancelled() + " cancelled" : "",
                        view.leftOut() > 0 ? "rows left out as no jobs: " + view.leftOut() : ""));
    }

    private Figure certificates(SchemeName scheme) {
        long booked = count(scheme, Standing.BOOKED);
        long held = count(scheme, Standing.HELD);
        return new Figure(
                scheme.word() + "s",
                Long.toString(count(scheme, Standing.DUE) + booked),
                note(
                        booked > 0 ? booked + " of them only booked" : "",
                        held > 0 ? held + " more held" : ""));
    }

    private Figure money() {
        GroupedSums<String> expected = GroupedSums.byWord(ExpectedTable.of(view), "standing");
        Money held = toFirm(expected, Standing.HELD);
        Money booked = toFirm(expected, Standing.BOOKED);
        boolean fees =
                Stream.of(Standing.DUE, Standing.BOOKED)
                        .anyMatch(s -> !sum(expected, "fee", s).isZero());
        return new Figure(
                "Money expected",
                toFirm(expected, Standing.DUE).plus(booked).toString(),
                note(
                        fees ? "net of fees" : "",
                        booked.isZero() ? "" : booked + " of it only booked",
                        held.isZero() ? "" : held + " more held"));
    }

    private static String note(String... parts) {
        return Stream.of(parts).filter(part -> !part.isEmpty()).collect(Collectors.joining(", "));
    }

    private long count(SchemeName scheme, Standing standing) {
        return view.cases().stream()
                .filter(file -> file.standing(scheme) == standing)
                .flatMap(file -> file.entitlements().of(scheme).stream())
                .mapToLong(e -> e.certificates().orElse(0))
                .sum();
    }

    private static Money toFirm(GroupedSums<String> expected, Standing standing) {
        return sum(expected, "to-firm", standing);
    }

    private static Money sum(GroupedSums<String> expected, String column, Standing standing) {
        return new Money(expected.sum(standing.word(), column));
    }
}
