package paperbark.rules;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class ChecksumRefusalsTest {

    @Test
    void aShippedTableWithOneChangedFigureIsRefusedByName() {
        String years = ChangedProgram.text("stc/years.csv");
        String oneMore = years.replaceFirst(",5,", ",6,");

        assertThat(oneMore).isNotEqualTo(years);
        assertThatThrownBy(() -> new ChangedProgram().with("stc/years.csv", oneMore).load())
                .isInstanceOf(RulebookException.class)
                .hasMessage(
                        "The rule tables cannot be used.\n"
                                + "  stc/years.csv: is not as shipped, its checksum is another than in checksums.csv");
    }

    @Test
    void theListOfSourcesIsCheckedToo() {
        String sources = ChangedProgram.text("sources.csv") + "mine,Mine,Me,,,,,\n";

        assertThatThrownBy(() -> new ChangedProgram().with("sources.csv", sources).load())
                .hasMessageContaining("sources.csv: is not as shipped");
    }

    @Test
    void aTableThatTheListDoesNotNameIsRefused() {
        String list = ChangedProgram.text(Checksums.NAME).replaceAll("(?m)^gst\\.csv.*\n", "");

        assertThatThrownBy(() -> new ChangedProgram().with(Checksums.NAME, list).load())
                .hasMessageEndingWith("  gst.csv: has no checksum in checksums.csv");
    }

    @Test
    void withoutTheListNoTableIsTaken() {
        assertThatThrownBy(() -> new ChangedProgram().without(Checksums.NAME).load())
                .hasMessageContaining("  checksums.csv: is missing from the program")
                .hasMessageContaining("  stc/zones.csv: has no checksum in checksums.csv");
    }

    @Test
    void aTableThatIsNotThereIsNamed() {
        assertThatThrownBy(() -> new ChangedProgram().without("gst.csv").load())
                .hasMessageEndingWith("  gst.csv: is missing from the program");
    }

    @Test
    void aFirmsTableNeedsNoChecksumAndIsNamedAsTheFirms(@TempDir Path folder) {
        Rulebook rules =
                Overlay.in(folder).versionedFactors("2025-02-01,,1D,4,23.0,40,3,3,,").load();

        assertThat(rules.tables())
                .filteredOn(TableFile::firms)
                .extracting(TableFile::label)
                .containsExactly("sources.csv (the firm's)", "veec/factors.csv (the firm's)");
    }

    @Test
    void aFirmCannotBringItsOwnListOfChecksums(@TempDir Path folder) {
        Overlay overlay =
                Overlay.in(folder).file(Checksums.NAME, ChangedProgram.text(Checksums.NAME));

        assertThatThrownBy(overlay::load)
                .hasMessageContaining("checksums.csv (the firm's): no rule table has this name");
    }
}
