package paperbark.output.form;

import java.io.IOException;
import java.text.Normalizer;
import java.util.ArrayList;
import java.util.List;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.contentstream.operator.Operator;
import org.apache.pdfbox.cos.COSBase;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.interactive.form.PDAcroForm;
import org.apache.pdfbox.text.PDFTextStripper;
import org.apache.pdfbox.text.TextPosition;
import paperbark.finding.Finding;
import paperbark.finding.FindingCode;
import paperbark.output.form.FieldFiller.Written;

/** Reads a filled form again, as a stranger would, and looks for every value. */
final class ReadBack {
    private ReadBack() {}

    /** A check for each value that is not found in the text of the pages. */
    static List<Finding> of(byte[] pdf, List<Written> written) throws IOException {
        List<Finding> lost = new ArrayList<>();
        String text = text(pdf);
        for (Written value : written) {
            if (!text.contains(bare(value.text()))) {
                lost.add(
                        Finding.of(
                                        FindingCode.FORM_VALUE_UNSEEN,
                                        value.place(),
                                        "The value is not found again in the "
                                                + value.what()
                                                + "; it may be hidden, or written from right to"
                                                + " left.",
                                        "Look at the form, and complete it by hand where needed.")
                                .seeing(value.text()));
            }
        }
        return lost;
    }

    private static String text(byte[] pdf) throws IOException {
        try (PDDocument document = Loader.loadPDF(pdf)) {
            PDAcroForm live = document.getDocumentCatalog().getAcroForm(null);
            if (live != null) {
                // The text of a page is what is drawn on it, so the fields are drawn first.
                live.flatten(List.copyOf(live.getFields()), false);
            }
            PDFTextStripper stripper = new SeenText();
            // In the order of drawing the letters of a value stand together.
            stripper.setSortByPosition(false);
            stripper.setShouldSeparateByBeads(false);
            return bare(stripper.getText(document));
        }
    }

    /** The text that lies on the pages, by a reader that gives up on drawings without end. */
    private static final class SeenText extends PDFTextStripper {
        // A page of a form has a few thousand; a drawing that draws itself twice has no end.
        private static final int MOST_STEPS = 2_000_000;

        // Letters that lean over the edge are still seen.
        private static final float EDGE_POINTS = 2;

        private int steps;

        @Override
        protected void processOperator(Operator operator, List<COSBase> operands)
                throws IOException {
            if (++steps > MOST_STEPS || Thread.currentThread().isInterrupted()) {
                throw new IllegalStateException("a drawing without end");
            }
            super.processOperator(operator, operands);
        }

        @Override
        protected void processTextPosition(TextPosition text) {
            boolean across =
                    text.getX() > -EDGE_POINTS && text.getX() < text.getPageWidth() + EDGE_POINTS;
            boolean down =
                    text.getY() > -EDGE_POINTS && text.getY() < text.getPageHeight() + EDGE_POINTS;
            if (across && down) {
                super.processTextPosition(text);
            }
        }
    }

    private static String bare(String text) {
        return Normalizer.normalize(text, Normalizer.Form.NFKC)
                .replaceAll("[\\s\\u00A0\\u00AD]+", "");
    }
}
