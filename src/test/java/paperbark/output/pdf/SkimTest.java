package paperbark.output.pdf;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SkimTest {
    private static final String TEXT =
            "<</Type/Page/MediaBox[0 0 595.276 841.89]/Parent 7 0 R/Contents[8 0 R<</K 1>>]"
                    + "/T<2f4b203e>/StructParents 12/Tabs/S/Open true/Last<</Parent 9 0 R>>>>";

    private static PackReader.Piece piece(String text) {
        byte[] bytes = ("..." + text + "...").getBytes(StandardCharsets.ISO_8859_1);
        return new PackReader.Piece(bytes, 3, bytes.length - 3);
    }

    private static String text(PackReader.Piece piece) {
        return new String(piece.text(), piece.from(), piece.length(), StandardCharsets.ISO_8859_1);
    }

    @ParameterizedTest
    @CsvSource({
        "Type, /Page",
        "MediaBox, [0 0 595.276 841.89]",
        "Parent, 7 0 R",
        "Contents, [8 0 R<</K 1>>]",
        "T, <2f4b203e>",
        "StructParents, 12",
        "Tabs, /S",
        "Open, true",
        "Last, <</Parent 9 0 R>>"
    })
    void findsWhatLiesUnderAName(String name, String value) {
        assertThat(Skim.value(piece(TEXT), name).map(SkimTest::text)).contains(value);
    }

    @ParameterizedTest
    @CsvSource({"K", "Struct", "S", "Page"})
    void findsNothingUnderANameThatOnlyStandsInsideOrBegins(String name) {
        assertThat(Skim.value(piece(TEXT), name)).isEmpty();
    }

    @Test
    void endsWhereTheValueEnds() {
        PackReader.Piece all = piece(TEXT);
        assertThat(Skim.end(all.text(), all.from(), all.to())).isEqualTo(all.to());
    }

    @Test
    void tellsReferencesFromNumbers() {
        assertThat(Skim.isReference(Skim.value(piece(TEXT), "Parent").orElseThrow())).isTrue();
        assertThat(Skim.isReference(Skim.value(piece(TEXT), "StructParents").orElseThrow()))
                .isFalse();
        assertThat(Skim.number(Skim.value(piece(TEXT), "Parent").orElseThrow())).isEqualTo(7);
    }
}
