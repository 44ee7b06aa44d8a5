package paperbark.rules;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What may stand in a firm's table and not in a shipped one. */
class ShippedRowRefusalsTest {
    private static final String GST =
            "from,to,price_divisor,source,pinpoint,confidence,confirmed_on,note\n";

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            textBlock =
                    """
                    2000-07-01,,11,ato-24820,,published,2026-11-25, | a shipped row needs pinpoint and confirmed_on
                    2000-07-01,,11,ato-24820,s 9-70,published,, | a shipped row needs pinpoint and confirmed_on
                    2000-07-01,,11,gst-act-1999,s 9-70,published,2026-11-25, | a published row needs a source that was read
                    2000-07-01,,11,gst-act-1999,s 9-70,memory,2026-11-25, | a row from memory was compared with nothing: empty confirmed_on
                    2000-07-01,,11,ato-24820,s 9-70,demo,2026-11-25, | an invented figure may not be shipped
                    """)
    void aShippedRowIsProvenAndNeverInvented(String row, String fault) {
        ChangedProgram program = new ChangedProgram().withChecksummed("gst.csv", GST + row + "\n");

        assertThat(ChangedProgram.text("gst.csv")).contains("ato-24820");
        assertThatThrownBy(program::load).hasMessageEndingWith("  gst.csv row 2: " + fault);
    }

    @Test
    void aSettingWithoutARowIsNamed() {
        String limits =
                ChangedProgram.text("stc/limits.csv").replaceAll("(?m)^.*,keep_years,.*\n", "");

        assertThatThrownBy(
                        () -> new ChangedProgram().withChecksummed("stc/limits.csv", limits).load())
                .hasMessageEndingWith("  stc/limits.csv: has no row for keep_years");
    }

    @Test
    void aStateThatDoesNotExistIsRefused() {
        String states =
                ChangedProgram.text("au/postcode-states.csv").replaceFirst(",VIC,", ",VIK,");

        assertThatThrownBy(
                        () ->
                                new ChangedProgram()
                                        .withChecksummed("au/postcode-states.csv", states)
                                        .load())
                .hasMessageContaining("\"VIK\" is no state");
    }

    @Test
    void aShippedSourceWithoutAnAddressIsRefused() {
        String sources =
                ChangedProgram.text("sources.csv")
                        .replaceFirst("(?m)^(ree-act-2000,.*),.*$", "$1,");

        assertThatThrownBy(
                        () -> new ChangedProgram().withChecksummed("sources.csv", sources).load())
                .hasMessageContaining("sources.csv row 2: a shipped source needs a link");
    }
}
