package paperbark.output.paper;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.contentstream.operator.Operator;
import org.apache.pdfbox.cos.COSBase;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.cos.COSNumber;
import org.apache.pdfbox.cos.COSString;
import org.apache.pdfbox.pdfparser.PDFStreamParser;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.pdmodel.font.PDType0Font;
import paperbark.output.Typeface;

/** The runs of text and the boxes of a pack, by page, at their places: the least that it shows. */
final class GlyphRuns {
    private final List<List<Step>> pages;

    private GlyphRuns(List<List<Step>> pages) {
        this.pages = pages;
    }

    /** A step that is drawn again: words in a font, or a box when there are none. */
    private record Step(String words, String font, float size, float[] place) {}

    /** What the pages of a pack show. */
    static GlyphRuns of(byte[] pdf) throws IOException {
        return new GlyphRuns(steps(pdf));
    }

    private static List<List<Step>> steps(byte[] pdf) throws IOException {
        List<List<Step>> pages = new ArrayList<>();
        try (PDDocument document = Loader.loadPDF(pdf)) {
            for (PDPage page : document.getPages()) {
                pages.add(page.hasContents() ? steps(page) : List.of());
            }
        }
        return pages;
    }

    private static List<Step> steps(PDPage page) throws IOException {
        List<Step> steps = new ArrayList<>();
        List<COSBase> before = new ArrayList<>();
        String font = "";
        float size = 0;
        float[] place = {};
        for (Object token : new PDFStreamParser(page).parse()) {
            if (!(token instanceof Operator operator)) {
                before.add((COSBase) token);
                continue;
            }
            switch (operator.getName()) {
                case "Tf" -> {
                    font = ((COSName) before.get(0)).getName();
                    size = ((COSNumber) before.get(1)).floatValue();
                }
                case "Tm" -> place = floats(before.subList(4, 6));
                case "Tj" ->
                        steps.add(new Step(words(before.get(0), page, font), font, size, place));
                case "re" -> steps.add(new Step("", "", 0, floats(before)));
                default -> {}
            }
            before.clear();
        }
        return steps;
    }

    private static String words(COSBase string, PDPage page, String name) throws IOException {
        PDFont font = page.getResources().getFont(COSName.getPDFName(name));
        StringBuilder words = new StringBuilder();
        byte[] codes = ((COSString) string).getBytes();
        for (int i = 0; i + 1 < codes.length; i += 2) {
            words.append(font.toUnicode((codes[i] & 0xFF) << 8 | codes[i + 1] & 0xFF));
        }
        return words.toString();
    }

    private static float[] floats(List<COSBase> numbers) {
        float[] floats = new float[numbers.size()];
        for (int i = 0; i < floats.length; i++) {
            floats[i] = ((COSNumber) numbers.get(i)).floatValue();
        }
        return floats;
    }

    /** Writes it with PDFBox, untagged, to nowhere. */
    void write() throws IOException {
        try (PDDocument document = new PDDocument()) {
            Typeface typeface = Typeface.shared();
            Map<String, PDFont> fonts = new HashMap<>();
            fonts.put("F1", PDType0Font.load(document, typeface.regular(), true));
            fonts.put("F2", PDType0Font.load(document, typeface.bold(), true));
            fonts.put("F3", PDType0Font.load(document, typeface.italic(), true));
            fonts.put("F4", PDType0Font.load(document, typeface.boldItalic(), true));
            for (List<Step> steps : pages) {
                PDPage page = new PDPage(PDRectangle.A4);
                document.addPage(page);
                try (PDPageContentStream content = new PDPageContentStream(document, page)) {
                    for (Step step : steps) {
                        draw(step, fonts, content);
                    }
                }
            }
            document.save(new ByteArrayOutputStream());
        }
    }

    private static void draw(Step step, Map<String, PDFont> fonts, PDPageContentStream content)
            throws IOException {
        float[] at = step.place();
        if (step.words().isEmpty()) {
            content.addRect(at[0], at[1], at[2], at[3]);
            content.fill();
            return;
        }
        content.beginText();
        content.setFont(fonts.get(step.font()), step.size());
        content.newLineAtOffset(at[0], at[1]);
        content.showText(step.words());
        content.endText();
    }
}
