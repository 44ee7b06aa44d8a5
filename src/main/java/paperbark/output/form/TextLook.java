package paperbark.output.form;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.Optional;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.graphics.color.PDColor;
import org.apache.pdfbox.pdmodel.graphics.color.PDDeviceCMYK;
import org.apache.pdfbox.pdmodel.graphics.color.PDDeviceGray;
import org.apache.pdfbox.pdmodel.graphics.color.PDDeviceRGB;
import org.apache.pdfbox.pdmodel.interactive.annotation.PDAnnotationWidget;
import org.apache.pdfbox.pdmodel.interactive.form.PDVariableText;

/**
 * How a form wants the text of a field: all but its typeface, which is always ours, because the
 * form's own may lack the letters of a name.
 *
 * @param size in points; 0 lets the filler choose
 * @param colour of the text
 * @param quadding 0 left, 1 centre, 2 right
 */
record TextLook(float size, PDColor colour, int quadding) {
    private static final PDColor BLACK = new PDColor(new float[] {0}, PDDeviceGray.INSTANCE);

    // Beyond this a size is a slip, and the text would hide its neighbours.
    private static final float LARGEST = 72;

    /** The look that a field's default appearance describes. */
    static TextLook of(PDVariableText field, PDAnnotationWidget widget) {
        String own = widget.getCOSObject().getString(COSName.DA);
        String said =
                Optional.ofNullable(own)
                        .or(() -> Optional.ofNullable(field.getDefaultAppearance()))
                        .orElse("");
        TextLook look = read(said);
        return new TextLook(look.size(), look.colour(), Math.floorMod(field.getQ(), 3));
    }

    private static TextLook read(String appearance) {
        float size = 0;
        PDColor colour = BLACK;
        Deque<String> operands = new ArrayDeque<>();
        for (String token : appearance.strip().split("\\s+")) {
            switch (token) {
                case "Tf" -> {
                    size = operands.isEmpty() ? 0 : number(operands.peekLast());
                    operands.clear();
                }
                case "g" -> colour = colour(operands, 1).orElse(colour);
                case "rg" -> colour = colour(operands, 3).orElse(colour);
                case "k" -> colour = colour(operands, 4).orElse(colour);
                default -> operands.addLast(token);
            }
        }
        return new TextLook(size < 0 || size > LARGEST ? 0 : size, colour, 0);
    }

    private static Optional<PDColor> colour(Deque<String> operands, int count) {
        if (operands.size() < count) {
            operands.clear();
            return Optional.empty();
        }
        float[] parts = new float[count];
        for (int i = count - 1; i >= 0; i--) {
            parts[i] = Math.max(0, Math.min(1, number(operands.removeLast())));
        }
        operands.clear();
        return Optional.of(
                new PDColor(
                        parts,
                        count == 1
                                ? PDDeviceGray.INSTANCE
                                : count == 3 ? PDDeviceRGB.INSTANCE : PDDeviceCMYK.INSTANCE));
    }

    private static float number(String token) {
        return token.matches("[+-]?[0-9]*\\.?[0-9]+|[0-9]+\\.") ? Float.parseFloat(token) : 0;
    }
}
