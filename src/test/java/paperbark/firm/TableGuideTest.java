package paperbark.firm;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.function.Function;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import paperbark.firm.ColumnGuide.Holds;
import paperbark.value.Boost;
import paperbark.value.HeaterKind;
import paperbark.value.SchemeName;
import paperbark.value.State;
import paperbark.value.Trade;

/** What people are told of the tables is what the tables are read by. */
class TableGuideTest {
    static Stream<TableShape> shapes() {
        return TableShape.all().stream();
    }

    @ParameterizedTest
    @MethodSource("shapes")
    void everyColumnIsTold(TableShape shape) {
        TableGuide guide = TableGuide.of(shape.name());
        assertThat(guide.columns())
                .extracting(ColumnGuide::heading)
                .containsExactlyInAnyOrderElementsOf(shape.own());
        assertThat(guide.columns()).allSatisfy(c -> assertThat(c.note()).isNotEmpty());
        assertThat(guide.about()).isNotEmpty();
    }

    @ParameterizedTest
    @MethodSource("shapes")
    void whatIsToldToBeNeededIs(TableShape shape) {
        for (ColumnGuide column : TableGuide.of(shape.name()).columns()) {
            if (column.note().endsWith(" Needed.")) {
                assertThat(shape.needed()).as(shape.name()).contains(column.heading());
            }
        }
    }

    @Test
    void theWordsAreThoseThatTheTablesTake() {
        assertThat(words("people", "trade")).isEqualTo(all(Trade.values(), Trade::word));
        assertThat(words("people", "state")).hasSameElementsAs(all(State.values(), State::name));
        assertThat(words("products", "kind"))
                .hasSameElementsAs(all(HeaterKind.values(), HeaterKind::word));
        assertThat(words("products", "boost")).hasSameElementsAs(all(Boost.values(), Boost::word));
        assertThat(words("products", "stcs_basis"))
                .isEqualTo(all(Listing.Basis.values(), Listing.Basis::word));
        assertThat(words("offers", "scheme")).isEqualTo(all(SchemeName.values(), SchemeName::word));
        assertThat(words("offers", "gst_basis"))
                .hasSameElementsAs(all(GstBasis.values(), GstBasis::word));
        assertThat(words("offers", "paid_to"))
                .hasSameElementsAs(all(PaidTo.values(), PaidTo::word));
        assertThat(words("accounts", "use"))
                .isEqualTo(all(AccountRole.values(), AccountRole::word));
    }

    @Test
    void everyFactOfTheFirmIsTold() {
        TableGuide firm = TableGuide.of("firm");
        StringBuilder csv = new StringBuilder("fact,value\n");
        firm.facts().forEach(f -> csv.append(f.heading()).append(",\n"));
        csv.append("fax,03 5550 0101\n");
        assertThat(TableTexts.smallest().with("firm", csv.toString()).read().findings())
                .filteredOn(f -> f.fact().startsWith("No fact of the firm"))
                .singleElement()
                .satisfies(
                        f -> {
                            assertThat(f.seen()).isEqualTo("fax");
                            firm.facts()
                                    .forEach(
                                            fact ->
                                                    assertThat(f.remedy())
                                                            .contains(fact.heading()));
                            assertThat(f.remedy().split(",")).hasSize(firm.facts().size());
                        });
    }

    @Test
    void everyWordForAFactOfTheFirmIsTaken() {
        for (ColumnGuide fact : TableGuide.of("firm").facts()) {
            for (String word : fact.holds() == Holds.CHOICE ? fact.choices() : List.<String>of()) {
                String csv =
                        "fact,value\nname,Any\nabn,99 000 000 000\npreferred buyer,Kestrel Certificates\n"
                                + fact.heading()
                                + ","
                                + word
                                + "\n";
                assertThat(TableTexts.smallest().with("firm", csv).read().findings())
                        .as(fact.heading() + ": " + word)
                        .noneMatch(f -> f.fact().contains("word"));
            }
        }
    }

    private static List<String> words(String table, String column) {
        return TableGuide.of(table).column(column).choices();
    }

    private static <E> List<String> all(E[] values, Function<E, String> word) {
        return Stream.of(values).map(word).toList();
    }
}
