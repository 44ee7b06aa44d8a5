package paperbark.output.paper;

import java.awt.geom.Point2D;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.contentstream.PDFGraphicsStreamEngine;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.pdmodel.font.PDType0Font;
import org.apache.pdfbox.pdmodel.graphics.image.PDImage;
import org.apache.pdfbox.pdmodel.graphics.state.PDTextState;
import org.apache.pdfbox.util.Matrix;
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
        Reader reader = new Reader(page);
        reader.processPage(page);
        return reader.steps;
    }

    /** Notes the words and boxes of a page as PDFBox comes upon them. */
    private static final class Reader extends PDFGraphicsStreamEngine {
        private final List<Step> steps = new ArrayList<>();

        private Reader(PDPage page) {
            super(page);
        }

        @Override
        protected void showText(byte[] string) throws IOException {
            PDTextState state = getGraphicsState().getTextState();
            Matrix place =
                    getTextMatrix().multiply(getGraphicsState().getCurrentTransformationMatrix());
            steps.add(
                    new Step(
                            words(string, state.getFont()),
                            style(state.getFont()),
                            state.getFontSize() * place.getScalingFactorY(),
                            new float[] {place.getTranslateX(), place.getTranslateY()}));
            super.showText(string);
        }

        private static String words(byte[] string, PDFont font) throws IOException {
            StringBuilder words = new StringBuilder();
            ByteArrayInputStream codes = new ByteArrayInputStream(string);
            while (codes.available() > 0) {
                words.append(font.toUnicode(font.readCode(codes)));
            }
            return words.toString();
        }

        private static String style(PDFont font) {
            String name = font.getName();
            return "F" + (1 + (name.contains("Bold") ? 1 : 0) + (name.contains("Italic") ? 2 : 0));
        }

        @Override
        public void appendRectangle(Point2D p0, Point2D p1, Point2D p2, Point2D p3) {
            float[] box = {
                (float) p0.getX(),
                (float) p0.getY(),
                (float) (p2.getX() - p0.getX()),
                (float) (p2.getY() - p0.getY())
            };
            steps.add(new Step("", "", 0, box));
        }

        @Override
        public Point2D getCurrentPoint() {
            return new Point2D.Float();
        }

        @Override
        public void drawImage(PDImage image) {}

        @Override
        public void clip(int rule) {}

        @Override
        public void moveTo(float x, float y) {}

        @Override
        public void lineTo(float x, float y) {}

        @Override
        public void curveTo(float x1, float y1, float x2, float y2, float x3, float y3) {}

        @Override
        public void closePath() {}

        @Override
        public void endPath() {}

        @Override
        public void strokePath() {}

        @Override
        public void fillPath(int rule) {}

        @Override
        public void fillAndStrokePath(int rule) {}

        @Override
        public void shadingFill(COSName name) {}
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
