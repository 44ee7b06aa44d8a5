package paperbark.output.paper;

import java.util.Optional;
import org.w3c.dom.Document;
import paperbark.output.Paper;

/**
 * A paper before it is laid out.
 *
 * @param paper which paper
 * @param running head and foot of its pages
 * @param content what stands on them; blank pages where the paper is known without a layout
 * @param held whether the content says why the paper is held
 * @param head head and foot taken apart; empty where they are not to be remembered
 * @param wording the content taken apart; empty where it is not to be remembered
 * @param foreseen what the layout will give; empty where nothing alike was laid out before
 */
record PaperMarkup(
        Paper paper,
        Document running,
        Document content,
        boolean held,
        Optional<TagsAndWords> head,
        Optional<TagsAndWords> wording,
        Optional<Foreseen> foreseen) {

    /**
     * What a layout will give.
     *
     * @param paper the pages
     * @param sure whether they can stand in place of a layout, or are to be compared with it
     */
    record Foreseen(ReadyPaper paper, boolean sure) {}

    /** A paper that is laid out, of which nothing is remembered. */
    PaperMarkup(Paper paper, Document running, Document content, boolean held) {
        this(paper, running, content, held, Optional.empty(), Optional.empty(), Optional.empty());
    }

    /** The name of the template that it is made from. */
    String template() {
        return paper.kind().folder() + "/" + paper.variant() + ".ftlh";
    }

    /** What stands in place of a layout. */
    Optional<ReadyPaper> ready() {
        return foreseen.filter(Foreseen::sure).map(Foreseen::paper);
    }

    /** The same paper, with what is known of head and foot. */
    PaperMarkup withHead(Optional<TagsAndWords> of) {
        return new PaperMarkup(paper, running, content, held, of, wording, foreseen);
    }

    /** The same paper, to be laid out and remembered anew. */
    PaperMarkup unsettled() {
        Document own = Markup.parsed(wording.orElseThrow());
        return new PaperMarkup(paper, running, own, held, head, wording, Optional.empty());
    }

    /** The same paper, to be laid out whatever is known of it. */
    PaperMarkup unforeseen() {
        Document own = ready().isPresent() ? Markup.parsed(wording.orElseThrow()) : content;
        return new PaperMarkup(paper, running, own, held);
    }
}
