package paperbark.output.form;

import java.io.IOException;
import java.util.List;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.PDPageContentStream.AppendMode;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.pdmodel.font.PDType0Font;
import org.apache.pdfbox.pdmodel.graphics.blend.BlendMode;
import org.apache.pdfbox.pdmodel.graphics.state.PDExtendedGraphicsState;
import paperbark.output.Typeface;
import paperbark.sheet.Reading;

/** A copy of a form ruled in millimetres from the top left, to read the places of texts from. */
public final class Grid {
    private static final float MM = Stamper.POINTS_PER_MM;
    private static final float LABEL = 5.5f;

    private Grid() {}

    /**
     * The ruled copy.
     *
     * @param file name of the form, for findings
     * @param pdf the form
     * @return no result where the form cannot be used
     */
    public static Reading<byte[]> of(String file, byte[] pdf) {
        try (OpenedForm form = OpenedForm.of(file, pdf);
                PDDocument ruled = new PDDocument()) {
            FlatPages.copy(form.document(), ruled);
            PDFont font = PDType0Font.load(ruled, Typeface.shared().bold(), true);
            for (PDPage page : ruled.getPages()) {
                rule(ruled, page, font);
            }
            return Reading.of(FlatPages.saved(ruled), List.of());
        } catch (UnusableForm e) {
            return Reading.refused(List.of(e.finding()));
        } catch (IOException | RuntimeException | StackOverflowError e) {
            return Reading.refused(
                    List.of(
                            UnusableForm.because(
                                            file,
                                            "Something in the form is damaged.",
                                            "Open it in a PDF reader and save it anew.")
                                    .finding()));
        }
    }

    private static void rule(PDDocument document, PDPage page, PDFont font) throws IOException {
        float width = page.getMediaBox().getWidth();
        float height = page.getMediaBox().getHeight();
        try (PDPageContentStream out =
                new PDPageContentStream(document, page, AppendMode.APPEND, true, true)) {
            // The print of the form shows through, also under a dense ruling.
            PDExtendedGraphicsState through = new PDExtendedGraphicsState();
            through.setBlendMode(BlendMode.MULTIPLY);
            out.setGraphicsStateParameters(through);
            for (int step : new int[] {1, 5, 10}) {
                out.setStrokingColor(step == 1 ? 0.75f : 0.45f, step == 1 ? 0.88f : 0.7f, 0.95f);
                out.setLineWidth(step == 1 ? 0.08f : step == 5 ? 0.2f : 0.45f);
                for (int mm = step; mm * MM < Math.max(width, height); mm += step) {
                    if (mm * MM < width) {
                        out.moveTo(mm * MM, 0);
                        out.lineTo(mm * MM, height);
                    }
                    if (mm * MM < height) {
                        out.moveTo(0, height - mm * MM);
                        out.lineTo(width, height - mm * MM);
                    }
                }
                out.stroke();
            }
            out.setNonStrokingColor(0.6f, 0f, 0f);
            for (int mm = 10; mm * MM < width; mm += 10) {
                label(out, font, mm, new float[] {mm * MM + 0.5f, height - LABEL});
                label(out, font, mm, new float[] {mm * MM + 0.5f, 1.5f});
            }
            for (int mm = 10; mm * MM < height; mm += 10) {
                label(out, font, mm, new float[] {1, height - mm * MM + 0.5f});
                label(out, font, mm, new float[] {width - 11, height - mm * MM + 0.5f});
            }
        }
    }

    private static void label(PDPageContentStream out, PDFont font, int mm, float[] at)
            throws IOException {
        out.beginText();
        out.setFont(font, LABEL);
        out.newLineAtOffset(at[0], at[1]);
        out.showText(String.valueOf(mm));
        out.endText();
    }
}
