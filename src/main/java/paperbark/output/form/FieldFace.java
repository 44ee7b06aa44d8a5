package paperbark.output.form;

import java.io.IOException;
import java.io.OutputStream;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.PDResources;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.pdmodel.graphics.color.PDColor;
import org.apache.pdfbox.pdmodel.interactive.annotation.PDAnnotationWidget;
import org.apache.pdfbox.pdmodel.interactive.annotation.PDAppearanceCharacteristicsDictionary;
import org.apache.pdfbox.pdmodel.interactive.annotation.PDAppearanceDictionary;
import org.apache.pdfbox.pdmodel.interactive.annotation.PDAppearanceStream;

/** Draws what a field shows, so that every viewer shows the same. */
final class FieldFace {
    private static final float INSET = 2;
    // As large as viewers choose where the form leaves the size open.
    private static final float LARGEST_CHOSEN = 12;

    private final PDDocument document;
    private final PDFont font;

    FieldFace(PDDocument document, PDFont font) {
        this.document = document;
        this.font = font;
    }

    /** How a text is laid into its field. */
    enum Kind {
        LINE,
        BLOCK,
        COMB
    }

    /**
     * What to draw.
     *
     * @param text the value as it is shown
     * @param kind how it is laid out
     * @param cells how many letters a comb has; otherwise not looked at
     * @param look size, colour and alignment
     */
    record Content(String text, Kind kind, int cells, TextLook look) {}

    /** Gives the widget its picture; false when the text had to be cut. */
    boolean draw(PDAnnotationWidget widget, Content content) throws IOException {
        PDRectangle place = widget.getRectangle();
        if (place == null || place.getWidth() <= 0 || place.getHeight() <= 0) {
            return true;
        }
        int turn = turn(widget);
        boolean sideways = turn == 90 || turn == 270;
        float width = sideways ? place.getHeight() : place.getWidth();
        float height = sideways ? place.getWidth() : place.getHeight();
        PDAppearanceStream face = new PDAppearanceStream(document);
        face.setBBox(new PDRectangle(width, height));
        face.setMatrix(Turn.of(turn, width, height).createAffineTransform());
        face.setResources(new PDResources());
        boolean whole;
        try (OutputStream out = face.getStream().createOutputStream(COSName.FLATE_DECODE);
                PDPageContentStream canvas = new PDPageContentStream(document, face, out)) {
            ground(canvas, widget, width, height);
            canvas.beginMarkedContent(COSName.TX);
            canvas.saveGraphicsState();
            canvas.addRect(1, 1, Math.max(0, width - 2), Math.max(0, height - 2));
            canvas.clip();
            canvas.setNonStrokingColor(content.look().colour());
            whole = write(canvas, content, width, height);
            canvas.restoreGraphicsState();
            canvas.endMarkedContent();
        }
        PDAppearanceDictionary faces = new PDAppearanceDictionary();
        faces.setNormalAppearance(face);
        widget.setAppearance(faces);
        widget.getCOSObject().removeItem(COSName.AS);
        return whole;
    }

    private static int turn(PDAnnotationWidget widget) {
        PDAppearanceCharacteristicsDictionary traits = widget.getAppearanceCharacteristics();
        return traits == null ? 0 : Math.floorMod(traits.getRotation(), 360);
    }

    private static void ground(
            PDPageContentStream canvas, PDAnnotationWidget widget, float width, float height)
            throws IOException {
        PDAppearanceCharacteristicsDictionary traits = widget.getAppearanceCharacteristics();
        PDColor ground = traits == null ? null : traits.getBackground();
        if (ground != null && ground.getColorSpace() != null) {
            canvas.setNonStrokingColor(ground);
            canvas.addRect(0, 0, width, height);
            canvas.fill();
        }
        PDColor edge = traits == null ? null : traits.getBorderColour();
        float line = widget.getBorderStyle() == null ? 1 : widget.getBorderStyle().getWidth();
        if (edge != null && edge.getColorSpace() != null && line > 0) {
            canvas.setStrokingColor(edge);
            canvas.setLineWidth(line);
            canvas.addRect(line / 2, line / 2, width - line, height - line);
            canvas.stroke();
        }
    }

    private boolean write(PDPageContentStream canvas, Content content, float width, float height)
            throws IOException {
        return switch (content.kind()) {
            case LINE -> line(canvas, content, width, height);
            case BLOCK -> block(canvas, content, width, height);
            case COMB -> comb(canvas, content, width, height);
        };
    }

    private boolean line(PDPageContentStream canvas, Content content, float width, float height)
            throws IOException {
        TextFit fit = TextFit.line(font, content.text(), size(content, height), width - 2 * INSET);
        float x = start(content.look().quadding(), width, fit.size(), fit.lines().get(0));
        show(canvas, fit.lines().get(0), fit.size(), new float[] {x, middle(height, fit.size())});
        return fit.whole();
    }

    private boolean block(PDPageContentStream canvas, Content content, float width, float height)
            throws IOException {
        float wanted = content.look().size() == 0 ? LARGEST_CHOSEN : content.look().size();
        TextFit fit =
                TextFit.block(font, content.text(), wanted, width - 2 * INSET, height - 2 * INSET);
        float y = height - INSET - fit.size() * 0.9f;
        for (String text : fit.lines()) {
            float x = start(content.look().quadding(), width, fit.size(), text);
            show(canvas, text, fit.size(), new float[] {x, y});
            y -= fit.size() * TextFit.LEADING;
        }
        return fit.whole();
    }

    private boolean comb(PDPageContentStream canvas, Content content, float width, float height)
            throws IOException {
        int[] letters = Combs.letters(content.text(), content.cells());
        float cell = width / content.cells();
        float size = size(content, height);
        for (int i = 0; i < letters.length; i++) {
            String letter = Character.toString(letters[i]);
            float natural = TextFit.width(font, letter, size);
            float x = cell * i + (cell - natural) / 2;
            show(canvas, letter, size, new float[] {x, middle(height, size)});
        }
        return Combs.fits(content.text(), content.cells());
    }

    private static float size(Content content, float height) {
        float said = content.look().size();
        return said == 0 ? Math.min(LARGEST_CHOSEN, Math.max(4, height * 0.7f)) : said;
    }

    /** The line on which capitals stand in the middle of the height. */
    private static float middle(float height, float size) {
        return height / 2 - size * 0.35f;
    }

    private float start(int quadding, float width, float size, String text) {
        float room = width - 2 * INSET - TextFit.width(font, text, size);
        return INSET + (quadding == 0 ? 0 : quadding == 1 ? room / 2 : room);
    }

    private void show(PDPageContentStream canvas, String line, float size, float[] at)
            throws IOException {
        canvas.beginText();
        canvas.setFont(font, size);
        canvas.newLineAtOffset(at[0], at[1]);
        canvas.showText(line);
        canvas.endText();
    }
}
