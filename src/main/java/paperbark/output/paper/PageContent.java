package paperbark.output.paper;

import java.io.IOException;
import java.io.OutputStream;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Deque;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Set;
import org.apache.pdfbox.contentstream.operator.Operator;
import org.apache.pdfbox.contentstream.operator.OperatorName;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.cos.COSStream;
import org.apache.pdfbox.pdfparser.PDFStreamParser;
import org.apache.pdfbox.pdfwriter.ContentStreamWriter;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDResources;
import org.apache.pdfbox.pdmodel.common.PDStream;
import org.apache.pdfbox.pdmodel.graphics.PDXObject;
import org.apache.pdfbox.pdmodel.graphics.form.PDFormXObject;

/**
 * What a foreign page shows, taken as one picture: marks that tie parts of it to the structure tree
 * of its former document are taken out, and one mark is put around all.
 */
final class PageContent {
    private static final Set<String> BEGIN =
            Set.of(OperatorName.BEGIN_MARKED_CONTENT, OperatorName.BEGIN_MARKED_CONTENT_SEQ);
    private static final Set<String> POINT =
            Set.of(OperatorName.MARKED_CONTENT_POINT, OperatorName.MARKED_CONTENT_POINT_WITH_PROPS);
    private static final COSName OPTIONAL = COSName.OC;

    private final Set<COSDictionary> seen =
            Collections.newSetFromMap(new IdentityHashMap<COSDictionary, Boolean>());

    private PageContent() {}

    /** Marks all that a page shows as the content number 0 of the page, a figure. */
    static void becomeFigure(PDDocument document, PDPage page) throws IOException {
        List<Object> tokens = new ArrayList<>();
        COSDictionary number = new COSDictionary();
        number.setInt(COSName.MCID, 0);
        tokens.add(COSName.getPDFName("Figure"));
        tokens.add(number);
        tokens.add(Operator.getOperator(OperatorName.BEGIN_MARKED_CONTENT_SEQ));
        tokens.addAll(unmarked(new PDFStreamParser(page).parse()));
        tokens.add(Operator.getOperator(OperatorName.END_MARKED_CONTENT));
        PDStream fresh = new PDStream(document);
        write(tokens, fresh);
        page.setContents(fresh);
        new PageContent().clean(page.getResources());
    }

    /** Forms that the page draws. */
    private void clean(PDResources resources) throws IOException {
        if (resources == null) {
            return;
        }
        for (COSName name : resources.getXObjectNames()) {
            PDXObject drawn = resources.getXObject(name);
            if (drawn instanceof PDFormXObject form && seen.add(form.getCOSObject())) {
                COSStream stream = form.getCOSObject();
                stream.removeItem(COSName.STRUCT_PARENT);
                stream.removeItem(COSName.STRUCT_PARENTS);
                List<Object> tokens = new PDFStreamParser(form).parse();
                List<Object> left = unmarked(tokens);
                if (left.size() < tokens.size()) {
                    write(left, form.getContentStream());
                }
                clean(form.getResources());
            }
        }
    }

    private static void write(List<Object> tokens, PDStream into) throws IOException {
        try (OutputStream out = into.createOutputStream(COSName.FLATE_DECODE)) {
            new ContentStreamWriter(out).writeTokens(tokens);
        }
    }

    /** The content without its marks, but for those of layers, which decide what is seen. */
    private static List<Object> unmarked(List<Object> tokens) {
        List<Object> kept = new ArrayList<>();
        Deque<Boolean> open = new ArrayDeque<>();
        int operands = 0;
        for (Object token : tokens) {
            kept.add(token);
            operands++;
            if (token instanceof Operator operator) {
                if (isDropped(operator.getName(), kept, operands, open)) {
                    kept.subList(kept.size() - operands, kept.size()).clear();
                }
                operands = 0;
            }
        }
        return kept;
    }

    private static boolean isDropped(
            String operator, List<Object> kept, int operands, Deque<Boolean> open) {
        if (BEGIN.contains(operator)) {
            boolean layer = operands > 1 && OPTIONAL.equals(kept.get(kept.size() - operands));
            open.push(layer);
            return !layer;
        }
        if (operator.equals(OperatorName.END_MARKED_CONTENT)) {
            return open.isEmpty() || !open.pop();
        }
        return POINT.contains(operator);
    }
}
