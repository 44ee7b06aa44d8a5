package paperbark.output.paper;

import static org.assertj.core.api.Assertions.assertThat;

import com.openhtmltopdf.css.constants.IdentValue;
import com.openhtmltopdf.pdfboxout.PdfBoxFSFont;
import com.openhtmltopdf.pdfboxout.PdfBoxFontResolver.FontDescription;
import com.openhtmltopdf.pdfboxout.PdfBoxTextRenderer;
import java.io.IOException;
import java.util.List;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.font.PDType0Font;
import org.junit.jupiter.api.Test;
import paperbark.output.Typeface;

/** Widths that are remembered are those that the library measures. */
class WidthsTest {
    private static final List<String> WORDS = List.of("", "Will", "1.  ", "Łucja", "a b", "(\\)");

    @Test
    void differByWeightAndSize() throws IOException {
        try (PDDocument document = new PDDocument()) {
            FontDescription regular =
                    new FontDescription(
                            PDType0Font.load(document, Typeface.shared().regular(), true),
                            IdentValue.NORMAL,
                            400);
            FontDescription bold =
                    new FontDescription(
                            PDType0Font.load(document, Typeface.shared().bold(), true),
                            IdentValue.NORMAL,
                            700);
            for (FontDescription font : List.of(regular, bold, regular, bold)) {
                for (float size : new float[] {200, 210, 200}) {
                    assertThat(WORDS).allSatisfy(word -> isMeasured(font, size, word));
                }
            }
        }
    }

    private static void isMeasured(FontDescription font, float size, String word) {
        PdfBoxFSFont sized = new PdfBoxFSFont(List.of(font), size);

        assertThat(new Widths().getWidth(null, sized, word))
                .isEqualTo(new PdfBoxTextRenderer().getWidth(null, sized, word));
    }
}
