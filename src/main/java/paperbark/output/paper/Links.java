package paperbark.output.paper;

import java.io.IOException;
import java.util.List;
import java.util.Optional;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.interactive.action.PDAction;
import org.apache.pdfbox.pdmodel.interactive.action.PDActionGoTo;
import org.apache.pdfbox.pdmodel.interactive.action.PDActionURI;
import org.apache.pdfbox.pdmodel.interactive.annotation.PDAnnotation;
import org.apache.pdfbox.pdmodel.interactive.annotation.PDAnnotationLink;
import org.apache.pdfbox.pdmodel.interactive.documentnavigation.destination.PDDestination;
import org.apache.pdfbox.pdmodel.interactive.documentnavigation.destination.PDPageDestination;

/** Says in words where each link of a pack leads, for readers who hear the pages. */
final class Links {
    private Links() {}

    /** Describes every link that has no words yet. */
    static void describe(PDDocument document, List<PaperPages> papers) throws IOException {
        for (PDPage page : document.getPages()) {
            for (PDAnnotation annotation : page.getAnnotations()) {
                if (annotation instanceof PDAnnotationLink link && link.getContents() == null) {
                    link.setContents(words(link, document, papers));
                }
            }
        }
    }

    private static String words(PDAnnotationLink link, PDDocument document, List<PaperPages> papers)
            throws IOException {
        PDAction action = link.getAction();
        if (action instanceof PDActionURI address) {
            return address.getURI();
        }
        PDDestination there =
                action instanceof PDActionGoTo step ? step.getDestination() : link.getDestination();
        return page(there, document)
                .map(page -> "To page " + page + paperAt(page, papers))
                .orElse("Link");
    }

    private static Optional<Integer> page(PDDestination there, PDDocument document) {
        return there instanceof PDPageDestination place && place.getPage() != null
                ? Optional.of(document.getPages().indexOf(place.getPage()) + 1)
                : Optional.empty();
    }

    private static String paperAt(int page, List<PaperPages> papers) {
        return papers.stream()
                .filter(p -> p.firstPage() == page)
                .map(p -> ", " + p.kind().title())
                .findFirst()
                .orElse("");
    }
}
