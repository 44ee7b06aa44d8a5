package paperbark.output.paper;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.util.List;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.pdmodel.font.PDType0Font;
import org.junit.jupiter.api.Test;
import paperbark.output.LetterWidths;
import paperbark.output.Typeface;

/** A layout draws with it as with the library's own font. */
class LayoutFontTest {
    private static final List<String> WORDS =
            List.of("", "Will", "1.  ", "Łucja", "≤ 5 m²", "(\\)");

    private final PDFont font =
            new LayoutFont(
                    new LayoutFont.Letters(Typeface.shared().bold(), LetterWidths.of(true, false)));

    @Test
    void namesAndMeasuresLettersAlike() throws IOException {
        try (PDDocument document = new PDDocument()) {
            PDFont usual = PDType0Font.load(document, Typeface.shared().bold(), true);
            for (String word : WORDS) {
                assertThat(font.encode(word)).isEqualTo(usual.encode(word));
                assertThat(font.getStringWidth(word)).isEqualTo(usual.getStringWidth(word));
            }
            assertThat(font.getName()).isEqualTo(usual.getName());
            assertThat(font.getBoundingBox()).hasToString(usual.getBoundingBox().toString());
            assertThat(font.getFontDescriptor().getDescent())
                    .isEqualTo(usual.getFontDescriptor().getDescent());
        }
    }

    @Test
    void hasNoOtherLetters() {
        assertThatThrownBy(() -> font.encode("a漢")).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> font.getStringWidth("a漢"))
                .isInstanceOf(IllegalArgumentException.class);
    }
}
