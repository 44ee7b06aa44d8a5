package paperbark.output.paper;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import paperbark.output.CaseFile;
import paperbark.output.CaseFiles;

class StyleMemoryTest {
    private static final String SHIPPED = "templates/paperbark.css";

    @TempDir private Path folder;

    @Test
    void servesTheShippedSheet() throws IOException {
        assertThat(StyleMemory.fits(Files.readString(Path.of(SHIPPED)))).isTrue();
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "td[colspan] { color: red }",
                "#one { color: red }",
                "tr:nth-child(2) { color: red }",
                "td:last-child { color: red }",
                "p ~ p { color: red }",
                "p + p + p { color: red }",
                "@media print { p { color: red } }",
                "@import url(other.css);"
            })
    void servesNoSheetThatLooksFurther(String rule) {
        assertThat(StyleMemory.fits("p { color: #000 } /* #one */" + rule)).isFalse();
    }

    /** With a rule that changes nothing, but after which every document is matched anew. */
    @Test
    void givesTheSamePacksAsMatchingEachDocument() throws IOException {
        String sheet = Files.readString(Path.of(SHIPPED));
        Files.writeString(folder.resolve("paperbark.css"), sheet + "#nobody { color: red }");
        Packs matching = new Packs(Optional.of(folder));
        Packs remembering = new Packs(Optional.empty());
        for (CaseFile job :
                new CaseFile[] {CaseFiles.installedSolar(), CaseFiles.bookedHeatPump()}) {
            byte[] matched = matching.make(job, List.of()).pdf();
            assertThat(remembering.make(job, List.of()).pdf()).isEqualTo(matched);
            assertThat(remembering.make(job, List.of()).pdf()).isEqualTo(matched);
        }
    }
}
