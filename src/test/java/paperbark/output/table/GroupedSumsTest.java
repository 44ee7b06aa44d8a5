package paperbark.output.table;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import org.junit.jupiter.api.Test;
import paperbark.value.Money;

class GroupedSumsTest {
    private static final Table SALES =
            new Table(
                    "Sales",
                    "Sales",
                    List.of(),
                    List.of(
                            TableColumn.text("kind", "Kind", 10),
                            TableColumn.whole("count", "Count", 10),
                            TableColumn.money("price", "Price"),
                            TableColumn.money("gst", "GST")),
                    List.of(
                            row("old", "110", "10"),
                            row("new", "22", "2"),
                            row("old", "1.1", "0.1")),
                    List.of());

    private static List<TableCell> row(String kind, String price, String gst) {
        return List.of(
                TableCell.text(kind),
                TableCell.whole(1),
                TableCell.money(Money.of(price)),
                TableCell.money(Money.of(gst)));
    }

    @Test
    void rowsOfTheSameWordAreAddedUp() {
        GroupedSums<String> sums = GroupedSums.byWord(SALES, "kind");
        assertThat(sums.sum("old", "price")).isEqualTo("111.10");
        assertThat(sums.sum("old", "gst")).isEqualTo("10.10");
        assertThat(sums.sum("new", "price")).isEqualTo("22.00");
        assertThat(sums.rows("old")).isEqualTo(2);
    }

    @Test
    void aGroupWithoutRowsComesToNothing() {
        GroupedSums<String> sums = GroupedSums.byWord(SALES, "kind");
        assertThat(sums.sum("none", "price")).isEqualTo("0.00");
        assertThat(sums.rows("none")).isZero();
    }

    @Test
    void onlyColumnsOfMoneyHaveSums() {
        GroupedSums<String> sums = GroupedSums.byWord(SALES, "kind");
        assertThatThrownBy(() -> sums.sum("old", "count"))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("count");
    }
}
