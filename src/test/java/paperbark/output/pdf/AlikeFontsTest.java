package paperbark.output.pdf;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSBase;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSInteger;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.font.PDType0Font;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import paperbark.output.Typeface;

class AlikeFontsTest {
    private static final String WORDS = "Filled in by hand: 7";

    private final Glyphs used = new Glyphs();

    private static byte[] form() throws IOException {
        try (PDDocument form = new PDDocument()) {
            PDPage page = new PDPage();
            form.addPage(page);
            PDType0Font font = PDType0Font.load(form, Typeface.shared().bold(), true);
            try (PDPageContentStream content = new PDPageContentStream(form, page)) {
                content.beginText();
                content.setFont(font, 10);
                content.newLineAtOffset(50, 500);
                content.showText(WORDS);
                content.endText();
            }
            ByteArrayOutputStream out = new ByteArrayOutputStream();
            form.save(out);
            return out.toByteArray();
        }
    }

    private static COSDictionary descendant(PDDocument form) {
        COSDictionary fonts =
                form.getPage(0).getResources().getCOSObject().getCOSDictionary(COSName.FONT);
        COSDictionary font = fonts.getCOSDictionary(fonts.keySet().iterator().next());
        return (COSDictionary) font.getCOSArray(COSName.DESCENDANT_FONTS).getObject(0);
    }

    /** The outlines of the form's font after it could take those of the pages. */
    private COSBase shared(PDDocument form, COSDictionary fonts) throws IOException {
        AlikeFonts alike = new AlikeFonts(used);
        alike.find(form.getPage(0).getCOSObject());
        fonts.addAll(Faces.shared().fonts(used));
        alike.share(fonts);
        return descendant(form);
    }

    @Test
    void takesTheOutlinesOfThePagesAndReadsAsBefore() throws Exception {
        try (PDDocument form = Loader.loadPDF(form())) {
            COSDictionary fonts = new COSDictionary();

            COSBase outlines = shared(form, fonts);

            COSArray own =
                    fonts.getCOSDictionary(COSName.getPDFName(Faces.nameOf(Faces.BOLD)))
                            .getCOSArray(COSName.DESCENDANT_FONTS);
            assertThat(outlines).isSameAs(own.getObject(0));
            assertThat(new PDFTextStripper().getText(form).strip()).isEqualTo(WORDS);
        }
    }

    @Test
    void leavesAFontAloneWhoseLettersAreOfAnotherWidth() throws Exception {
        try (PDDocument form = Loader.loadPDF(form())) {
            COSDictionary before = descendant(form);
            COSArray run = (COSArray) before.getCOSArray(COSName.W).getObject(1);
            run.set(0, COSInteger.get(run.getInt(0) + 1));

            assertThat(shared(form, new COSDictionary())).isSameAs(before);
            assertThat(used.of(Faces.BOLD).isEmpty()).isTrue();
        }
    }

    @Test
    void leavesAFontOfAnotherNameAlone() throws Exception {
        try (PDDocument form = Loader.loadPDF(form())) {
            COSDictionary before = descendant(form);
            COSDictionary fonts =
                    form.getPage(0).getResources().getCOSObject().getCOSDictionary(COSName.FONT);
            fonts.getCOSDictionary(fonts.keySet().iterator().next())
                    .setName(COSName.BASE_FONT, "ABCDEF+Another");

            assertThat(shared(form, new COSDictionary())).isSameAs(before);
        }
    }
}
