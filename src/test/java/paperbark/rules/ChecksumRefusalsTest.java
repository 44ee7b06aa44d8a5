package paperbark.rules;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class ChecksumRefusalsTest {

    @Test
    void aShippedTableWithOneChangedFigureIsRefusedByName() {
        String years = text("stc/years.csv");
        Map<String, String> changed = Map.of("stc/years.csv", years.replace(",5,", ",6,"));

        assertThat(changed.get("stc/years.csv")).isNotEqualTo(years);
        assertThatThrownBy(() -> load(changed))
                .isInstanceOf(RulebookException.class)
                .hasMessageEndingWith(
                        "  stc/years.csv: is not as shipped, its checksum is another than in checksums.csv");
    }

    @Test
    void theListOfSourcesIsCheckedToo() {
        Map<String, String> changed =
                Map.of("sources.csv", text("sources.csv") + "mine,Mine,Me,,,,,\n");

        assertThatThrownBy(() -> load(changed))
                .hasMessageContaining("sources.csv: is not as shipped");
    }

    @Test
    void aTableThatTheListDoesNotNameIsRefused() {
        String list = text(Checksums.NAME).replaceAll("(?m)^gst\\.csv.*\n", "");

        assertThatThrownBy(() -> load(Map.of(Checksums.NAME, list)))
                .hasMessageEndingWith("  gst.csv: has no checksum in checksums.csv");
    }

    @Test
    void withoutTheListNoTableIsTaken() {
        assertThatThrownBy(() -> load(Map.of(Checksums.NAME, "")))
                .hasMessageContaining("  checksums.csv: is missing from the program")
                .hasMessageContaining("  stc/zones.csv: has no checksum in checksums.csv");
    }

    @Test
    void aFirmsTableNeedsNoChecksumAndIsNamedAsTheFirms(@TempDir Path folder) {
        Rulebook rules = Overlay.in(folder).factors("2025-02-01,,1D,4,40,3,3,,").load();

        assertThat(rules.tables())
                .filteredOn(TableFile::firms)
                .extracting(TableFile::label)
                .containsExactly("sources.csv (the firm's)", "veec/factors.csv (the firm's)");
    }

    @Test
    void aFirmCannotBringItsOwnListOfChecksums(@TempDir Path folder) {
        Overlay overlay = Overlay.in(folder).file(Checksums.NAME, text(Checksums.NAME));

        assertThatThrownBy(overlay::load)
                .hasMessageContaining("checksums.csv (the firm's): no rule table has this name");
    }

    /** The shipped files, with some replaced; an empty text takes the file away. */
    private static Rulebook load(Map<String, String> instead) {
        return new RulebookLoader(
                        new RuleFiles(
                                Optional.empty(),
                                name ->
                                        instead.containsKey(name)
                                                ? bytes(instead.get(name))
                                                : RuleFiles.inProgram(name)))
                .load();
    }

    private static Optional<byte[]> bytes(String text) {
        return Optional.of(text)
                .filter(t -> !t.isEmpty())
                .map(t -> t.getBytes(StandardCharsets.UTF_8));
    }

    private static String text(String name) {
        return new String(RuleFiles.inProgram(name).orElseThrow(), StandardCharsets.UTF_8);
    }
}
