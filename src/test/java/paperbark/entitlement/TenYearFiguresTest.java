package paperbark.entitlement;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import paperbark.firm.FirmTablesReader;
import paperbark.firm.Listing;
import paperbark.firm.Product;

/**
 * The listed figures of the sample firm's products against published energy figures; {@code
 * cases/stc/ten-year-bands.csv} names the source. A band shows a slip of the pen, such as a figure
 * in the wrong zone; it never sets a claim.
 */
class TenYearFiguresTest {
    /** The published bands stop here; what is larger has none. */
    private static final int LARGEST_SOLAR = 700;

    private static final int LARGEST_HEAT_PUMP = 425;

    /** A certificate is a MWh, 3600 MJ, over ten years. */
    private static final BigDecimal MJ_A_YEAR_PER_STC = BigDecimal.valueOf(3600 / 10);

    private static final List<Band> BANDS = bands();

    /**
     * Published figures of a size class in a zone. The products table does not name the class; the
     * litres stand in for it, so a heater on the edge may lie in either of two.
     */
    private record Band(CSVRecord cells) {
        boolean isFor(Product product, int zone) {
            return cells.get("technology").equals(product.isSolar() ? "solar" : "heat-pump")
                    && product.litres() >= whole("litres_from")
                    && product.litres() <= whole("litres_to")
                    && whole("zone") == zone;
        }

        /** Percent of the reference heater's energy that the certificates stand for. */
        int savedPercent(int stcs) {
            return MJ_A_YEAR_PER_STC
                    .multiply(BigDecimal.valueOf(100L * stcs))
                    .divide(
                            new BigDecimal(cells.get("reference_mj_a_year")),
                            0,
                            RoundingMode.HALF_UP)
                    .intValueExact();
        }

        int whole(String heading) {
            return Integer.parseInt(cells.get(heading));
        }
    }

    private static List<Band> bands() {
        CSVFormat headed = CSVFormat.RFC4180.builder().setHeader().setSkipHeaderRecord(true).get();
        try (CSVParser parser =
                CSVParser.parse(
                        Path.of("src/test/resources/cases/stc/ten-year-bands.csv"),
                        StandardCharsets.UTF_8,
                        headed)) {
            return parser.stream().map(Band::new).toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    static Stream<Product> samples() {
        return FirmTablesReader.read(Path.of("input-samples/tables"))
                .result()
                .orElseThrow()
                .products()
                .stream()
                .filter(p -> p.litres() <= (p.isSolar() ? LARGEST_SOLAR : LARGEST_HEAT_PUMP));
    }

    @ParameterizedTest
    @MethodSource("samples")
    void aSampleProductLiesInThePublishedBandOfItsSizeInEveryZone(Product product) {
        assertThat(product.listings()).isNotEmpty();
        for (Listing listing : product.listings()) {
            assertThat(listing.stcs()).hasSize(product.isSolar() ? 4 : 5);
            listing.stcs()
                    .forEach(
                            (zone, stcs) ->
                                    assertThat(bands(product, zone))
                                            .as("%s, zone %d", product.model(), zone)
                                            .anySatisfy(
                                                    band ->
                                                            assertThat(stcs)
                                                                    .isBetween(
                                                                            band.whole("least"),
                                                                            band.whole("most"))));
        }
    }

    /**
     * Half of the reference heater's energy is little for such a heater; nearly all is too much.
     */
    @ParameterizedTest
    @MethodSource("samples")
    void aSampleProductSavesMostButNotAllOfTheReferenceHeatersEnergy(Product product) {
        for (Listing listing : product.listings()) {
            listing.stcs()
                    .forEach(
                            (zone, stcs) ->
                                    assertThat(bands(product, zone))
                                            .as("%s, zone %d", product.model(), zone)
                                            .anySatisfy(
                                                    band ->
                                                            assertThat(band.savedPercent(stcs))
                                                                    .isBetween(50, 90)));
        }
    }

    private static List<Band> bands(Product product, int zone) {
        return BANDS.stream().filter(b -> b.isFor(product, zone)).toList();
    }
}
