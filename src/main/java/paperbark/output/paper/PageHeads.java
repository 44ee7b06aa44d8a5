package paperbark.output.paper;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.function.IntFunction;
import java.util.stream.IntStream;
import paperbark.output.pdf.PageFrame;
import paperbark.output.pdf.PageHead;
import paperbark.output.pdf.PaperPart;

/** Head and foot of the pages of a pack: which are known, and which are to be remembered. */
final class PageHeads {
    private final List<PageHead> heads;
    private final List<Optional<TagsAndWords>> markup;
    private final Optional<FrameMemory> memory;

    /**
     * Looks for what is known, once the papers are laid out.
     *
     * @param pages of the pack
     * @param memory empty where none is kept
     */
    PageHeads(
            List<PaperMarkup> papers,
            List<Extent> extents,
            int pages,
            Optional<FrameMemory> memory) {
        this.memory = memory;
        heads = new ArrayList<>(Collections.nCopies(pages, PageHead.NONE));
        markup = new ArrayList<>(Collections.nCopies(pages, Optional.empty()));
        for (int i = 0; i < papers.size() && memory.isPresent(); i++) {
            if (papers.get(i).head().isPresent()) {
                look(papers.get(i), papers.get(i).head().get(), extents.get(i));
            }
        }
    }

    private void look(PaperMarkup paper, TagsAndWords head, Extent extent) {
        for (int page = extent.first(); page < extent.end(); page++) {
            List<String> values = FrameMemory.values(head, page, heads.size(), extent);
            // Head and foot are not told apart from a paper that is drawn with them.
            Optional<PageFrame> known =
                    paper.ready().isPresent()
                            ? memory.orElseThrow().sure(head, values)
                            : Optional.empty();
            heads.set(page, new PageHead(values, logos(head), known, Optional.empty()));
            markup.set(page, Optional.of(head));
        }
    }

    /** How often they show the logo; negative where they show other pictures. */
    private static int logos(TagsAndWords head) {
        int logos = count(ResourceGate.LOGO, head.tags());
        return count("<img", head.tags()) == logos ? logos : -1;
    }

    private static int count(String part, String text) {
        return (text.length() - text.replace(part, "").length()) / part.length();
    }

    /** Whether those of a paper are all known. */
    boolean isKnown(Extent paper) {
        return IntStream.range(paper.first(), paper.end()).allMatch(this::isKnown);
    }

    /** Whether those of a page are known. */
    boolean isKnown(int page) {
        return heads.get(page).known().isPresent();
    }

    /**
     * Head and foot of each page, once the pages are drawn.
     *
     * @param drawn the strings on a page, in order
     */
    List<PageHead> of(IntFunction<List<PaperPart.Drawn>> drawn) {
        List<PageHead> all = new ArrayList<>();
        for (int page = 0; page < heads.size(); page++) {
            PageHead head = heads.get(page);
            boolean wanted =
                    markup.get(page).isPresent()
                            && head.known().isEmpty()
                            && memory.orElseThrow().wants(markup.get(page).get(), head.values());
            all.add(
                    wanted
                            ? new PageHead(
                                    head.values(),
                                    head.pictures(),
                                    head.known(),
                                    Optional.of(drawn.apply(page)))
                            : head);
        }
        return all;
    }

    /** Remembers those that were drawn. */
    void learn(List<Optional<PageFrame>> frames) {
        for (int page = 0; page < frames.size(); page++) {
            if (frames.get(page).isPresent()) {
                memory.orElseThrow()
                        .learn(
                                markup.get(page).orElseThrow(),
                                heads.get(page).values(),
                                frames.get(page).get());
            }
        }
    }
}
