package paperbark.output;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.util.stream.IntStream;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.apache.fontbox.ttf.TrueTypeFont;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.font.PDType0Font;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Letters are as wide as PDFBox measures them in a document. */
class LetterWidthsTest {
    @Property(tries = 200)
    void measuresLikePdfBox(
            @ForAll("words") String words, @ForAll boolean bold, @ForAll boolean slanted)
            throws IOException {
        try (PDDocument document = new PDDocument()) {
            PDType0Font font = PDType0Font.load(document, typeface(bold, slanted), true);

            assertThat(words.codePoints().map(LetterWidths.of(bold, slanted)::of).sum())
                    .isEqualTo((int) font.getStringWidth(words));
        }
    }

    @Provide
    Arbitrary<String> words() {
        return Arbitraries.strings()
                .withCharRange(' ', '~')
                .withCharRange('\u00A1', '\u017E')
                .withCharRange('\u0391', '\u03A1')
                .withChars("\u25A0\u25B2\u2013\u2026")
                .ofMaxLength(40)
                .filter(s -> s.codePoints().allMatch(Typeface.shared()::prints));
    }

    /** Head and foot of a page rely on it. */
    @ParameterizedTest
    @CsvSource({"false,false", "true,false", "false,true", "true,true"})
    void allDigitsAreEquallyWide(boolean bold, boolean slanted) {
        LetterWidths widths = LetterWidths.of(bold, slanted);

        assertThat(IntStream.rangeClosed('0', '9').map(widths::of)).containsOnly(556);
        assertThat(widths.of('\u6F22')).as("a letter that it lacks").isNegative();
    }

    private static TrueTypeFont typeface(boolean bold, boolean slanted) {
        Typeface all = Typeface.shared();
        if (bold) {
            return slanted ? all.boldItalic() : all.bold();
        }
        return slanted ? all.italic() : all.regular();
    }
}
