package paperbark.output.paper;

import org.w3c.dom.Document;
import paperbark.output.Paper;

/**
 * A paper before it is laid out.
 *
 * @param paper which paper
 * @param running head and foot of its pages
 * @param content what stands on them
 * @param held whether the content says why the paper is held
 */
record PaperMarkup(Paper paper, Document running, Document content, boolean held) {

    /** The name of the template that it is made from. */
    String template() {
        return paper.kind().folder() + "/" + paper.variant() + ".ftlh";
    }
}
