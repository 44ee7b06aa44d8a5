package paperbark.output.index;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import org.junit.jupiter.api.Test;
import paperbark.output.BatchView;
import paperbark.output.BatchViews;
import paperbark.output.CaseFile;
import paperbark.output.Jobs;
import paperbark.output.index.Chart.Bar;

class GlanceTest {
    private static final LocalDate FIRST = LocalDate.of(2024, 11, 4);

    private static Chart chart(BatchView view, String title) {
        return Glance.of(view).stream()
                .filter(c -> c.title().startsWith(title))
                .findFirst()
                .orElseThrow(() -> new AssertionError("no chart " + title));
    }

    private static BigDecimal sum(Chart chart, Function<Bar, String> part) {
        return chart.bars().stream()
                .map(part)
                .map(shown -> new BigDecimal(shown.replaceAll("[$,]", "")))
                .reduce(BigDecimal.ZERO, BigDecimal::add);
    }

    /** The same week whose totals {@link IndexPageTest} reads off the page. */
    @Test
    void theBarsAddUpToTheTotalsOfThePage() {
        BatchView week = BatchViews.week();

        assertThat(sum(chart(week, "STCs"), Bar::counts)).isEqualByComparingTo("51");
        assertThat(sum(chart(week, "STCs"), Bar::held)).isEqualByComparingTo("13");
        assertThat(sum(chart(week, "VEECs"), Bar::counts)).isEqualByComparingTo("22");
        assertThat(sum(chart(week, "VEECs"), Bar::held)).isEqualByComparingTo("18");
        assertThat(sum(chart(week, "Money"), Bar::counts)).isEqualByComparingTo("3345.56");
        assertThat(sum(chart(week, "Money"), Bar::held)).isEqualByComparingTo("1721.89");
        assertThat(sum(chart(week, "Packs"), Bar::counts)).isEqualByComparingTo("4");
        assertThat(sum(chart(week, "Packs"), Bar::held)).isEqualByComparingTo("1");
    }

    @Test
    void certificatesStandAtTheDayThatCountsForTheRules() {
        Chart stcs = chart(BatchViews.week(), "STCs by day");

        assertThat(stcs.bars())
                .extracting(Bar::label, Bar::words)
                .containsExactly(
                        tuple("8 Dec 2025", "21"),
                        tuple("18 Nov 2026", "13 held"),
                        tuple("20 Nov 2026", "13"),
                        tuple("27 Nov 2026", "17"));
    }

    @Test
    void theLongestBarIsAsWideAsTheDrawingAndTheOthersInProportion() {
        for (Chart chart : Glance.of(BatchViews.week())) {
            assertThat(chart.bars())
                    .as(chart.title())
                    .anyMatch(b -> b.solid() + b.open() >= Chart.WIDTH - 3)
                    .allMatch(b -> b.solid() + b.open() <= Chart.WIDTH - 2)
                    .allMatch(b -> b.solid() + b.open() > 0);
        }
        List<Bar> bars = chart(BatchViews.week(), "STCs").bars();
        assertThat(bars.get(1).open()).isEqualTo(258 * 13 / 21);
    }

    @Test
    void manyDaysBecomeWeeksAndManyWeeksMonths() {
        assertThat(chart(days(14, 1), "STCs").title()).isEqualTo("STCs by day of installation");
        Chart weeks = chart(days(15, 1), "STCs");
        assertThat(weeks.title()).isEqualTo("STCs by week of installation");
        assertThat(weeks.bars())
                .extracting(Bar::label, Bar::counts)
                .containsExactly(
                        tuple("4 Nov 2024", "91"),
                        tuple("11 Nov 2024", "91"),
                        tuple("18 Nov 2024", "13"));
        Chart months = chart(days(15, 7), "STCs");
        assertThat(months.title()).isEqualTo("STCs by month of installation");
        assertThat(months.bars()).extracting(Bar::label).startsWith("1 Nov 2024", "1 Dec 2024");
        assertThat(sum(months, Bar::counts)).isEqualByComparingTo("195");
    }

    @Test
    void whatIsBeyondTheLastBarIsToldTogether() {
        Chart chart = chart(days(20, 31), "STCs");

        assertThat(chart.bars()).hasSize(14);
        assertThat(chart.bars().get(13).label()).isEqualTo("later");
        assertThat(sum(chart, Bar::counts)).isEqualByComparingTo("260");
    }

    @Test
    void aBatchWithNothingToShowHasNoChart() {
        BatchView empty = BatchViews.of(true, List.of());

        assertThat(Glance.of(empty)).isEmpty();
        assertThat(BatchViews.page(empty)).doesNotContain("At a glance");
    }

    @Test
    void everyDrawingStandsBesideATableOfTheSame() {
        String page = BatchViews.page(BatchViews.week());
        for (Chart chart : Glance.of(BatchViews.week())) {
            String figure =
                    page.substring(page.indexOf("<figcaption>" + chart.title()))
                            .replaceFirst("(?s)</figure>.*", "");
            assertThat(figure).contains("<svg", "<table");
            for (Bar bar : chart.bars()) {
                assertThat(figure)
                        .contains(
                                ">" + bar.words() + "</text>",
                                ">" + bar.label() + "</th>",
                                ">" + bar.counts() + "</td>",
                                ">" + bar.held() + "</td>");
            }
        }
    }

    /** So many jobs of 13 STCs each, one every so many days. */
    private static BatchView days(int jobs, int apart) {
        List<CaseFile> cases = new ArrayList<>();
        for (int i = 0; i < jobs; i++) {
            cases.add(
                    new Jobs("SB-" + i, "Fern Placeholder", "Ballan")
                            .installed(FIRST.plusDays((long) i * apart))
                            .stc(13, "Kestrel Certificates", "36.10")
                            .caseFile());
        }
        return BatchViews.of(true, cases);
    }
}
