package paperbark.output.paper;

import com.openhtmltopdf.layout.BlockFormattingContext;
import com.openhtmltopdf.layout.BoxBuilder;
import com.openhtmltopdf.layout.InlineBoxing;
import com.openhtmltopdf.layout.LayoutContext;
import com.openhtmltopdf.layout.SharedContext;
import com.openhtmltopdf.layout.Styleable;
import com.openhtmltopdf.layout.WhitespaceStripper;
import com.openhtmltopdf.pdfboxout.PdfBoxFontContext;
import com.openhtmltopdf.pdfboxout.PdfBoxRenderer;
import com.openhtmltopdf.pdfboxout.PdfRendererBuilder;
import com.openhtmltopdf.render.BlockBox;
import com.openhtmltopdf.render.InlineBox;
import com.openhtmltopdf.render.ViewportBox;
import com.openhtmltopdf.util.ThreadCtx;
import java.awt.Rectangle;
import java.io.OutputStream;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.w3c.dom.Document;
import org.w3c.dom.Element;

/**
 * Where the lines of one block are laid out with other words, by the same library and with the same
 * styles as in the paper that it is of. For one thread at a time.
 */
final class FittingRoom {
    private static final String KIND = "kind";

    private final Document names = Markup.empty();
    private final Map<Integer, Element> elements = new HashMap<>();
    private final SharedContext shared;
    private final LayoutContext context;

    FittingRoom() {
        Document empty = Markup.empty();
        Element root = empty.createElement("html");
        empty.appendChild(root);
        root.appendChild(empty.createElement("body"));
        PdfRendererBuilder builder = new PdfRendererBuilder();
        builder.usePDDocument(new PDDocument());
        builder.useFastMode();
        builder.toStream(OutputStream.nullOutputStream());
        builder.withW3cDocument(empty, null);
        PdfBoxRenderer renderer = builder.buildPdfRenderer();
        shared = renderer.getSharedContext();
        Widths.over(shared);
        context = shared.newLayoutContextInstance();
        context.setFontContext(new PdfBoxFontContext());
        // Where pages end is known of the paper as a whole.
        context.setIsPrintOverride(false);
        BlockBox box = BoxBuilder.createRootBox(context, empty);
        box.setContainingBlock(new ViewportBox(new Rectangle(0, 0, 0, 0)));
        context.pushBFC(new BlockFormattingContext(box, context));
        context.pushLayer(box);
    }

    /** An element that stands for all of a kind; there is none of the kind 0. */
    private Element element(int kind) {
        return kind == 0
                ? null
                : elements.computeIfAbsent(kind, k -> names.createElement(KIND + k));
    }

    private static int kindOf(Element element) {
        return Integer.parseInt(element.getTagName().substring(KIND.length()));
    }

    /**
     * The lines of a block.
     *
     * @param words of its parts that are to be other than they were, by the part's place
     */
    Optional<LineBlock.Lines> lines(FitBlock block, Map<Integer, String> words) {
        // The library looks for it by thread.
        ThreadCtx.get().setSharedContext(shared);
        List<Styleable> content = new ArrayList<>();
        for (int i = 0; i < block.parts().size(); i++) {
            content.add(inline(block.parts().get(i), words.get(i)));
        }
        if (!words.isEmpty()) {
            WhitespaceStripper.stripInlineContent(content);
        }
        BlockBox box = new BlockBox();
        box.setStyle(block.style());
        box.setContainingLayer(context.getLayer());
        box.setContentWidth(block.width());
        box.setAbsX(block.x());
        box.setAbsY(block.y());
        box.setTx(block.tx());
        box.setTy(block.ty());
        box.setInlineContent(content);
        box.setChildrenContentType(BlockBox.ContentType.INLINE);
        context.setCurrentMarkerData(null);
        InlineBoxing.layoutContent(context, box, block.lineTop(), 0);
        return new ShapeReader(0, FittingRoom::kindOf, context).lines(box);
    }

    private InlineBox inline(FitBlock.Part part, String words) {
        InlineBox box = new InlineBox(words == null ? part.text() : words);
        box.setStyle(part.style());
        box.setElement(element(part.kind()));
        box.setStartsHere(part.starts());
        box.setEndsHere(part.ends());
        box.setTextDirection(part.direction());
        if (!part.pseudo().isEmpty()) {
            box.setPseudoElementOrClass(part.pseudo());
        }
        if (words != null) {
            box.applyTextTransform();
        }
        return box;
    }
}
