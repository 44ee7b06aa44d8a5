package paperbark.firm;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import paperbark.finding.Finding;
import paperbark.sheet.Reading;
import paperbark.value.HeaterKind;

class ProductsTableTest {
    private static final String HEADINGS =
            "maker,model,kind,boost,litres,tubes or panels,eligible from,eligible to,"
                    + "STCs zone 1,STCs zone 2,STCs zone 3,STCs zone 4,STCs zone 5,"
                    + "register version,serial pattern,VEEC listed from,VEEC Bs zone 4,VEEC Be zone 4\n";

    private static Reading<FirmTables> reading(String... rows) {
        return TableTexts.smallest()
                .with("products", HEADINGS + String.join("\n", rows) + "\n")
                .read();
    }

    private static List<Product> products(Reading<FirmTables> reading) {
        return reading.result().orElseThrow().products();
    }

    @Test
    void aSolarHeaterHasTubesAndFourZones() {
        Reading<FirmTables> reading =
                reading(
                        "Ternlight,TE 30,evacuated tube solar,electric,315,30,2024-01-01,,"
                                + "30,31,33,28,,49,TT-[0-9]{6},2025-01-01,4.10,0.2");
        assertThat(reading.findings()).isEmpty();
        Product product = products(reading).get(0);
        assertThat(product.kind()).isEqualTo(HeaterKind.SOLAR_TUBES);
        assertThat(product.collectors()).isEqualTo(30);
        Listing listing = product.listing(LocalDate.of(2024, 1, 1)).orElseThrow();
        assertThat(listing.stcs()).isEqualTo(Map.of(1, 30, 2, 31, 3, 33, 4, 28));
        assertThat(listing.row()).isEqualTo(2);
        assertThat(product.listing(LocalDate.of(2023, 12, 31))).isEmpty();
        assertThat(product.serialPattern().orElseThrow().matcher("TT-000123").matches()).isTrue();
        VeecInputs.Energies energies = product.veec().orElseThrow().byZone().get(4);
        assertThat(energies.supplementaryGj()).isEqualByComparingTo("4.1");
    }

    @Test
    void severalRowsOfAModelAreItsPeriods() {
        Reading<FirmTables> reading =
                reading(
                        "Dunlin,DH 260,heat pump,electric,260,,2022-01-01,2024-06-30,20,20,20,20,20,45,,,,",
                        "dunlin,DH  260,heat pump,electric,260,,2024-07-01,,22,22,22,22,22,52,,,,");
        assertThat(reading.findings()).isEmpty();
        Product product = products(reading).get(0);
        assertThat(products(reading)).hasSize(1);
        assertThat(product.listing(LocalDate.of(2024, 6, 30)).orElseThrow().registerVersion())
                .isEqualTo("45");
        assertThat(product.listing(LocalDate.of(2024, 7, 1)).orElseThrow().registerVersion())
                .isEqualTo("52");
    }

    private static Reading<FirmTables> withBasis(String... rows) {
        return TableTexts.smallest()
                .with(
                        "products",
                        HEADINGS.replace("register version", "STCs basis,register version")
                                + String.join("\n", rows)
                                + "\n")
                .read();
    }

    @Test
    void figuresStandForTenYearsUnlessTheTableSaysThatTheyStandForThePeriod() {
        Reading<FirmTables> reading =
                withBasis(
                        "Dunlin,DH 260,heat pump,electric,260,,2025-01-01,2025-12-31,20,20,20,20,20,,45,,,,",
                        "Dunlin,DH 260,heat pump,electric,260,,2026-01-01,2026-12-31,10,10,10,10,10,Period,52,,,,",
                        "Dunlin,DH 260,heat pump,electric,260,,2027-01-01,,20,20,20,20,20,ten years,53,,,,");

        assertThat(reading.findings()).isEmpty();
        assertThat(products(reading).get(0).listings())
                .extracting(Listing::basis)
                .containsExactly(
                        Listing.Basis.TEN_YEARS, Listing.Basis.PERIOD, Listing.Basis.TEN_YEARS);
    }

    @Test
    void aFigureForAPeriodNeedsTheEndOfThePeriod() {
        Reading<FirmTables> reading =
                withBasis(
                        "Dunlin,DH 260,heat pump,electric,260,,2026-01-01,,10,10,10,10,10,period,52,,,,");

        assertThat(reading.findings())
                .extracting(f -> f.where() + ": " + f.fact())
                .containsExactly("products.csv > H2 \"eligible to\": The cell is empty.");
        assertThat(products(reading)).isEmpty();
    }

    @ParameterizedTest
    @CsvSource({
        "21;22;28;30, true", // half of 42;44;56;60
        "21;22;28;31, false",
        "25;26;33;36, true", // six tenths
        "29;30;39;42, false", // seven tenths: models of one size differ so much
        "42;44;56;60, false"
    })
    void figuresThatAreTenthsOfThoseOfAnotherModelInEveryZoneAreDoubtful(
            String figures, boolean doubtful) {
        String zones = figures.replace(';', ',');
        Reading<FirmTables> reading =
                reading(
                        "Ternlight,TE 30,evacuated tube solar,electric,315,30,2024-01-01,,42,44,56,60,,49,,,,",
                        "Ternlight,TE 31,evacuated tube solar,gas,315,30,2024-01-01,,"
                                + zones
                                + ",,49,,,,",
                        "Ternlight,TE 20,evacuated tube solar,gas,200,20,2024-01-01,,"
                                + zones
                                + ",,49,,,,");

        assertThat(products(reading)).hasSize(3);
        assertThat(reading.findings())
                .extracting(f -> f.code() + " " + f.where())
                .containsExactlyElementsOf(
                        doubtful
                                ? List.of("STC_BASIS_DOUBTFUL products.csv > I3 \"STCs zone 1\"")
                                : List.of());
    }

    @Test
    void figuresForAPeriodAreComparedWithNothing() {
        assertThat(
                        withBasis(
                                        "Dunlin,DH 260,heat pump,electric,260,,2024-01-01,,20,20,20,20,20,,45,,,,",
                                        "Dunlin,DH 261,heat pump,electric,260,,2026-01-01,2026-12-31,10,10,10,10,10,period,52,,,,")
                                .findings())
                .isEmpty();
    }

    @Test
    void periodsOfAModelThatOverlapByADayAreLeftOut() {
        Reading<FirmTables> reading =
                reading(
                        "Dunlin,DH 260,heat pump,electric,260,,2022-01-01,2024-07-01,20,20,20,20,20,45,,,,",
                        "Dunlin,DH 260,heat pump,electric,260,,2024-07-01,,22,22,22,22,22,52,,,,");
        assertThat(products(reading).get(0).listings()).hasSize(1);
        assertThat(reading.findings())
                .extracting(f -> f.where() + ": " + f.fact())
                .containsExactly(
                        "products.csv > row 3: An earlier row of this model covers some of the"
                                + " same days.");
    }

    @Test
    void rowsOfAModelThatDisagreeAreLeftOut() {
        Reading<FirmTables> reading =
                reading(
                        "Dunlin,DH 260,heat pump,electric,260,,2022-01-01,2024-06-30,20,20,20,20,20,45,,,,",
                        "Dunlin,DH 260,heat pump,electric,270,,2024-07-01,,22,22,22,22,22,52,,,,");
        assertThat(products(reading).get(0).litres()).isEqualTo(260);
        assertThat(products(reading).get(0).listings()).hasSize(1);
        assertThat(reading.findings()).singleElement().matches(f -> f.also().size() == 1);
    }

    @Test
    void aModelWithoutFederalListingIsStillKnown() {
        Reading<FirmTables> reading = reading("Dunlin,DH 999,heat pump,electric,260,,,,,,,,,,,,,");
        assertThat(reading.findings()).isEmpty();
        assertThat(products(reading).get(0).listings()).isEmpty();
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = ';',
            value = {
                "Ternlght,TE 30,evacuated tube solar,electric,315,30,,,,,,,,,,,,;maker",
                "Ternlight,TE 30,solar,electric,315,30,,,,,,,,,,,,;kind",
                "Ternlight,TE 30,evacuated tube solar,electric,315 L,30,,,,,,,,,,,,;litres",
                "Ternlight,TE 30,evacuated tube solar,electric,315,,,,,,,,,,,,,;tubes or panels",
                "Dunlin,DH,heat pump,electric,260,2,,,,,,,,,,,,;tubes or panels",
                "Ternlight,T,evacuated tube solar,gas,315,30,2024-01-01,,1,1,1,1,1,9,,,,;STCs zone 5",
                "Dunlin,DH,heat pump,electric,260,,2024-01-01,,1,1,1,1,1,,,,,;register version",
                "Dunlin,DH,heat pump,electric,260,,2024-01-01,2023-01-01,1,1,1,1,1,9,,,,;eligible to",
                "Dunlin,DH,heat pump,electric,260,,,,,,,,,,D([0-9],,,;serial pattern",
                "Dunlin,DH,heat pump,electric,260,,,,,,,,,,(D+)+,,,;serial pattern",
                "Dunlin,DH,heat pump,electric,260,,,,,,,,,,,,3.1,0.2;VEEC listed from",
                "Dunlin,DH,heat pump,electric,260,,,,,,,,,,,2025-01-01,3.1,;VEEC Be zone 4",
            })
    void aRowThatCannotBeUsedIsLeftOutAndTheCellNamed(String row, String heading) {
        Reading<FirmTables> reading = reading(row);
        assertThat(products(reading)).isEmpty();
        assertThat(reading.findings()).extracting(Finding::remedy).doesNotContain("");
        assertThat(reading.findings())
                .extracting(f -> f.place().columnHeading())
                .containsExactly(heading);
    }
}
