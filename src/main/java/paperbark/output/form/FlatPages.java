package paperbark.output.form;

import java.awt.geom.AffineTransform;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import org.apache.pdfbox.multipdf.LayerUtility;
import org.apache.pdfbox.pdfwriter.compress.CompressParameters;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.graphics.form.PDFormXObject;

/**
 * Copies what the pages of a form show, and nothing else, onto fresh upright pages: no scripts,
 * actions, attachments, links or comments can come along, and the top left corner of a page is
 * always the corner that people see.
 */
final class FlatPages {
    private FlatPages() {}

    /**
     * Copies every page.
     *
     * @param source is turned upright on the way and is not to be used afterwards; stays open until
     *     the target is saved
     * @param target gets the pages
     */
    static void copy(PDDocument source, PDDocument target) throws IOException {
        LayerUtility layers = new LayerUtility(target);
        for (PDPage page : source.getPages()) {
            PDRectangle view = page.getCropBox();
            int turn = Math.floorMod(360 - page.getRotation(), 360);
            float unit = page.getUserUnit();
            page.setRotation(0);
            PDFormXObject picture = layers.importPageAsForm(source, page);
            AffineTransform place =
                    Turn.of(turn, view.getWidth(), view.getHeight()).createAffineTransform();
            place.preConcatenate(AffineTransform.getScaleInstance(unit, unit));
            place.translate(-view.getLowerLeftX(), -view.getLowerLeftY());
            picture.setBBox(view);
            picture.setMatrix(place);
            boolean sideways = turn == 90 || turn == 270;
            float width = (sideways ? view.getHeight() : view.getWidth()) * unit;
            float height = (sideways ? view.getWidth() : view.getHeight()) * unit;
            PDPage fresh = new PDPage(new PDRectangle(width, height));
            target.addPage(fresh);
            try (PDPageContentStream out = new PDPageContentStream(target, fresh)) {
                out.drawForm(picture);
            }
        }
    }

    /** The document's bytes, the same each time. */
    static byte[] saved(PDDocument document) throws IOException {
        return saved(document, CompressParameters.DEFAULT_COMPRESSION);
    }

    /** The same for a document that is taken apart again soon, so that packing it is no use. */
    static byte[] passedOn(PDDocument document) throws IOException {
        return saved(document, CompressParameters.NO_COMPRESSION);
    }

    private static byte[] saved(PDDocument document, CompressParameters how) throws IOException {
        document.setDocumentId(1L);
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        document.save(out, how);
        return out.toByteArray();
    }
}
